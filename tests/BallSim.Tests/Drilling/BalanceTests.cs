using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Tests.Balls;
using static BallSim.Units;

namespace BallSim.Tests.Drilling;

public class BalanceTests
{
    private static readonly Layout Layout = new(pinToAxis: 4.5 * Inch, angleAtPin: 50 * Degree, angleAtAxis: 40 * Degree);
    private static readonly PositiveAxisPoint AxisPoint = new(over: 5 * Inch, up: 0.5 * Inch);
    private static readonly double[] Least = [2 * Inch, 0.5 * Inch, 0.5 * Inch];
    private static readonly double[] Greatest = [3.25 * Inch, 1.4 * Inch, 1.4 * Inch];

    private static Ball Known => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 3 * Ounce);

    private static Grip Deep(double thumb, double middle, double ring) => Grip.Fingertip with
    {
        Thumb = Grip.Fingertip.Thumb with { Depth = thumb * Inch },
        Middle = Grip.Fingertip.Middle with { Depth = middle * Inch },
        Ring = Grip.Fingertip.Ring with { Depth = ring * Inch },
    };

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Depths_that_were_drilled_are_found_from_their_balance(bool built)
    {
        // Three balances and three depths: one answer. The built ball has a cover under which the share of a hole bends.
        var ball = built ? BuildTests.Design.Ball : Known;
        var wanted = DrillSheet.Of(ball, Layout, Deep(2.7, 0.7, 1.2), AxisPoint).Balance!.Value;
        var found = BalanceDepths.For(ball, Layout, Grip.Fingertip, AxisPoint, Least, Greatest, wanted.Top, wanted.Side, wanted.Finger);
        Assert.All([found.Residual.Top, found.Residual.Side, found.Residual.Finger], r => Assert.Equal(0, r / Ounce, 1e-4));
        Assert.All(found.Depths.Zip((double[])[2.7, 0.7, 1.2]), d => Assert.Equal(d.Second, d.First / Inch, 0.01));
        Assert.Equal(found.Balance, StaticBalance.Of(found.Sheet.Ball));
    }

    [Fact]
    public void Out_of_reach_the_nearest_is_given_with_the_range()
    {
        var found = BalanceDepths.For(Known, Layout, Grip.Fingertip, AxisPoint, Least, Greatest, top: 5 * Ounce, side: 0, finger: 0);
        Assert.True(found.Residual.Top > 1 * Ounce);
        double Miss(StaticBalance b) => double.Hypot(double.Hypot(b.Top - 5 * Ounce, b.Side), b.Finger);
        // By brute force over a grid of depths: none is nearer, and all lie within the range told.
        double[] share = [0, 0.25, 0.5, 0.75, 1];
        double At(int k, double t) => (Least[k] + t * (Greatest[k] - Least[k])) / Inch;
        var (low, high) = (double.MaxValue, double.MinValue);
        foreach (var (a, b, c) in from a in share from b in share from c in share select (a, b, c))
        {
            var balance = DrillSheet.Of(Known, Layout, Deep(At(0, a), At(1, b), At(2, c)), AxisPoint).Balance!.Value;
            Assert.True(Miss(found.Balance) <= Miss(balance) + 1e-9);
            Assert.InRange(balance.Top, found.Least.Top - 1e-9, found.Greatest.Top + 1e-9);
            Assert.InRange(balance.Side, found.Least.Side - 1e-9, found.Greatest.Side + 1e-9);
            Assert.InRange(balance.Finger, found.Least.Finger - 1e-9, found.Greatest.Finger + 1e-9);
            (low, high) = (Math.Min(low, balance.Top), Math.Max(high, balance.Top));
        }
        Assert.Equal(low, found.Least.Top, 1e-9);
        Assert.Equal(high, found.Greatest.Top, 1e-9);
        Assert.Contains("reachable top", found.ToString());
    }

    [Fact]
    public void What_is_not_asked_for_is_left()
    {
        var found = BalanceDepths.For(Known, Layout, Grip.Fingertip with { Thumbless = true }, AxisPoint, Least[1..], Greatest[1..], side: 1.2 * Ounce);
        Assert.Equal(0, found.Residual.Side / Ounce, 1e-4);
        Assert.Equal((0, 0), (found.Residual.Top, found.Residual.Finger));
        SolidTests.Refused(() => BalanceDepths.For(Known, Layout, Grip.Fingertip, AxisPoint, Least, Greatest), "nothing is wanted");
        SolidTests.Refused(() => BalanceDepths.For(Known, Layout, Grip.Fingertip, AxisPoint, Least[1..], Greatest, top: 0), "3 holes; least names 2");
        SolidTests.Refused(() => BalanceDepths.For(Known, Layout, Grip.Fingertip, AxisPoint, [2.5, 1, 1], [3, 1, 1], top: 0), "for inches write 2.5 * Inch");
    }

    [Fact]
    public void The_marking_sheet_has_the_arcs_of_the_layout()
    {
        var ball = Known.LayOut(Layout, Grip.Fingertip, AxisPoint);
        var measures = LayoutMeasures.Of(ball);
        var sheet = MarkingSheet.Of(ball);
        Assert.Equal(["grip centre", "positive axis point", "thumb", "middle finger", "ring finger"], sheet.Arcs.Select(a => a.Name));
        Assert.Equal(4.5 * Inch, sheet.Arcs[1].FromPin, 1e-15);
        Assert.Equal(measures.PinToGripCentre, sheet.Arcs[0].FromPin, 1e-15);
        Assert.Equal(measures.MassBiasToAxis!.Value, sheet.Arcs[1].FromMassBias!.Value, 1e-15);
        // A right-hander's angle at the pin turns counter-clockwise from the mark: the axis point lies to the left of the way from pin to mark.
        Assert.Equal(Hand.Left, sheet.Arcs[1].Side);
        Assert.Equal(Hand.Right, MarkingSheet.Of(Known.LayOut(Layout, Grip.Fingertip, AxisPoint with { Hand = Hand.Left })).Arcs[1].Side);
        Assert.Contains("4 1/2\"", sheet.ToString());
        // Two arcs and the side find the place again (spherical law of cosines with pin and mark a quarter apart).
        foreach (var (arc, place) in sheet.Arcs.Zip((Vector3D[])[ball.Marks.GripCentre!.Value, ball.Marks.PositiveAxis!.Value, ball.Marks.Thumb!.Value, ball.Marks.MiddleFinger!.Value, ball.Marks.RingFinger!.Value]))
        {
            var (x, y) = (Math.Cos(arc.FromPin / ball.Radius), Math.Cos(arc.FromMassBias!.Value / ball.Radius));
            var z = Math.Sqrt(1 - x * x - y * y) * (arc.Side == Hand.Left ? 1 : -1);
            Assert.True((new Vector3D(x, y, z) - place).Length < 1e-12);
        }
        var plain = MarkingSheet.Of(Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0.04 * Inch).Drill(Layout, Grip.Fingertip with { Thumbless = true }, AxisPoint));
        Assert.Equal(4, plain.Arcs.Count);
        Assert.All(plain.Arcs, a => Assert.Null(a.FromMassBias));
        SolidTests.Refused(() => MarkingSheet.Of(Known), "no grip to mark");
    }
}
