using BallSim.Balls;
using BallSim.Drilling;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Units;

namespace BallSim.Tests.Laws;

/// <summary>What holds of every layout on every ball.</summary>
[Properties(Arbitrary = [typeof(LayoutLaws.Cases)], MaxTest = 300)]
public class LayoutLaws
{
    public sealed record Case(Ball Ball, Layout Layout, PositiveAxisPoint AxisPoint)
    {
        public Ball Drilled => Ball.LayOut(Layout, Grip.Fingertip, AxisPoint);
    }

    public static class Cases
    {
        public static Arbitrary<Case> Case() => (
            from radius in Between(4.25 * Inch, 4.3 * Inch)
            from pinTurn in Between(-Math.PI, Math.PI)
            from pinHeight in Between(-0.99, 0.99)
            from markTurn in Between(-Math.PI, Math.PI)
            from pinToAxis in Between(0.5 * Inch, 12.8 * Inch)
            from atPin in Between(-179.9 * Degree, 179.9 * Degree)
            from atAxis in Between(-179.9 * Degree, 179.9 * Degree)
            from over in Between(-8 * Inch, 8 * Inch)
            from up in Between(-6 * Inch, 6 * Inch)
            from hand in Gen.Elements(Hand.Right, Hand.Left)
            let level = Math.Sqrt(1 - pinHeight * pinHeight)
            let pin = new Vector3D(level * Math.Cos(pinTurn), level * Math.Sin(pinTurn), pinHeight)
            let mark = Rotation.About(pin, markTurn).Apply(pin.Cross(Vector3D.UnitZ).Unit)
            select new Case(
                new() { Mass = 6.8, Radius = radius, Inertia = new(0.027, 0.029, 0.028), Marks = new() { Pin = pin, MassBias = mark } },
                new(pinToAxis, atPin, atAxis), new(over, up, hand))).ToArbitrary();

        // Every number of a case from a million steps: FsCheck's own doubles follow its size and would leave most of a range untried.
        private static Gen<double> Between(double low, double high) => Gen.Choose(0, 1_000_000).Select(k => low + (high - low) * k / 1e6);
    }

    [Property]
    public bool The_finished_ball_measures_what_was_laid_out(Case c)
    {
        var measures = LayoutMeasures.Of(c.Drilled);
        return Math.Abs(measures.PinToAxis - c.Layout.PinToAxis) < 1e-13
            && Math.Abs(measures.AngleAtPin!.Value - c.Layout.AngleAtPin) < 1e-12
            && Math.Abs(measures.AngleAtAxis!.Value - c.Layout.AngleAtAxis) < 1e-12;
    }

    [Property]
    public bool The_axis_point_lies_over_and_up_from_the_grip(Case c)
    {
        // The right-angled triangle grip centre - foot - axis point: height over the midline, then along it.
        var marks = c.Drilled.Marks;
        var (centre, right, up, axis) = (marks.GripCentre!.Value, marks.GripRight!.Value, marks.GripUp!.Value, marks.PositiveAxis!.Value);
        return Math.Abs(c.Ball.Radius * Math.Asin(axis.Dot(up)) - c.AxisPoint.Up) < 1e-13
            && Math.Abs(c.Ball.Radius * Math.Atan2(axis.Dot(right), axis.Dot(centre)) - c.AxisPoint.Over) < 1e-13;
    }

    [Property]
    public bool Grip_centre_right_and_up_are_a_right_angled_frame_of_the_hand(Case c)
    {
        var marks = c.Drilled.Marks;
        var (centre, right, up) = (marks.GripCentre!.Value, marks.GripRight!.Value, marks.GripUp!.Value);
        var hand = c.AxisPoint.Hand == Hand.Right ? 1 : -1;
        return (right.Cross(up) - hand * centre).Length < 1e-13 && Math.Abs(right.Dot(up)) < 1e-14;
    }

    [Property]
    public bool Spherical_trigonometry_gives_the_same_distances(Case c)
    {
        // Spherical trigonometry (NIST DLMF 4.42): cos(mark to axis) = sin a cos D for a mark a quarter turn from the pin; sin(pin to vertical line) = sin a sin V;
        // RG² about the axis = RGx² cos² a + RGy² sin² a cos² D + RGz² sin² a sin² D (there with pin and mark along x and y).
        var measures = LayoutMeasures.Of(c.Drilled);
        var (r, a) = (c.Ball.Radius, c.Layout.PinToAxis / c.Ball.Radius);
        return Math.Abs(Math.Cos(measures.MassBiasToAxis!.Value / r) - Math.Sin(a) * Math.Cos(c.Layout.AngleAtPin)) < 1e-13
            && Math.Abs(Math.Sin(measures.PinToVerticalLine!.Value / r) - Math.Sin(a) * Math.Sin(c.Layout.AngleAtAxis)) < 1e-13;
    }

    [Property]
    public bool Radius_of_gyration_about_the_axis_follows_from_the_layout(Case c)
    {
        var ball = (c with { Ball = c.Ball with { Marks = new() { MassBias = Vector3D.UnitY } } }).Drilled;
        var (a, d) = (c.Layout.PinToAxis / ball.Radius, c.Layout.AngleAtPin);
        var (x, y, z) = (ball.LowRg * Math.Cos(a), ball.HighRg * Math.Sin(a) * Math.Cos(d), ball.IntermediateRg * Math.Sin(a) * Math.Sin(d));
        return Math.Abs(LayoutMeasures.Of(ball).RgAboutAxis - Math.Sqrt(x * x + y * y + z * z)) < 1e-15;
    }

    [Property]
    public bool The_other_hand_is_the_mirror_image(Case c)
    {
        var mirrored = c with { Ball = Mirror.Of(c.Ball), AxisPoint = c.AxisPoint with { Hand = Mirror.Of(c.AxisPoint.Hand) } };
        // The ball's own marks are the same for either hand: Mirror.Of changes the hand on them, and drilling sets it.
        var (expected, got) = (Mirror.Of(c.Drilled.Marks), mirrored.Drilled.Marks);
        return Near(expected.PositiveAxis, got.PositiveAxis) && Near(expected.GripCentre, got.GripCentre) && Near(expected.GripRight, got.GripRight)
            && Near(expected.GripUp, got.GripUp) && Near(expected.Thumb, got.Thumb) && Near(expected.MiddleFinger, got.MiddleFinger)
            && Near(expected.RingFinger, got.RingFinger) && expected.Hand == got.Hand;
    }

    private static bool Near(Vector3D? a, Vector3D? b) => (a!.Value - b!.Value).Length < 1e-14;
}
