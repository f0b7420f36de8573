using BallSim.Balls;

namespace BallSim.Tests.Balls;

/// <summary>Where lines pass through solids, against the inequality that defines each form.</summary>
public class ChordTests
{
    private const double Reach = 0.12;

    public static TheoryData<string> Names => [.. RoundForms.All.Select(f => f.Name)];

    // Askew, parallel to the axis, square to it, through the axis and along it; none of them lies in a face.
    private static IEnumerable<(Vector3D Origin, Vector3D Direction)> Lines()
    {
        var random = new Random(4);
        double Any(double size) => size * (2 * random.NextDouble() - 1);
        for (var i = 0; i < 25; i++)
        {
            var place = new Vector3D(Any(0.04), Any(0.04), Any(0.05));
            var direction = new Vector3D(Any(1), Any(1), Any(1)).Unit;
            yield return (place, direction);
            yield return (place, i % 2 == 0 ? Vector3D.UnitZ : -Vector3D.UnitZ);
            yield return (place, new Vector3D(direction.X, direction.Y, 0).Unit);
            yield return (new(0, 0, place.Z), direction);
        }
        yield return (new(0, 0, 0.001), Vector3D.UnitZ);
        yield return (new(0, 0, 0.0013), Vector3D.UnitX);
    }

    [Theory, MemberData(nameof(Names))]
    public void What_lies_between_the_ends_of_a_chord_lies_within(string name)
    {
        var (_, solid, contains) = RoundForms.All.Single(f => f.Name == name);
        foreach (var (origin, direction) in Lines())
        {
            // What stands in the list already stays.
            List<double> chords = [-2, -1, 7];
            solid.Chords(origin, direction, chords);
            Assert.Equal([-2, -1, 7], chords[..3]);
            var ends = chords[3..];
            Assert.Equal(0, ends.Count % 2);
            for (var i = 0; i + 1 < ends.Count; i++)
            {
                Assert.True(ends[i] < ends[i + 1], $"{name}: {ends[i]:R}, {ends[i + 1]:R}");
            }
            bool Inside(double w)
            {
                return contains(origin + w * direction);
            }
            foreach (var (end, i) in ends.Select((e, i) => (e, i)))
            {
                // Within and without change places at an end, to a billionth of a metre; a glancing line, nearly, is left out.
                if ((i == 0 || end - ends[i - 1] > 1e-6) && (i + 1 == ends.Count || ends[i + 1] - end > 1e-6))
                {
                    Assert.True(Inside(end + 1e-9) == (i % 2 == 0) && Inside(end - 1e-9) == (i % 2 == 1), $"{name}: end {i} at {end:R} of the line {origin}, {direction}");
                }
            }
            for (var w = -Reach; w < Reach; w += 0.00097)
            {
                if (ends.All(e => Math.Abs(e - w) > 1e-9))
                {
                    Assert.True(Inside(w) == (ends.Count(e => e < w) % 2 == 1), $"{name}: at {w:R} of the line {origin}, {direction}");
                }
            }
        }
    }

    [Fact]
    public void A_line_through_edges_and_corners_crosses_once()
    {
        // The box is 4 by 6 by 8 cm: along a diagonal of space, of a face's middle plane, through two edges.
        List<double> Through(Vector3D origin, Vector3D direction)
        {
            List<double> chords = [];
            RoundForms.Other.Single(f => f.Name == "box").Solid.Chords(origin, direction.Unit, chords);
            return chords;
        }
        foreach (var corner in (Vector3D[])[new(0.02, 0.03, 0.04), new(0.02, 0.03, 0), new(0, 0.03, 0.04), new(0.02, 0, 0.04), new(0.02, 0, 0)])
        {
            var chords = Through(Vector3D.Zero, corner);
            Assert.Equal(2, chords.Count);
            Assert.Equal(-corner.Length, chords[0], 1e-15);
            Assert.Equal(corner.Length, chords[1], 1e-15);
        }
        // One that touches a corner alone has no length within.
        Assert.DoesNotContain(Through(new(0.02, 0.03, 0.04), new(1, -1, 0.3)).Chunk(2), c => c[1] - c[0] > 1e-15);
    }

    // The farthest point of a solid of revolution lies in the half plane opposite, at the corner or where a circle bulges away: distance to its centre and its radius more.
    public static TheoryData<string, double, double, double> Farthest => new()
    {
        { "cylinder", 0.01, 0.02, double.Hypot(0.045, 0.04) },
        { "cylinder", 0, -0.3, double.Hypot(0.325, 0.03) },
        { "frustum", 0, 0, 0.05 * Math.Sqrt(1 + 0.09) },
        { "frustum", 0.01, 0.06, double.Hypot(0.06, 0.05) },
        { "cone", 0.02, 0, double.Hypot(0.06, 0.05) },
        { "ball of arcs", 0, 0.01, 0.04 },
        { "ball of arcs", 0.03, 0.05, 0.05 + 0.04 },
        { "ball of arcs", 0.03, -0.03, 0.05 + 0.04 },
        { "ball of arcs", 0, 0.2, 0.19 + 0.04 },
        { "ball of arcs", 0, -0.2, 0.21 + 0.04 },
        { "cap", 0, -0.1, 0.15 },
        { "cap", 0, 0.02, double.Hypot(0.05, 0.02) < 0.03 ? 0 : Math.Sqrt(0.0025 - 0.0004) },
        { "shell", 0.01, 0, 0.05 },
        { "ring", 0.04, 0.03, double.Hypot(0.07, 0.03) + 0.012 },
        { "ring", 0, -0.5, double.Hypot(0.03, 0.5) + 0.012 },
        { "waist", 0.02, -0.01, double.Hypot(0.05, 0.04) },
        { "lemon", 0, 0, double.Hypot(0.02, 0.03) },
        { "lemon", 0.1, 0, 0.13 },
        { "lemon", 0.1, 0.01, double.Hypot(0.08, 0.01) + 0.05 },
        { "lemon", 0.1, -0.01, double.Hypot(0.08, 0.01) + 0.05 },
        { "pulley", 0.01, 0.02, double.Hypot(0.04, 0.02) + 0.01 },
        { "pulley", 0.01, -0.02, double.Hypot(0.04, 0.02) + 0.01 },
        { "two cones", 0, 0.01, Math.Sqrt(0.001) },
        { "sphere", 0.03, 0.04, 0.08 },
        { "box", 0.01, 0.02, Math.Sqrt(0.03 * 0.03 + 0.03 * 0.03 + 0.06 * 0.06) },
        { "ellipsoid", 0, 0.01, 0.06 },
        { "ellipsoid", 0, -0.01, 0.06 },
    };

    [Theory, MemberData(nameof(Farthest))]
    public void The_farthest_point_is_where_geometry_says(string name, double x, double z, double expected)
    {
        var solid = RoundForms.All.Single(f => f.Name == name).Solid;
        Assert.Equal(expected, solid.Reach(new(x, 0, z)), 1e-12);
        // Turned and moved as a whole, nothing changes; about the axis of a round one neither.
        var turn = Rotation.About(new(0.3, -0.5, 0.8), 1.1);
        var by = new Vector3D(0.01, -0.03, 0.02);
        Assert.Equal(expected, solid.Turned(turn).Moved(by).Reach(turn.Apply(new(x, 0, z)) + by), 1e-12);
        if (name is not ("box" or "ellipsoid"))
        {
            Assert.Equal(expected, solid.Reach(new(0.6 * x, -0.8 * x, z)), 1e-12);
        }
    }

    [Fact]
    public void No_point_of_an_ellipsoid_lies_farther_than_its_reach()
    {
        // All of its surface, a grid of degrees; the highest of them comes within the square of half a step of the reach.
        foreach (var from in (Vector3D[])[new(0.01, 0, 0), new(0, 0.02, 0.001), new(-0.1, 0.02, 0.03), new(0.004, -0.01, -0.002), Vector3D.Zero])
        {
            var farthest = 0.0;
            for (var i = 0; i <= 180; i++)
            {
                for (var j = 0; j < 360; j++)
                {
                    var (u, φ) = (i * Math.PI / 180, j * Math.PI / 180);
                    farthest = Math.Max(farthest, (new Vector3D(0.02 * Math.Sin(u) * Math.Cos(φ), 0.03 * Math.Sin(u) * Math.Sin(φ), 0.05 * Math.Cos(u)) - from).Length);
                }
            }
            Assert.InRange(Solid.Ellipsoid(0.02, 0.03, 0.05).Reach(from), farthest, farthest + 1e-5);
        }
    }
}
