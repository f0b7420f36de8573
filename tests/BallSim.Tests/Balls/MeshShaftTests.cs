using BallSim.Balls;

namespace BallSim.Tests.Balls;

/// <summary>What of a polyhedron lies within a shaft: closed forms under a slanting roof, and that the parts of a body take what the body takes.</summary>
public class MeshShaftTests
{
    // Corners as a box numbers them: x changes fastest, then y, then z.
    private static readonly (int, int, int)[] Hexahedron =
        [(0, 2, 3), (0, 3, 1), (4, 5, 7), (4, 7, 6), (0, 1, 5), (0, 5, 4), (2, 6, 7), (2, 7, 3), (0, 4, 6), (0, 6, 2), (1, 3, 7), (1, 7, 5)];

    private static void Same(Moments expected, Moments got, double within = 1e-13)
    {
        var off = (expected - got).Size(0.05);
        Assert.True(off <= within * Math.Abs(expected.Total), $"off by {off / expected.Total:E1} of {expected.Total:E2}");
    }

    [Theory]
    [InlineData(0.02, 0, 0)]
    [InlineData(0.02, 0.4, 0)]
    [InlineData(0.02, 0, -0.7)]
    [InlineData(0.015, -0.3, 0.5)]
    public void Under_a_slanting_roof_all_ten_moments_are_in_closed_form(double c, double p, double q)
    {
        // The roof z = c + p x + q y over a circle of radius a about the origin: ∫x² = ∫y² = π a⁴/4 over the disc, all odd integrals are 0.
        const double a = 0.005;
        var (disc, quarter, slope) = (Math.PI * a * a, Math.PI * a * a * a * a / 4, p * p + q * q);
        var expected = new Moments(disc * c, quarter * p, quarter * q, (disc * c * c + quarter * slope) / 2, quarter * c, quarter * c, (disc * c * c * c + 3 * c * quarter * slope) / 3, 0, quarter * c * q, quarter * c * p);
        // Over a floor below the bottom of the shaft; whether the circle lies in one triangle of the roof or the seam runs through it.
        foreach (var (x, y) in ((double, double)[])[(0, 0), (0.02, -0.02), (-0.02, 0.02), (0.003, 0.001)])
        {
            var corners = from k in (int[])[0, 1] from j in (double[])[-0.03, 0.03] from i in (double[])[-0.03, 0.03] select new Vector3D(i + x, j + y, k == 0 ? -0.01 : c + p * (i + x) + q * (j + y));
            var wedge = Solid.FromMesh(TriangleMesh.Of(corners, Hexahedron));
            Same(expected, wedge.Within(new(Vector3D.Zero, Vector3D.UnitZ, a)));
            var (turn, by) = (Rotation.About(new(1, 2, -0.5), 0.8), new Vector3D(0.01, 0.03, -0.02));
            Same(expected.Turned(turn).Moved(by), wedge.Turned(turn).Moved(by).Within(new(by, turn.Apply(Vector3D.UnitZ), a)));
        }
    }

    [Fact]
    public void The_parts_of_a_box_take_what_the_box_takes()
    {
        // Six tetrahedra from one corner to the opposite one, each along the edges in another order (Kuhn's triangulation; any text on it).
        var box = Solid.Box(0.06, 0.05, 0.04);
        var low = new Vector3D(-0.03, -0.025, -0.02);
        Vector3D[] edges = [new(0.06, 0, 0), new(0, 0.05, 0), new(0, 0, 0.04)];
        (int, int, int)[] orders = [(0, 1, 2), (0, 2, 1), (1, 0, 2), (1, 2, 0), (2, 0, 1), (2, 1, 0)];
        Solid[] parts = [.. orders.Select(o =>
        {
            var (i, j, k) = o;
            Vector3D[] points = [low, low + edges[i], low + edges[i] + edges[j], low + edges[0] + edges[1] + edges[2]];
            var mesh = TriangleMesh.Of(points, [(0, 2, 1), (0, 1, 3), (1, 2, 3), (0, 3, 2)]);
            return Solid.FromMesh(mesh.Report.IsInsideOut ? mesh.Reversed() : mesh);
        })];
        Assert.Equal(box.Volume, parts.Sum(p => p.Volume), 1e-18);
        var random = new Random(3);
        double Any(double size) => size * (2 * random.NextDouble() - 1);
        for (var i = 0; i < 60; i++)
        {
            // Along the edges too, where triangles stand upright in the shaft; radii from a needle to one that holds the box.
            var axis = i % 5 == 0 ? Vector3D.UnitZ : i % 5 == 1 ? -Vector3D.UnitX : new Vector3D(Any(1), Any(1), Any(1)).Unit;
            var shaft = new Shaft(new(Any(0.04), Any(0.03), Any(0.03)), axis, i % 3 == 0 ? 0.002 : i % 3 == 1 ? 0.0127 : 0.03);
            var whole = box.Within(shaft);
            var sum = parts.Aggregate(default(Moments), (s, p) => s + p.Within(shaft));
            Assert.True((whole - sum).Size(0.05) <= 1e-13 * box.Volume, $"{shaft}: {(whole - sum).Size(0.05) / box.Volume:E1}");
            // Upwards and downwards from one bottom is all the way.
            var through = box.Within(shaft with { Bottom = shaft.Bottom - 0.2 * axis });
            Assert.True((through - whole - box.Within(shaft with { Axis = -axis })).Size(0.05) <= 1e-12 * box.Volume, $"{shaft}");
            // And no more than the way itself holds, of either.
            Assert.InRange(whole.Total, 0, box.Volume * (1 + 1e-13));
        }
    }

    [Fact]
    public void The_frame_of_a_shaft_is_square_and_looks_at_the_point()
    {
        foreach (var axis in (Vector3D[])[Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ, -Vector3D.UnitX, new Vector3D(0.6, 0.8, 0), new Vector3D(1, 1, 1).Unit])
        {
            foreach (var off in (Vector3D[])[default, new(0.01, 0.02, -0.03), new(1e-14, 0, 1e-14)])
            {
                var bottom = new Vector3D(0.01, 0.02, 0.03);
                var (u, v) = new Shaft(bottom, axis, 0.01).FrameTowards(bottom + 0.05 * axis + off);
                Assert.Equal(1, u.Length, 1e-15);
                Assert.Equal(1, v.Length, 1e-15);
                Assert.Equal(0, u.Dot(v), 1e-15);
                Assert.True((u.Cross(v) - axis).Length < 1e-15);
                var across = off - off.Dot(axis) * axis;
                if (across.Length > 1e-6)
                {
                    Assert.Equal(across.Length, v.Dot(off), 1e-15);
                }
            }
        }
    }

    [Fact]
    public void A_half_ball_less_its_bore()
    {
        // From the centre along any axis: cylinder and cap, 2π/3 (R³ - (R² - a²)^(3/2)); the first moment is ∫ (R² - ρ²)/2, π a² (2R² - a²)/4.
        const double R = 0.05, a = 0.02;
        foreach (var through in (Vector3D[])[Vector3D.UnitX, -Vector3D.UnitY, Vector3D.UnitZ, new Vector3D(-0.4, 0.1, 0.7).Unit])
        {
            var taken = Solid.Sphere(R).Within(new(Vector3D.Zero, through, a));
            Assert.Equal(2 * Math.PI / 3 * (R * R * R - Math.Pow(R * R - a * a, 1.5)), taken.Total, 1e-13 * taken.Total);
            Assert.True((taken.First - Math.PI * a * a * (2 * R * R - a * a) / 4 * through).Length < 1e-13 * taken.Total);
        }
        var axis = new Vector3D(-0.4, 0.1, 0.7).Unit;
        // A shaft wider than the ball from a height h: the cap, π (R - h)² (2R + h)/3.
        foreach (var h in (double[])[0, 0.03, -0.03, 0.0499])
        {
            var cap = Solid.Sphere(R).Within(new(h * axis + 0.01 * axis.Cross(Vector3D.UnitX), axis, 0.08));
            Assert.Equal(Math.PI * (R - h) * (R - h) * (2 * R + h) / 3, cap.Total, 1e-12 * R * R * R);
        }
        // A wall so wide that it is nearly a plane through the middle: half the ball less what the wall curves away, ∫ y²/2b over the disc, π R⁴/8b.
        const double b = 60;
        Assert.Equal(2 * Math.PI / 3 * R * R * R - Math.PI * R * R * R * R / (8 * b), Solid.Sphere(R).Within(new(new(b, 0, -1), Vector3D.UnitZ, b)).Total, 1e-7 * R * R * R);
        Assert.Equal(default, Solid.Sphere(R).Within(new(R * axis, axis, a)));
        Assert.Equal(default, Solid.Sphere(R).Shape.Within(new(new(R + a, 0, -1), Vector3D.UnitZ, a)));
    }

    [Fact]
    public void The_size_of_moments_looks_at_all_ten()
    {
        const double length = 0.5;
        for (var i = 0; i < 10; i++)
        {
            foreach (var v in (double[])[3, -3])
            {
                var c = new double[10];
                c[i] = v;
                var size = new Moments(c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7], c[8], c[9]).Size(length);
                Assert.Equal(3 / Math.Pow(length, i == 0 ? 0 : i < 4 ? 1 : 2), size, 1e-15);
            }
        }
    }

    [Fact]
    public void A_cube_has_no_hardest_axis_however_it_is_turned()
    {
        // All moments of a cube are equal; what separates them once it is turned is rounding, and that marks nothing.
        for (var i = 0; i < 12; i++)
        {
            var cube = Solid.Box(0.06, 0.06, 0.06).Turned(Rotation.About(new(1 + i, 0.3 * i, 2 - i), 0.37 * (i + 1)));
            var sheet = BuildSheet.Of(BuildTests.Design with { Core = [new(cube, 2000)], PinSide = new(1, i, 2) });
            Assert.False(sheet.IsAsymmetric);
            Assert.Null(sheet.Ball.Marks.MassBias);
            Assert.True((sheet.Pin - new Vector3D(1, i, 2).Unit).Length < 1e-9);
        }
    }

    [Fact]
    public void Corners_are_joined_across_the_cells_that_they_are_sought_in()
    {
        const double within = 1e-4;
        Vector3D a = new(0.3, 0, 0), b = new(0, 0.3, 0), c = new(0, 0, 0.3), d = new(-0.3, 0, 0.1);
        for (var i = 0; i < 27; i++)
        {
            var away = new Vector3D(i % 3 - 1, i / 3 % 3 - 1, i / 9 - 1);
            foreach (var share in (double[])[0.5, 0.99, 1.01, 2.5])
            {
                // Just beside a corner of eight cells, and as far away as `share` of what is joined.
                var p = new Vector3D(0.02, 0.02, 0.02) + 1e-3 * within * new Vector3D(1, 1, 1);
                var q = away.Length > 0 ? p + share * within * away.Unit : p;
                var corners = TriangleMesh.Joined([(p, a, b), (q, c, d)], within).Vertices.Count;
                Assert.Equal(share < 1 || away.Length == 0 ? 5 : 6, corners);
            }
        }
        foreach (var face in ((int, int, int)[])[(-1, 1, 2), (0, -1, 2), (0, 1, -1), (3, 1, 2), (0, 3, 2), (0, 1, 3)])
        {
            SolidTests.Refused(() => TriangleMesh.Of([a, b, c], [face]), "counted from 0");
        }
    }
}
