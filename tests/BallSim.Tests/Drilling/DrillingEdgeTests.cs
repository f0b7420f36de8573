using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Tests.Balls;
using static BallSim.Units;

namespace BallSim.Tests.Drilling;

/// <summary>Ranges at their ends, sentences in inches, and holes whose walls and lines are known in closed form.</summary>
public class DrillingEdgeTests
{
    private static readonly Layout Layout = new(4.5 * Inch, 50 * Degree, 40 * Degree);

    private static readonly PositiveAxisPoint AxisPoint = new(5 * Inch, 0.5 * Inch);

    private static Ball Known => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce);

    private static void Refused(Func<object> build, string part) => SolidTests.Refused(build, part);

    public static TheoryData<string, double, double> Ranges => new()
    {
        { "MiddleSpan", 1.5, 6.5 }, { "RingSpan", 1.5, 6.5 }, { "Bridge", 0.1, 1 }, { "ForwardPitch", -1.5, 1.5 }, { "LateralPitch", -1.5, 1.5 }, { "Over", -8, 8 }, { "Up", -6, 6 }, { "diameter", 0.1, 2 }, { "depth", 0.1, 8 },
        { "thickness", 0.1, 3 },
    };

    [Theory, MemberData(nameof(Ranges))]
    public void Ranges_in_inches_hold_at_their_ends_and_nowhere_beyond(string name, double low, double high)
    {
        object Made(double inches) => name switch
        {
            "MiddleSpan" => Grip.Fingertip with { MiddleSpan = inches * Inch },
            "RingSpan" => Grip.Fingertip with { RingSpan = inches * Inch },
            "Bridge" => Grip.Fingertip with { Bridge = inches * Inch },
            "ForwardPitch" => new Bore(1 * Inch, 1 * Inch) with { ForwardPitch = inches * Inch },
            "LateralPitch" => new Bore(1 * Inch, 1 * Inch) with { LateralPitch = inches * Inch },
            "Over" => new PositiveAxisPoint(0, 0) with { Over = inches * Inch },
            "Up" => new PositiveAxisPoint(0, 0) with { Up = inches * Inch },
            "diameter" => new Hole("h", Vector3D.UnitX, Vector3D.UnitX, inches * Inch, 1 * Inch),
            "depth" => new Hole("h", Vector3D.UnitX, Vector3D.UnitX, 1 * Inch, inches * Inch),
            _ => DensityProfile.Shell(inches * Inch, 1200),
        };
        _ = Made(low);
        _ = Made(high);
        Refused(() => Made(low - 0.001), name);
        Refused(() => Made(high + 0.001), name);
    }

    [Fact]
    public void Grips_have_the_measures_their_comments_name()
    {
        Assert.Equal("spans 4.5 and 4.5 in, bridge 0.25 in; thumb 1 in wide, 2.75 in deep, pitch 0 in forward, 0 in lateral; middle finger 0.969 in wide, 1.25 in deep, pitch 0 in forward, -0.25 in lateral; "
            + "ring finger 0.969 in wide, 1.25 in deep, pitch 0 in forward, 0.25 in lateral", Grip.Fingertip.ToString());
        Assert.Equal("spans 3.25 and 3.25 in, bridge 0.375 in; thumb 1 in wide, 2.75 in deep, pitch 0 in forward, 0 in lateral; middle finger 0.875 in wide, 2 in deep, pitch 0 in forward, -0.375 in lateral; "
            + "ring finger 0.875 in wide, 2 in deep, pitch 0 in forward, 0.375 in lateral", Grip.Conventional.ToString());
        Assert.Equal("1 in wide, 2 in deep, pitch 0.125 in forward, -0.5 in lateral", new Bore(1 * Inch, 2 * Inch, 0.125 * Inch, -0.5 * Inch).ToString());
        Assert.Equal("thumb: 1 in wide, 2.75 in deep", Grip.Fingertip.Holes(Known.LayOut(Layout, Grip.Fingertip, AxisPoint))[0].ToString());
        Assert.Equal("5 in over, 0.5 in up, right hand", AxisPoint.ToString());
        Assert.Equal("4.75 in over, 0.25 in down, left hand", new PositiveAxisPoint(4.75 * Inch, -0.25 * Inch, Hand.Left).ToString());
        Assert.Equal("4 in over, 0 in up, left hand", new PositiveAxisPoint(4 * Inch, 0, Hand.Left).ToString());
        Assert.Equal("mean density throughout (assumed)", DensityProfile.Mean.ToString());
        Assert.Equal("1.250 g/mL throughout", DensityProfile.Uniform(1250).ToString());
        Assert.Equal("cover of 1.200 g/mL, 0.75 in thick, the rest by the ball's mass", DensityProfile.Shell(0.75 * Inch, 1200).ToString());
        var measures = LayoutMeasures.Of(Known.LayOut(Layout, Grip.Fingertip, AxisPoint));
        Assert.StartsWith("pin to axis 4.500 in, angle at the pin 50.0°, angle at the axis 40.0°", measures.ToString());
        Assert.Contains(FormattableString.Invariant($"mark to axis {measures.MassBiasToAxis!.Value / Inch:F3} in"), measures.ToString());
    }

    // Two holes along the same direction: their wall is the distance of the axes less the half widths. Two that come in square to one another: that of the corners of their bottoms, in the plane of the axes.
    [Theory]
    [InlineData(1.0, 0.75, 1.25, 2.0)]
    [InlineData(0.5, 1.0, 1.0, 1.5)]
    public void Walls_of_parallel_and_of_square_holes_are_known(double width, double other, double depth, double otherDepth)
    {
        const double radius = 4.3 * Inch;
        Hole Along(double x, double d, double deep) => new("h", new Vector3D(x * Inch, 0, Math.Sqrt(radius * radius - x * x * Inch * Inch)), Vector3D.UnitZ, d * Inch, deep * Inch);
        Assert.Equal((2.2 - (width + other) / 2) * Inch, HoleCheck.Wall(Along(-1, width, depth), Along(1.2, other, otherDepth), radius), 1e-8);
        // Bottoms at 4.3 in less the depth from the centre along x and y.
        var (a, b) = (new Hole("a", Vector3D.UnitX, Vector3D.UnitX, width * Inch, depth * Inch), new Hole("b", Vector3D.UnitY, Vector3D.UnitY, other * Inch, otherDepth * Inch));
        Assert.Equal(double.Hypot(4.3 - depth - other / 2, 4.3 - otherDepth - width / 2) * Inch, HoleCheck.Wall(a, b, radius), 1e-7);
        Assert.Equal(HoleCheck.Wall(a, b, radius), HoleCheck.Wall(b, a, radius), 1e-7);
        // Deep enough to meet: no wall.
        Assert.Equal(0, HoleCheck.Wall(new("a", Vector3D.UnitX, Vector3D.UnitX, width * Inch, 4.5 * Inch), new("b", Vector3D.UnitY, Vector3D.UnitY, other * Inch, 4.5 * Inch), radius));
    }

    [Fact]
    public void Holes_that_do_not_fit_are_told_in_inches()
    {
        var ball = Known;
        object Drilled(Hole hole) => DrillSheet.Of(ball, [hole]);
        Refused(() => Drilled(new("a", Vector3D.UnitX, -Vector3D.UnitX, 1 * Inch, 1 * Inch)), "misses the ball: its axis passes 0.000 in beside the centre and it is 1.000 in wide");
        Refused(() => Drilled(new("a", new(1, 0, 0.2), Vector3D.UnitZ, 1.5 * Inch, 1 * Inch)), "it is 1.500 in wide; the whole of it must enter a ball of 4.275 in radius");
        Refused(() => Drilled(new("a", Vector3D.UnitX, Vector3D.UnitX, 2 * Inch, 0.11 * Inch)), "is too shallow: 0.110 in deep and 2.000 in wide");
        // The far corner of the bottom: hypot(8 - 4.275, 0.5) is inside of the ball, hypot(3.92, 2.28) is not.
        _ = Drilled(new("a", Vector3D.UnitX, Vector3D.UnitX, 1 * Inch, 8 * Inch));
        var off = new Vector3D(Math.Sqrt(1 - 0.3 * 0.3), 0.3, 0);
        Refused(() => Drilled(new("a", off, Vector3D.UnitX, 2 * Inch, 8 * Inch)), FormattableString.Invariant($"its bottom reaches {double.Hypot(4.275 * off.X - 8, 0.3 * 4.275 + 1):F3} in from the centre"));
    }

    [Fact]
    public void A_sheet_tells_what_there_is_and_nothing_else()
    {
        var plain = DrillSheet.Of(Known, [new("a", Vector3D.UnitX, Vector3D.UnitX, 1 * Inch, 1 * Inch)]);
        Assert.Null(plain.ThinnestWall);
        Assert.Null(plain.Balance);
        Assert.Equal("mean density throughout (assumed)", plain.DrilledOutOf);
        var two = DrillSheet.Of(Known, [.. plain.Holes, new("b", Vector3D.UnitY, Vector3D.UnitY, 1 * Inch, 1 * Inch)], DensityProfile.Uniform(1100));
        Assert.Equal(HoleCheck.Wall(two.Holes[0], two.Holes[1], Known.Radius), two.ThinnestWall);
        Assert.Equal("1.100 g/mL throughout", two.DrilledOutOf);
        Assert.Equal("the build", DrillSheet.Of(BuildTests.Design.Ball, [plain.Holes[0]]).DrilledOutOf);
        Refused(() => DrillSheet.Of(BuildTests.Design.Ball, [plain.Holes[0]], DensityProfile.Mean), "leave out the density profile");
        Refused(() => DrillSheet.Of(BuildTests.Design.Ball with { Mass = 1.001 * BuildTests.Design.Ball.Mass }, [plain.Holes[0]]), "was changed after it was built");
        Assert.Throws<ArgumentNullException>(() => DrillSheet.Of(null!, [plain.Holes[0]]));
        Assert.Throws<ArgumentNullException>(() => DrillSheet.Of(Known, null!));
        // A symmetric ball has no preferred axis; a hole on the axis of greatest inertia leaves it where it is, whichever way it is named.
        Assert.Null(DrillSheet.Of(Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch), [plain.Holes[0]]).PreferredAxisShift);
        foreach (var side in (Vector3D[])[Vector3D.UnitY, -Vector3D.UnitY])
        {
            var on = DrillSheet.Of(Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch), [new("a", side, side, 1 * Inch, 2 * Inch)]);
            Assert.Equal(0, on.PreferredAxisShift!.Value, 1e-7);
        }
    }

    [Fact]
    public void A_cover_of_another_density_leaves_the_mass_and_has_its_limits()
    {
        var ball = Known;
        Hole hole = new("a", Vector3D.UnitX, Vector3D.UnitX, 1 * Inch, 0.5 * Inch);
        // A hole that stays in the cover takes out the cover's density: in the ratio of densities to a uniform one.
        var (thin, dense) = (DrillSheet.Of(ball, [hole], DensityProfile.Shell(1 * Inch, 1000)).Removed.Mass, DrillSheet.Of(ball, [hole], DensityProfile.Shell(1 * Inch, 1250)).Removed.Mass);
        Assert.Equal(1.25, dense / thin, 1e-12);
        Assert.Equal(DrillSheet.Of(ball, [hole], DensityProfile.Uniform(1000)).Removed.Mass, thin, 1e-12);
        Refused(() => DrillSheet.Of(ball, [hole], DensityProfile.Shell(3 * Inch, 2000)), "outweighs the ball");
        var small = new Ball { Mass = 2, Radius = 2.9 * Inch, Inertia = new(3e-3, 3e-3, 3e-3) };
        Refused(() => DrillSheet.Of(small, [hole], DensityProfile.Shell(3 * Inch, 100)), "leaves no room");
    }

    [Fact]
    public void Wanted_balances_and_depths_are_within_their_bounds()
    {
        double[] least = [2 * Inch, 0.5 * Inch, 0.5 * Inch], greatest = [3 * Inch, 1 * Inch, 1 * Inch];
        object For(double[] l, double[] g, double? top = null, double? side = null, double? finger = null) => BalanceDepths.For(Known, Layout, Grip.Fingertip, AxisPoint, l, g, top, side, finger);
        Assert.Throws<ArgumentNullException>(() => For(null!, greatest, 0));
        Assert.Throws<ArgumentNullException>(() => For(least, null!, 0));
        Refused(() => For(least, greatest), "nothing is wanted");
        Refused(() => For(least, greatest, 16.1 * Ounce), "top");
        Refused(() => For(least, greatest, side: -16.1 * Ounce), "side");
        Refused(() => For(least, greatest, finger: double.NaN), "finger");
        Refused(() => For(least[..2], greatest, 0), "the grip has 3 holes; least names 2 depths");
        Refused(() => For([2 * Inch, 0.5 * Inch, 0.24 * Inch], greatest, 0), "least[2]");
        Refused(() => For([4.01 * Inch, 0.5 * Inch, 0.5 * Inch], [4.01 * Inch, 1 * Inch, 1 * Inch], 0), "least[0]");
        Refused(() => For(least, [1.9 * Inch, 1 * Inch, 1 * Inch], 0), "greatest[0]");
        Refused(() => For(least, [3 * Inch, 1 * Inch, 4.01 * Inch], 0), "greatest[2]");
        // Out of reach: what is missed is the difference, of what is wanted alone.
        var found = (BalanceDepths)For(least, greatest, side: 5 * Ounce, finger: -6 * Ounce);
        Assert.Equal((0, 5 * Ounce - found.Balance.Side, -6 * Ounce - found.Balance.Finger), (found.Residual.Top, found.Residual.Side, found.Residual.Finger));
        Assert.True(Math.Abs(found.Residual.Side) > 1 * Ounce && Math.Abs(found.Residual.Finger) > 1 * Ounce);
        // Depths that are given leave nothing to choose.
        var only = (BalanceDepths)For(least, least, top: 0);
        Assert.Equal(least, only.Depths);
        Assert.Equal(only.Least.Top, only.Greatest.Top, 1e-15);
        Assert.Equal(only.Balance.Top, only.Least.Top, 1e-12);
    }

    [Fact]
    public void A_place_on_the_line_from_pin_to_mark_is_on_neither_side()
    {
        Ball With(Vector3D centre, Vector3D up) => Known.LayOut(centre, up, Grip.Fingertip, AxisPoint);
        // The pin is x and the mark y: going from pin to mark, z lies on the left.
        Assert.Null(MarkingSheet.Of(With(new(1, 1, 0), new(-1, 1, 0))).Arcs[0].Side);
        Assert.Equal(Hand.Left, MarkingSheet.Of(With(new(1, 1, 0.3), new(-1, 1, 0))).Arcs[0].Side);
        Assert.Equal(Hand.Right, MarkingSheet.Of(With(new(1, 1, -0.3), new(-1, 1, 0))).Arcs[0].Side);
        Assert.Null(MarkingSheet.Of(Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch).LayOut(Layout, Grip.Fingertip, AxisPoint)).Arcs[0].FromMassBias);
        Refused(() => MarkingSheet.Of(Known), "has no grip to mark");
        Assert.Throws<ArgumentNullException>(() => MarkingSheet.Of(null!));
        // On a ball of 4 in radius an angle of 1.125 is 4 1/2 in.
        var sized = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, diameter: 8.5 * Inch);
        string Printed(double inches) => MarkingSheet.Of(sized.LayOut(new(Math.Cos(inches / 4.25), Math.Sin(inches / 4.25), 0), Vector3D.UnitZ, Grip.Fingertip, AxisPoint)).ToString().Split('\n')[1];
        Assert.StartsWith("grip centre             4 1/2\"", Printed(4.5));
        Assert.StartsWith("grip centre                 3\"", Printed(3));
        Assert.StartsWith("grip centre           2 63/64\"", Printed(2 + 63.0 / 64));
    }

    [Fact]
    public void The_way_to_an_arc_is_square_to_it_or_to_its_end()
    {
        var (x, y) = (Vector3D.UnitX, Vector3D.UnitY);
        Vector3D At(double along, double above) => new(Math.Cos(above) * Math.Cos(along), Math.Cos(above) * Math.Sin(along), Math.Sin(above));
        Assert.Equal(0.3, Sphere.ToArc(At(0.5, 0.3), x, y), 1e-15);
        Assert.Equal(0.3, Sphere.ToArc(At(0.5, -0.3), x, y), 1e-15);
        // Beyond an end: to the end, cos = cos cos.
        Assert.Equal(Math.Acos(Math.Cos(0.4) * Math.Cos(0.3)), Sphere.ToArc(At(-0.4, 0.3), x, y), 1e-14);
        Assert.Equal(Math.Acos(Math.Cos(0.2) * Math.Cos(0.3)), Sphere.ToArc(At(Math.PI / 2 + 0.2, 0.3), x, y), 1e-14);
        // An arc that is a point, and a place on the arc.
        Assert.Equal(0.7, Sphere.ToArc(At(0.7, 0), x, x), 1e-14);
        Assert.Equal(0, Sphere.ToArc(At(0.7, 0), x, y), 1e-15);
    }

    [Fact]
    public void A_layout_ends_before_half_the_circumference_and_an_axis_before_a_quarter()
    {
        var ball = Known;
        var half = Math.PI * ball.Radius;
        Refused(() => ball.LayOut(Layout with { PinToAxis = half }, Grip.Fingertip, AxisPoint), "half the circumference of this ball, 0.34113 m");
        var small = new Ball { Mass = 2, Radius = 3.6 * Inch, Inertia = new(5e-3, 5e-3, 5e-3) };
        Refused(() => new PositiveAxisPoint(0, 5.8 * Inch).DirectionOn(small with { Marks = ball.LayOut(Layout, Grip.Fingertip, AxisPoint).Marks }), "reaches a quarter of this ball's circumference, 0.143634 m");
        Assert.Throws<ArgumentNullException>(() => ball.LayOut(Layout, null!, AxisPoint));
    }
}
