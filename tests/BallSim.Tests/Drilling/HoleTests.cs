using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Tests.Balls;
using static BallSim.Units;

namespace BallSim.Tests.Drilling;

public class HoleTests
{
    private static readonly Layout Layout = new(pinToAxis: 4.5 * Inch, angleAtPin: 50 * Degree, angleAtAxis: 40 * Degree);
    private static readonly PositiveAxisPoint AxisPoint = new(over: 5 * Inch, up: 0.5 * Inch);

    private static Ball Known => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce);

    private static void Refused(Func<object> build, string part) => SolidTests.Refused(build, part);

    [Fact]
    public void A_hole_leans_by_its_pitches()
    {
        // This library's convention: the axis passes beside the centre by the pitch; forward: the bottom leans towards the grip centre; lateral: along grip right.
        foreach (var hand in (Hand[])[Hand.Right, Hand.Left])
        {
            var laidOut = Known.LayOut(Layout, Grip.Fingertip, AxisPoint with { Hand = hand });
            var marks = laidOut.Marks;
            foreach (var (forward, lateral) in ((double, double)[])[(0.375, 0), (-0.25, 0), (0, 0.25), (0, -0.125), (0.25, -0.125)])
            {
                var bore = new Bore(1 * Inch, 1 * Inch, forward * Inch, lateral * Inch);
                var holes = (Grip.Fingertip with { Thumb = bore, Middle = bore, Ring = bore }).Holes(laidOut);
                Assert.Equal(3, holes.Count);
                foreach (var hole in holes)
                {
                    Assert.Equal(double.Hypot(forward, lateral) * Inch, hole.PitchOn(laidOut.Radius), 1e-15);
                    // How the axis passes the centre, from the straight hole's to this one's.
                    var foot = laidOut.Radius * (hole.Entry - hole.Entry.Dot(hole.Axis) * hole.Axis);
                    Assert.Equal(Math.Sign(lateral), Math.Sign(Math.Round(foot.Dot(Tangent(marks.GripRight!.Value, hole.Entry)), 9)));
                    Assert.Equal(Math.Sign(forward), Math.Sign(Math.Round(foot.Dot(SquareTo(marks, hole.Entry)), 9)));
                }
            }
            // Geometry: angle = asin(pitch/R): 1/8 in -> 1.67, 1/4 -> 3.33, 3/8 -> 5.01, 1/2 -> 6.68 degrees on a 27 in ball.
            var ball = Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0.04 * Inch, diameter: 27 / Math.PI * Inch).LayOut(Layout, Grip.Fingertip, AxisPoint with { Hand = hand });
            foreach (var (pitch, degrees) in ((double, double)[])[(0.125, 1.67), (0.25, 3.33), (0.375, 5.01), (0.5, 6.68)])
            {
                var thumb = (Grip.Fingertip with { Thumb = new(1 * Inch, 2 * Inch, pitch * Inch) }).Holes(ball)[0];
                Assert.Equal(degrees, thumb.Entry.AngleTo(thumb.Axis) / Degree, 6e-3);
            }
        }

        static Vector3D Tangent(Vector3D v, Vector3D at) => (v - v.Dot(at) * at).Unit;
        static Vector3D SquareTo(BallMarks marks, Vector3D at)
        {
            var up = at.Cross(Tangent(marks.GripRight!.Value, at));
            return marks.GripCentre!.Value.Dot(up) > 0 ? up : -up;
        }
    }

    [Fact]
    public void Drilling_takes_the_mass_of_the_holes_and_keeps_the_frame()
    {
        var ball = Known;
        var sheet = DrillSheet.Of(ball, Layout, Grip.Fingertip, AxisPoint);
        var drilled = ball.Drill(Layout, Grip.Fingertip, AxisPoint);
        Assert.Equal(sheet.Ball, drilled);
        Assert.Equal(ball.LayOut(Layout, Grip.Fingertip, AxisPoint).Marks, drilled.Marks);
        Assert.Equal(ball.Mass, drilled.Mass + sheet.Removed.Mass, 1e-15);
        // Three cylinders of the mean density; the surface falls away from where the axis meets it by a few tenths of a millimetre: within 2 %.
        var density = ball.Mass / (4 * Math.PI / 3 * Math.Pow(ball.Radius, 3));
        var cylinders = Math.PI / 4 * (1 * 2.75 + 2 * 31.0 / 32 * 31 / 32 * 1.25) * Math.Pow(Inch, 3) * density;
        Assert.InRange(sheet.Removed.Mass, 0.98 * cylinders, cylinders);
        Assert.Equal((drilled.CentreOfMass - ball.CentreOfMass).Length, sheet.CentreOfMassShift.Length);
        Assert.Contains("mean density throughout (assumed)", sheet.ToString());
        // The grip becomes lighter: the imbalance there falls by the removed mass at its distance.
        var before = StaticBalance.Of(sheet.Before);
        var lost = sheet.Removed.Mass * sheet.Removed.CentreOfMass.Dot(drilled.Marks.GripCentre!.Value) / (3.36 * Inch);
        Assert.Equal(before.Top - lost, sheet.Balance!.Value.Top, 1e-15);
        Assert.InRange(lost / Ounce, 1.5, 3);
        // Common practice, no source; a USBC article says: drilling changes RG and differential by about 5 %.
        Assert.InRange(drilled.LowRg / ball.LowRg, 0.97, 1.03);
        Assert.InRange(sheet.PreferredAxisShift!.Value / Degree, 0, 90);
        Assert.InRange(sheet.ThinnestWall!.Value / Inch, 0.01, 0.3);
    }

    [Fact]
    public void Without_a_thumb_two_holes_are_drilled()
    {
        var grip = Grip.Fingertip with { Thumbless = true };
        var sheet = DrillSheet.Of(Known, Layout, grip, AxisPoint);
        Assert.Equal(["middle finger", "ring finger"], sheet.Holes.Select(h => h.Name));
        Assert.Null(sheet.Ball.Marks.Thumb);
        Assert.Equal(Known.LayOut(Layout, Grip.Fingertip, AxisPoint).Marks.RingFinger, sheet.Ball.Marks.RingFinger);
        Assert.True(sheet.Removed.Mass < DrillSheet.Of(Known, Layout, Grip.Fingertip, AxisPoint).Removed.Mass);
        Assert.Contains("no thumb", grip.ToString());
    }

    [Fact]
    public void Profiles_of_density_take_what_they_say()
    {
        var ball = Known;
        double Removed(DensityProfile p) => DrillSheet.Of(ball, Layout, Grip.Fingertip, AxisPoint, p).Removed.Mass;
        Assert.Equal(2 * Removed(DensityProfile.Uniform(600)), Removed(DensityProfile.Uniform(1200)), 1e-14);
        // A shell thicker than every hole is deep is the same as that density throughout.
        Assert.Equal(Removed(DensityProfile.Uniform(1180)), Removed(DensityProfile.Shell(2.99 * Inch, 1180)), 1e-14);
        var mean = ball.Mass / (4 * Math.PI / 3 * Math.Pow(ball.Radius, 3));
        Assert.Equal(Removed(DensityProfile.Mean), Removed(DensityProfile.Shell(0.75 * Inch, mean)), 1e-13);
        Refused(() => Removed(DensityProfile.Shell(2 * Inch, 1700)), "alone outweighs");
        Refused(() => BuildTests.Design.Ball.Drill(Layout, Grip.Fingertip, AxisPoint, DensityProfile.Mean), "leave out the density profile");
    }

    [Fact]
    public void Holes_that_cannot_be_are_refused_with_the_numbers()
    {
        var straight = Grip.Fingertip with { Middle = new(31.0 / 32 * Inch, 1.25 * Inch), Ring = new(31.0 / 32 * Inch, 1.25 * Inch) };
        Refused(() => Known.Drill(Layout, straight, AxisPoint), "\"middle finger\" and \"ring finger\" meet: their axes are 1.217 in apart at the surface and 0.861 in at a depth of 1.250 in");
        var shallow = straight with { Middle = straight.Middle with { Depth = 0.8 * Inch }, Ring = straight.Ring with { Depth = 0.8 * Inch } };
        Assert.True(DrillSheet.Of(Known, Layout, shallow, AxisPoint).ThinnestWall > 0);
        var ball = Known;
        Ball Drilled(params Hole[] holes) => DrillSheet.Of(ball, holes).Ball;
        Refused(() => Drilled(new Hole("far", Vector3D.UnitX, new(0.1, 1, 0), 1 * Inch, 1 * Inch)), "misses the ball: its axis passes 4.254 in beside the centre");
        Refused(() => Drilled(new Hole("out", Vector3D.UnitX, -Vector3D.UnitX, 1 * Inch, 1 * Inch)), "misses the ball");
        Refused(() => Drilled(new Hole("through", Vector3D.UnitX, Vector3D.UnitX, 1 * Inch, 8 * Inch), new Hole("other", -Vector3D.UnitX, -Vector3D.UnitX, 1 * Inch, 1 * Inch)), "meet");
        Refused(() => Drilled(new Hole("through", Vector3D.UnitX, new(1, 1, 0), 1 * Inch, 8 * Inch)), "comes out on the other side");
        Refused(() => Drilled(new Hole("graze", Vector3D.UnitX, new(1, 1, 0), 1.5 * Inch, 0.1 * Inch)), "too shallow");
        Refused(() => Drilled(new Hole("deep", Vector3D.UnitX, Vector3D.UnitX, 1 * Inch, 3)), "for inches write 3 * Inch");
        Refused(() => Grip.Fingertip.Holes(Known), "lay it out first");
        var built = BuildTests.Design.Ball;
        Refused(() => (built with { Mass = 1.001 * built.Mass }).Drill(Layout, Grip.Fingertip, AxisPoint), "changed after it was built");
    }

    // Holes that lean apart towards the inside are nearest at the surface: there their inner edges, half a width from the axis and on the sphere, lie at equal distances on both sides of the middle.
    [Theory]
    [InlineData(1.0, 1.0, 10)]
    [InlineData(0.7, 0.9, 25)]
    [InlineData(1.4, 1.5, 5)]
    public void Holes_that_lean_apart_have_their_thinnest_wall_at_the_surface(double beside, double width, double degrees)
    {
        var r = Known.Radius;
        Hole Leaning(int side) => new("h", new(side * beside * Inch, 0, Math.Sqrt(r * r - beside * beside * Inch * Inch)), new(-side * Math.Sin(degrees * Degree), 0, Math.Cos(degrees * Degree)), width * Inch, 2 * Inch);
        var square = new Vector3D(Math.Cos(degrees * Degree), 0, Math.Sin(degrees * Degree));
        var inner = new Vector3D(beside * Inch, 0, Math.Sqrt(r * r - beside * beside * Inch * Inch)).Dot(square) - width / 2 * Inch;
        var edge = inner * square.X - Math.Sqrt(r * r - inner * inner) * square.Z;
        Assert.Equal(2 * edge, HoleCheck.Wall(Leaning(1), Leaning(-1), r), 1e-8);
    }

    [Fact]
    public void Walls_are_the_least_distance_between_the_holes()
    {
        // Parallel holes, and one that stops short of another's flat bottom: by hand.
        var r = Known.Radius;
        Hole Straight(double x, double depthBelowTop) => new("h", new(x, 0, Math.Sqrt(r * r - x * x)), Vector3D.UnitZ, 1 * Inch, depthBelowTop);
        Assert.Equal(0.2 * Inch, HoleCheck.Wall(Straight(-0.6 * Inch, 2 * Inch), Straight(0.6 * Inch, 1 * Inch), r), 1e-9);
        var down = new Hole("down", Vector3D.UnitZ, Vector3D.UnitZ, 1 * Inch, r - 1 * Inch);
        var across = new Hole("across", Vector3D.UnitX, Vector3D.UnitX, 1 * Inch, r + 0.3 * Inch);
        Assert.Equal(0.5 * Inch, HoleCheck.Wall(down, across, r), 1e-9);
        Assert.Equal(0, HoleCheck.Wall(down, new Hole("across", Vector3D.UnitX, new(1, 0, -0.3), 1 * Inch, 5 * Inch), r));
    }

    [Fact]
    public void A_built_ball_loses_what_random_points_find_in_its_holes()
    {
        // An outside check by brute force: points thrown evenly into each hole's cylinder (fixed seed), each weighed by what it lies in. A core of four kinds of
        // solids, deep and leaning holes that reach it. 1.5 million points a hole: a standard deviation of some 2e-4.
        var turn = Rotation.About(new(1, 2, 0.5), 0.6);
        var shift = new Vector3D(0.02, -0.03, 0.1) * Inch;
        Part[] core =
        [
            new(Solid.Ellipsoid(1.7 * Inch, 1.9 * Inch, 1.3 * Inch), 2100),
            new(Solid.ConeFrustum(1.2 * Inch, 0.7 * Inch, 1.1 * Inch).Moved(new(0, 0, 1.4 * Inch)), 1700),
            new(Solid.Torus(2.5 * Inch, 0.35 * Inch), 2600),
            new(Solid.Box(0.8 * Inch, 0.9 * Inch, 0.9 * Inch), 3000),
        ];
        var build = new BallBuild
        {
            Radius = 8.56 / 2 * Inch, CoverThickness = 0.7 * Inch, CoverDensity = 1190, FillerDensity = 850, Core = [.. core.Select(p => p.Turned(turn).Moved(shift))],
        };
        double Density(Vector3D drawing)
        {
            if (drawing.Length > build.Radius)
            {
                return 0;
            }
            if (drawing.Length > build.Radius - build.CoverThickness)
            {
                return 1190;
            }
            var (x, y, z) = turn.Inverse.Apply(drawing - shift) / Inch;
            if (Math.Abs(x) < 0.4 && Math.Abs(y) < 0.45 && Math.Abs(z) < 0.45)
            {
                return 3000;
            }
            if (x * x / (1.7 * 1.7) + y * y / (1.9 * 1.9) + z * z / (1.3 * 1.3) < 1)
            {
                return 2100;
            }
            if (z is > 1.4 and < 2.5 && double.Hypot(x, y) < 1.2 - 0.5 * (z - 1.4) / 1.1)
            {
                return 1700;
            }
            return double.Hypot(double.Hypot(x, y) - 2.5, z) < 0.35 ? 2600 : 850;
        }
        var grip = Grip.Conventional with { Thumb = new(1.1 * Inch, 3.2 * Inch, 0.25 * Inch, -0.125 * Inch) };
        var built = BuildSheet.Of(build);
        var toDrawing = built.DrawingToBall.Inverse;
        var random = new Random(20);
        foreach (var layout in (Layout[])[new(3 * Inch, 40 * Degree, 30 * Degree), new(5.5 * Inch, 80 * Degree, 60 * Degree)])
        {
            var sheet = DrillSheet.Of(built.Ball, layout, grip, AxisPoint);
            var found = default(Moments);
            var reached = 0;
            foreach (var hole in sheet.Holes)
            {
                var (bottom, axis, a) = hole.Shaft(build.Radius);
                var u = axis.Cross(Math.Abs(axis.X) < 0.6 ? Vector3D.UnitX : Vector3D.UnitY).Unit;
                var v = axis.Cross(u);
                const int count = 1_500_000;
                var length = hole.Depth + 0.2 * Inch;
                var sum = default(Moments);
                for (var i = 0; i < count; i++)
                {
                    var (r, φ) = (a * Math.Sqrt(random.NextDouble()), 2 * Math.PI * random.NextDouble());
                    var p = bottom + length * random.NextDouble() * axis + r * Math.Cos(φ) * u + r * Math.Sin(φ) * v;
                    var ρ = Density(toDrawing.Apply(p));
                    reached += ρ > 1200 ? 1 : 0;
                    sum += ρ * new Moments(1, p.X, p.Y, p.Z, p.X * p.X, p.Y * p.Y, p.Z * p.Z, p.X * p.Y, p.Y * p.Z, p.Z * p.X);
                }
                found += Math.PI * a * a * length / count * sum;
            }
            Assert.True(reached > 10_000);
            var mass = sheet.Removed.Mass;
            var off = (found.Properties().InertiaAbout(Vector3D.Zero) - sheet.Removed.InertiaAbout(Vector3D.Zero)).Principal;
            Assert.True(Math.Abs(found.Total / mass - 1) < 1e-3, $"mass {found.Total:R}, {mass:R}");
            Assert.True((found.First / mass - sheet.Removed.CentreOfMass).Length < 1e-3 * build.Radius);
            Assert.True(Math.Max(Math.Abs(off.LeastMoment), Math.Abs(off.GreatestMoment)) < 1e-3 * mass * build.Radius * build.Radius);
        }
    }
}
