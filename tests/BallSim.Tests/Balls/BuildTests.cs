using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Tests.Balls;

public class BuildTests
{
    /// <summary>An invented ball: a leaning pear of a core with a flat side weight, so that all three moments differ.</summary>
    internal static BallBuild Design { get; } = new()
    {
        Radius = 8.55 / 2 * Inch,
        CoverThickness = 0.75 * Inch,
        CoverDensity = 1180,
        FillerDensity = 900,
        Core =
        [
            new(Solid.Revolved(Profile.From(-2.4 * Inch, 0).LineTo(-2.4 * Inch, 1.1 * Inch).ArcTo(-0.8 * Inch, 1.9 * Inch, 1.4 * Inch, 1.0 * Inch).LineTo(2.2 * Inch, 0)), 1900),
            new(Solid.Box(0.7 * Inch, 1.2 * Inch, 1.0 * Inch).Moved(new(2.3 * Inch, 0, -0.3 * Inch)), 2600),
        ],
    };

    [Fact]
    public void A_build_is_the_sum_of_its_layers()
    {
        var (inner, r) = (Design.Radius - Design.CoverThickness, Design.Radius);
        var byHand = Solid.SphericalShell(inner, r).Properties(1180) + (Solid.Sphere(inner).Properties(900) - Design.Core.Aggregate(default(MassProperties), (s, p) => s + p.Solid.Properties(900)))
            + Design.Core.Aggregate(default(MassProperties), (s, p) => s + p.Properties);
        var body = Design.Properties;
        Assert.Equal(byHand.Mass, body.Mass, 1e-12);
        Assert.True((byHand.CentreOfMass - body.CentreOfMass).Length < 1e-14);
        Assert.Equal(byHand.HighRg, body.HighRg, 1e-13);
        Assert.Equal(byHand.LowRg, body.LowRg, 1e-13);
    }

    [Fact]
    public void The_ball_stands_in_its_own_frame()
    {
        var sheet = BuildSheet.Of(Design);
        var ball = sheet.Ball;
        Assert.True(sheet.IsAsymmetric);
        Assert.Equal(Vector3D.UnitY, ball.Marks.MassBias);
        var i = ball.Inertia;
        Assert.True(i.Xx < i.Zz && i.Zz < i.Yy);
        Assert.All((double[])[i.Xy, i.Xz, i.Yz], off => Assert.True(Math.Abs(off) < 1e-15));
        Assert.True(ball.CentreOfMass.Y >= 0 && sheet.Pin.Dot(Design.PinSide) > 0);
        // Pin and axis in the drawing carry the moments there.
        Assert.Equal(i.Xx, sheet.Properties.Inertia.About(sheet.Pin), 1e-15);
        Assert.Equal(i.Yy, sheet.Properties.Inertia.About(sheet.HighAxis), 1e-15);
        Assert.True((sheet.DrawingToBall.Apply(sheet.Properties.CentreOfMass) - ball.CentreOfMass).Length < 1e-16);
        Assert.Equal(ball.Radius * sheet.Pin.AngleTo(sheet.Properties.CentreOfMass), sheet.PinToCg!.Value, 1e-12);
        Assert.Equal(ball.Mass * ball.CentreOfMass.Length / (3.36 * Inch), sheet.TopWeight(), 1e-15);
        // A ball by the same numbers from its specification is the same ball.
        var same = Ball.FromSpecification(ball.Mass, ball.LowRg, ball.Differential, ball.IntermediateDifferential, 2 * ball.Radius, centreOfMass: ball.CentreOfMass);
        Assert.Equal(same.Inertia.Yy, ball.Inertia.Yy, 1e-15);
        Assert.Equal(same.Inertia.Zz, ball.Inertia.Zz, 1e-15);
    }

    [Fact]
    public void A_drawing_turned_as_a_whole_gives_the_same_ball()
    {
        var turn = Rotation.About(new(0.3, -0.5, 0.8), 1.1);
        var turned = BuildSheet.Of(Design.WithCoreTurned(turn) with { PinSide = turn.Apply(Design.PinSide) });
        var sheet = BuildSheet.Of(Design);
        Assert.True((turned.Ball.CentreOfMass - sheet.Ball.CentreOfMass).Length < 1e-13, $"{turned.Ball.CentreOfMass} {sheet.Ball.CentreOfMass} {(turned.Ball.CentreOfMass - sheet.Ball.CentreOfMass).Length}");
        Assert.Equal(sheet.Ball.Inertia.Yy, turned.Ball.Inertia.Yy, 1e-14);
        Assert.True((turned.Pin - turn.Apply(sheet.Pin)).Length < 1e-9);
    }

    [Fact]
    public void A_round_core_on_its_axis_makes_a_symmetric_ball_without_a_mark()
    {
        var build = Design with { Core = [new(Solid.Ellipsoid(1.5 * Inch, 1.5 * Inch, 2.2 * Inch).Moved(new(0, 0, 0.05 * Inch)), 2200)] };
        var sheet = BuildSheet.Of(build);
        Assert.False(sheet.IsAsymmetric);
        Assert.Null(sheet.Ball.Marks.MassBias);
        Assert.Equal(0, sheet.PinToCg!.Value, 1e-9);
        Assert.True((sheet.Pin - Vector3D.UnitZ).Length < 1e-12);
        // Off its axis: the hardest axis to turn about stands square to the plane of axis and offset (parallel axes), too little so for a mark.
        var shifted = BuildSheet.Of(build.WithCoreMoved(new(0.02 * Inch, 0.01 * Inch, 0)));
        Assert.Null(shifted.Ball.Marks.MassBias);
        Assert.Equal(0, shifted.HighAxis.Dot(new(0.02, 0.01, 0)), 1e-9);
        Assert.True(shifted.Ball.CentreOfMass.Z > 0);
        // A ball without any core: nothing has an axis, the pin goes where it is set.
        var even = BuildSheet.Of(Design with { Core = [], PinSide = new(1, 2, 2) });
        Assert.True((even.Pin - new Vector3D(1, 2, 2).Unit).Length < 1e-12);
        Assert.Null(even.PinToCg);
    }

    [Fact]
    public void Parts_lie_beside_each_other_or_in_each_other()
    {
        var ball = Solid.Sphere(1.5 * Inch);
        var hollow = Design with { Core = [new(ball, 2000), new(Solid.Sphere(0.5 * Inch).Moved(new(0.5 * Inch, 0, 0)), 1000)] };
        var byHand = Design with { Core = [] };
        var expected = byHand.Properties.Mass + ball.Volume * (2000 - 900) + Solid.Sphere(0.5 * Inch).Volume * (1000 - 2000);
        Assert.Equal(expected, hollow.Properties.Mass, 1e-12);
        SolidTests.Refused(() => (Design with { Core = [new(ball, 2000), new(Solid.Sphere(0.5 * Inch).Moved(new(1.4 * Inch, 0, 0)), 1000)] }).Ball, "overlap over");
        // Face to face is no overlap.
        var stack = Design with { Core = [new(Solid.Cylinder(1 * Inch, 1 * Inch), 2000), new(Solid.Cylinder(1 * Inch, 1 * Inch).Moved(new(0, 0, 1 * Inch)), 1500)] };
        Assert.Equal(byHand.Properties.Mass + Math.PI * Math.Pow(Inch, 3) * (1100 + 600), stack.Properties.Mass, 1e-12);
        SolidTests.Refused(() => (Design with { Core = [new(Solid.Sphere(3.6 * Inch), 1500)] }).Ball, "beyond the");
        SolidTests.Refused(() => Design.WithCoreMoved(new(1.5 * Inch, 0, 0)).Ball, "beyond the");
        SolidTests.Refused(() => Design with { CoverDensity = 1.18 }, "for grams per millilitre write 1.18 * GramPerMillilitre");
    }

    [Fact]
    public void Filler_for_a_weight()
    {
        foreach (var pounds in (double[])[12, 14, 15, 16])
        {
            var blend = FillerBlend.For(Design, pounds * Pound, light: 400, dense: 1400);
            Assert.Equal(pounds * Pound, blend.Build.Properties.Mass, 1e-12 * pounds * Pound);
            Assert.Equal(blend.Density, blend.LightShare * 400 + (1 - blend.LightShare) * 1400, 1e-9);
        }
        // What lies in another part takes no room from the filler.
        var nested = Design with { Core = [new(Solid.Sphere(1.5 * Inch), 2000), new(Solid.Sphere(0.5 * Inch).Moved(new(0.5 * Inch, 0, 0)), 1000)] };
        Assert.Equal(14 * Pound, FillerBlend.For(nested, 14 * Pound, light: 400, dense: 1400).Build.Properties.Mass, 1e-12);
        SolidTests.Refused(() => FillerBlend.For(Design, 7 * Pound, 600, 1100), "is out of reach of this core and cover: with fillers from 600 to 1100 kg/m³ the ball weighs from");
        SolidTests.Refused(() => FillerBlend.For(Design, 15, 600, 1100), "for pounds write 15 * Pound");
        var line = WeightRow.Line(Design, 500, 1300);
        Assert.Equal(11, line.Count);
        Assert.Contains(line, r => r.Sheet is null && r.Refusal.Contains("out of reach", StringComparison.Ordinal));
        Assert.All(line.Where(r => r.Sheet is not null), r => Assert.Equal(r.Weight, r.Sheet!.Ball.Mass, 1e-12));
        // Common practice, no source: of balls with the same core the lighter ones have the higher radii of gyration.
        var rgs = line.Where(r => r.Sheet is not null).Select(r => r.Sheet!.Ball.LowRg).ToArray();
        Assert.Equal(rgs.OrderDescending(), rgs);
    }

    [Fact]
    public void Shift_for_a_top_weight()
    {
        var build = Design with { Core = [new(Solid.Ellipsoid(1.5 * Inch, 1.6 * Inch, 2.2 * Inch).Moved(new(0.01 * Inch, 0, 0)), 2200)] };
        foreach (var ounces in (double[])[1, 2.5, 4])
        {
            var shift = CoreShift.For(build, ounces * Ounce);
            var sheet = BuildSheet.Of(shift.Build);
            Assert.Equal(ounces * Ounce, sheet.TopWeight(), 1e-13);
            Assert.Equal(build.Properties.Mass, sheet.Ball.Mass, 1e-13);
            Assert.True(sheet.Properties.CentreOfMass.Z > 0 && shift.Shift > 0);
        }
        // A light core goes the other way.
        var light = build with { FillerDensity = 1300, Core = [new(build.Core[0].Solid, 900)] };
        Assert.True(CoreShift.For(light, 1 * Ounce).Shift < 0);
        // Off the line by 0.01 in no shift along it balances the ball; and the cover ends it.
        SolidTests.Refused(() => CoreShift.For(build, 0), "out of reach of a shift along (0, 0, 1): it goes from");
        var wide = build with { Core = [new(Solid.Ellipsoid(1.5 * Inch, 1.6 * Inch, 3.4 * Inch), 2200)] };
        SolidTests.Refused(() => CoreShift.For(wide, 8 * Ounce), "the core having room from");
        SolidTests.Refused(() => CoreShift.For(build with { FillerDensity = 2200 }, 1 * Ounce), "as heavy as the filler");
    }
}
