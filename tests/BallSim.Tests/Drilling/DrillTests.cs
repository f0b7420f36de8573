using BallSim.Balls;
using BallSim.Drilling;
using static BallSim.Units;

namespace BallSim.Tests.Drilling;

public class DrillTests
{
    private static readonly Layout Layout = new(pinToAxis: 4.5 * Inch, angleAtPin: 50 * Degree, angleAtAxis: 40 * Degree);
    private static readonly PositiveAxisPoint AxisPoint = new(over: 5 * Inch, up: 0.5 * Inch);

    private static Ball Symmetric(double topWeight, Vector3D? centreOfMass = null) => Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0.04 * Inch,
        pinToCg: topWeight > 0 ? 3 * Inch : null, topWeight: topWeight, centreOfMass: centreOfMass);

    [Fact]
    public void Without_a_mark_the_angle_at_the_pin_counts_from_the_arc_to_the_centre_of_mass()
    {
        // The centre of mass a quarter turn about the pin from y: the whole grip turns with it.
        var plain = Symmetric(3 * Ounce).LayOut(Layout, Grip.Fingertip, AxisPoint).Marks;
        var turned = Symmetric(0, new(5e-4, 0, 8e-4)).LayOut(Layout, Grip.Fingertip, AxisPoint).Marks;
        Vector3D Turned(Vector3D v) => new(v.X, -v.Z, v.Y);
        Assert.True((Turned(plain.GripCentre!.Value) - turned.GripCentre!.Value).Length < 1e-14);
        Assert.True((Turned(plain.PositiveAxis!.Value) - turned.PositiveAxis!.Value).Length < 1e-14);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1e-3)]
    public void Without_mark_and_offset_across_the_pin_it_counts_from_y(double alongPin)
    {
        var marks = Symmetric(0, new(alongPin, 0, 0)).LayOut(Layout, Grip.Fingertip, AxisPoint).Marks;
        var axis = marks.PositiveAxis!.Value;
        Assert.Equal(50 * Degree, Math.Atan2(axis.Z, axis.Y), 1e-15);
    }

    [Fact]
    public void Laying_out_keeps_the_body_and_marks_the_hand()
    {
        var ball = Symmetric(3 * Ounce);
        var drilled = ball.LayOut(Layout, Grip.Fingertip, AxisPoint with { Hand = Hand.Left });
        Assert.Equal(ball, drilled with { Marks = ball.Marks });
        Assert.Equal(Hand.Left, drilled.Marks.Hand);
        Assert.True(drilled.Marks.IsDrilled);
        Assert.False(ball.Marks.IsDrilled);
    }

    [Fact]
    public void Plain_positions_give_the_same_ball_as_the_layout_they_were_taken_from()
    {
        var ball = Symmetric(3 * Ounce);
        var a = ball.LayOut(Layout, Grip.Fingertip, AxisPoint).Marks;
        var b = ball.LayOut(2 * a.GripCentre!.Value, a.GripUp!.Value + 0.3 * a.GripCentre!.Value, Grip.Fingertip, AxisPoint).Marks;
        Assert.True((a.PositiveAxis!.Value - b.PositiveAxis!.Value).Length < 1e-14);
        Assert.True((a.RingFinger!.Value - b.RingFinger!.Value).Length < 1e-14);
    }

    [Fact]
    public void Pin_on_the_axis_point_is_laid_out_by_plain_positions_and_has_no_angles()
    {
        var ball = Symmetric(0);
        var r = ball.Radius;
        var drilled = ball.LayOut(new Vector3D(Math.Cos(5 * Inch / r), -Math.Sin(5 * Inch / r), 0), Vector3D.UnitZ, Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0));
        var measures = LayoutMeasures.Of(drilled);
        Assert.Equal(0, measures.PinToAxis, 1e-15);
        Assert.Null(measures.AngleAtPin);
        Assert.Null(measures.AngleAtAxis);
        Assert.Contains("undefined", measures.ToString());
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        var ball = Symmetric(3 * Ounce);
        var drilled = ball.LayOut(Layout, Grip.Fingertip, AxisPoint);
        Refused(() => drilled.LayOut(Layout, Grip.Fingertip, AxisPoint), "drilled already");
        Refused(() => ball.LayOut(default, Grip.Fingertip, AxisPoint), "above zero");
        Refused(() => ball.LayOut(Vector3D.UnitX, Vector3D.UnitX, Grip.Fingertip, AxisPoint), "gripUp");
        Refused(() => ball.LayOut(Vector3D.Zero, Vector3D.UnitX, Grip.Fingertip, AxisPoint), "gripCentre");
        Refused(() => LayoutMeasures.Of(ball), "drill it first");
        Refused(() => AxisPoint.DirectionOn(ball), "no grip");
        Refused(() => (AxisPoint with { Hand = Hand.Left }).DirectionOn(drilled), "Left hand");
        Refused(() => (ball with { Marks = ball.Marks with { MassBias = Vector3D.UnitX } }).LayOut(Layout, Grip.Fingertip, AxisPoint), "mass-bias mark");
        var small = ball with { Inertia = new(0.01, 0.01, 0.01) } with { Radius = 3 * Inch };
        Refused(() => small.LayOut(Layout, Grip.Fingertip, AxisPoint with { Up = 5 * Inch }), "quarter of this ball's circumference");
        Refused(() => new Layout(4.5, 0, 0), "for inches write 4.5 * Inch");
        Refused(() => new Layout(4.5 * Inch, 50, 0), "for degrees write 50 * Degree");
        Refused(() => new Layout(4.5 * Inch, 0, double.NaN), "AngleAtAxis is NaN");
        Refused(() => new PositiveAxisPoint(5, 0.5), "for inches write 5 * Inch");
    }

    [Fact]
    public void Text_is_in_the_units_of_the_trade()
    {
        Assert.Equal("pin to axis 4.5 in, 50° at the pin, 40° at the axis", Layout.ToString());
        Assert.Equal("5 in over, 0.25 in down, left hand", new PositiveAxisPoint(5 * Inch, -0.25 * Inch, Hand.Left).ToString());
        Assert.StartsWith("spans 4.5 and 4.5 in, bridge 0.25 in; thumb 1 in wide, 2.75 in deep", Grip.Fingertip.ToString(), StringComparison.Ordinal);
        var measures = LayoutMeasures.Of(Symmetric(0).LayOut(Layout, Grip.Fingertip, AxisPoint));
        Assert.StartsWith("pin to axis 4.500 in, angle at the pin 50.0°, angle at the axis 40.0°", measures.ToString(), StringComparison.Ordinal);
    }

    private static void Refused(Func<object> build, string part) => Assert.Contains(part, Assert.ThrowsAny<ArgumentException>(build).Message);
}
