using BallSim.Balls;
using BallSim.Drilling;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Units;

namespace BallSim.Tests.Laws;

/// <summary>What holds of every ball that is built, filled to a weight and drilled.</summary>
[Properties(Arbitrary = [typeof(DrillLaws.Cases)], MaxTest = 40)]
public class DrillLaws
{
    public sealed record Case(Ball Ball, Layout Layout, Grip Grip, PositiveAxisPoint AxisPoint)
    {
        public DrillSheet Sheet => DrillSheet.Of(Ball, Layout, Grip, AxisPoint);
    }

    public sealed record Pour(BallBuild Build, double Share);

    public static class Cases
    {
        public static Arbitrary<Pour> Pour() => (
            from build in Build() from share in AnySolid.Between(0, 1) select new Pour(build, share)).ToArbitrary();

        public static Arbitrary<Case> Case() => (
            from build in Build()
            from known in Gen.Choose(0, 2)
            from pinToAxis in AnySolid.Between(1 * Inch, 6.5 * Inch)
            from atPin in AnySolid.Between(-Math.PI, Math.PI)
            from atAxis in AnySolid.Between(-Math.PI, Math.PI)
            from over in AnySolid.Between(3 * Inch, 6 * Inch)
            from up in AnySolid.Between(-1 * Inch, 1 * Inch)
            from hand in Gen.Elements(Hand.Right, Hand.Left)
            from thumb in AnySolid.Between(2 * Inch, 3.3 * Inch)
            from grip in Gen.Elements(Grip.Fingertip, Grip.Conventional, Grip.Fingertip with { Thumbless = true })
            select new Case(known == 0 ? Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0.05 * Inch, 0.02 * Inch, centreOfMass: new(3e-4, 2e-4, -4e-4)) : build.Ball,
                new(pinToAxis, atPin, atAxis), grip with { Thumb = grip.Thumb with { Depth = thumb } }, new(over, up, hand))).ToArbitrary();

        private static Gen<BallBuild> Build() =>
            from form in AnySolid.Form()
            from turn in AnySolid.Turn()
            from place in AnySolid.Vector(0.015)
            from density in AnySolid.Between(1300, 3500)
            from cover in AnySolid.Between(0.4 * Inch, 0.9 * Inch)
            from filler in AnySolid.Between(600, 1300)
            select new BallBuild
            {
                Radius = 8.55 / 2 * Inch, CoverThickness = cover, CoverDensity = 1180, FillerDensity = filler, Core = [new(form.Turned(turn).Moved(place), density)],
            };
    }

    [Property]
    public bool Drilling_removes_mass_and_never_raises_a_principal_moment(Case c)
    {
        var (before, after) = (c.Ball.Inertia.Principal, c.Sheet.Ball.Inertia.Principal);
        return c.Sheet.Ball.Mass < c.Ball.Mass && after.LeastMoment <= before.LeastMoment && after.MiddleMoment <= before.MiddleMoment
            && after.GreatestMoment <= before.GreatestMoment;
    }

    [Property]
    public bool What_was_removed_put_back_is_the_ball(Case c)
    {
        var sheet = c.Sheet;
        var (again, before) = (sheet.Ball.Properties + sheet.Removed, c.Ball.Properties);
        return Math.Abs(again.Mass - before.Mass) < 1e-14 && (again.CentreOfMass - before.CentreOfMass).Length < 1e-15
            && Math.Abs(again.HighRg - before.HighRg) < 1e-14;
    }

    [Property]
    public bool Static_balance_is_the_offset_in_the_directions_of_the_grip(Case c)
    {
        var (balance, ball) = (c.Sheet.Balance!.Value, c.Sheet.Ball);
        var d = ball.CentreOfMass;
        return Math.Abs(double.Hypot(double.Hypot(balance.Top, balance.Side), balance.Finger) - ball.Mass * d.Length / (3.36 * Inch)) < 1e-14
            && Math.Abs(balance.Side - ball.Mass * d.Dot(ball.Marks.GripRight!.Value) / (3.36 * Inch)) < 1e-15;
    }

    [Property]
    public bool The_other_hand_is_drilled_as_the_mirror_image(Case c)
    {
        // A ball known by its numbers; a build has no mirror image among its turned parts.
        var ball = Ball.FromSpecification(Math.Min(c.Ball.Mass, 16 * Pound), 2.5 * Inch, 0.05 * Inch, 0.02 * Inch, centreOfMass: new(3e-4, 2e-4, -4e-4));
        var expected = Mirror.Of(ball.Drill(c.Layout, c.Grip, c.AxisPoint));
        var got = Mirror.Of(ball).Drill(c.Layout, c.Grip, c.AxisPoint with { Hand = Mirror.Of(c.AxisPoint.Hand) });
        var (a, b) = (StaticBalance.Of(expected), StaticBalance.Of(got));
        return (expected.CentreOfMass - got.CentreOfMass).Length < 1e-15 && Math.Abs(expected.HighRg - got.HighRg) < 1e-14
            && Math.Abs(a.Side - b.Side) < 1e-13 && Math.Abs(a.Finger - b.Finger) < 1e-13;
    }

    [Property]
    public bool The_filler_solved_for_a_weight_pours_that_weight(Pour p)
    {
        var (least, greatest) = ((p.Build with { FillerDensity = 300 }).Properties.Mass, (p.Build with { FillerDensity = 1500 }).Properties.Mass);
        var weight = Math.Clamp(least + p.Share * (greatest - least), 5 * Pound, 16.05 * Pound);
        var blend = FillerBlend.For(p.Build, weight, 300, 1500);
        return Math.Abs(BuildSheet.Of(blend.Build).Ball.Mass - weight) <= 1e-12 * weight;
    }
}
