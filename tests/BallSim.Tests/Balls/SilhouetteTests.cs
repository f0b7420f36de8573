using BallSim.Balls;

namespace BallSim.Tests.Balls;

/// <summary>What the integral over rays is told of a form: the places where the rays of a slice begin or cease to meet it, and where its outline ends. It would come to the same result without them, at many times the work.</summary>
public class SilhouetteTests
{
    // Edges of the forms: height and radius of each circle.
    private static readonly Dictionary<string, (double Z, double ρ)[]> Rims = new()
    {
        ["cylinder"] = [(-0.025, 0.03), (0.025, 0.03)], ["frustum"] = [(0, 0.04), (0.05, 0.015)], ["cone"] = [(0.06, 0.03)], ["ball of arcs"] = [], ["cap"] = [(0.02, Math.Sqrt(0.0021))], ["shell"] = [],
        ["tube"] = [(-0.02, 0.01), (-0.02, 0.03), (0.03, 0.03), (0.03, 0.01)], ["two cones"] = [(0, 0.03)], ["waist"] = [(-0.03, 0.03), (0.03, 0.03)], ["lemon"] = [(-0.03, 0.02), (0.03, 0.02)],
        ["pulley"] = [(-0.006, 0.022), (0.006, 0.022)], ["ring"] = [], ["ellipsoid"] = [],
    };

    public static TheoryData<string> Names => [.. Rims.Keys];

    private static (Solid Solid, RayIntegral.ISilhouette Silhouette) Form(string name)
    {
        var solid = RoundForms.All.Single(f => f.Name == name).Solid;
        return (solid, Assert.IsAssignableFrom<RayIntegral.ISilhouette>(solid.Shape));
    }

    private static IEnumerable<(Vector3D Origin, Vector3D Across, Vector3D Along)> Planes()
    {
        var random = new Random(11);
        double Any(double size) => size * (2 * random.NextDouble() - 1);
        for (var i = 0; i < 24; i++)
        {
            var w = i % 4 == 0 ? Vector3D.UnitZ : i % 4 == 1 ? new Vector3D(Any(1), Any(1), 0).Unit : new Vector3D(Any(1), Any(1), Any(1)).Unit;
            var v = w.Cross(new(Any(1), Any(1), Any(1))).Unit;
            yield return (new(Any(0.03), Any(0.03), Any(0.04)), v, w);
        }
    }

    [Theory, MemberData(nameof(Names))]
    public void Where_the_number_of_chords_changes_is_named(string name)
    {
        var (solid, silhouette) = Form(name);
        Assert.Equal(name is "waist" or "lemon" or "pulley" or "ring", silhouette.HidesGrazes);
        foreach (var (origin, v, w) in Planes())
        {
            List<double> places = [-9], chords = [];
            silhouette.Grazes(origin, v, w, places);
            Assert.Equal(-9, places[0]);
            int Count(double y)
            {
                chords.Clear();
                solid.Chords(origin + y * v, w, chords);
                return chords.Count;
            }
            const double Step = 0.00103;
            for (var low = -0.1; low < 0.1 && !silhouette.HidesGrazes; low += Step)
            {
                var (from, to) = (low, low + Step);
                if (Count(from) == Count(to))
                {
                    continue;
                }
                for (var i = 0; i < 40; i++)
                {
                    var middle = (from + to) / 2;
                    (from, to) = Count(middle) == Count(low) ? (middle, to) : (from, middle);
                }
                Assert.True(places.Any(p => Math.Abs(p - from) < 1e-8), $"{name}: a graze at {from:R} of {origin}, {v}, {w}; named {string.Join(", ", places)}");
            }
            // The edges: circles (ρ cos φ, ρ sin φ, z) meet the plane with the normal n where n_ρ ρ cos(φ - φ_n) = n · origin - n_z z.
            var n = v.Cross(w);
            foreach (var (z, ρ) in Rims[name])
            {
                var (flat, to) = (double.Hypot(n.X, n.Y), Math.Atan2(n.Y, n.X));
                var cos = (n.Dot(origin) - n.Z * z) / (flat * ρ);
                foreach (var φ in Math.Abs(cos) < 1 ? (double[])[to + Math.Acos(cos), to - Math.Acos(cos)] : [])
                {
                    var at = (new Vector3D(ρ * Math.Cos(φ), ρ * Math.Sin(φ), z) - origin).Dot(v);
                    Assert.True(places.Any(p => Math.Abs(p - at) < 1e-9), $"{name}: an edge at {at:R} of {origin}, {v}, {w}; named {string.Join(", ", places)}");
                }
            }
        }
    }

    [Theory, MemberData(nameof(Names))]
    public void Where_the_form_begins_and_ends_is_named(string name)
    {
        var (solid, silhouette) = Form(name);
        // All circles of the surface: the outermost radius of many levels, a third of a millimetre apart, and the edges.
        List<(double Z, double ρ)> circles = [.. Rims[name]];
        List<double> chords = [];
        const int Levels = 500;
        for (var i = 0; i <= Levels; i++)
        {
            var z = 0.005 - 0.0551 * Math.Cos(Math.PI * i / Levels);
            chords.Clear();
            solid.Chords(new(0, 0, z), Vector3D.UnitX, chords);
            if (chords.Count > 0)
            {
                circles.Add((z, chords[^1]));
            }
        }
        foreach (var (_, u, _) in Planes())
        {
            List<double> places = [-9];
            silhouette.Extents(u, places);
            Assert.Equal(-9, places[0]);
            // Seen edge-on, a circle reaches z u_z ± ρ times the rest of u.
            var lean = double.Hypot(u.X, u.Y);
            var (least, greatest) = (circles.Min(c => c.Z * u.Z - c.ρ * lean), circles.Max(c => c.Z * u.Z + c.ρ * lean));
            if (name == "ellipsoid")
            {
                // Support of an ellipsoid, any text on convex bodies: √((a u_x)² + (b u_y)² + (c u_z)²).
                greatest = Math.Sqrt(Math.Pow(0.02 * u.X, 2) + Math.Pow(0.03 * u.Y, 2) + Math.Pow(0.05 * u.Z, 2));
                least = -greatest;
            }
            var within = name == "ellipsoid" ? 1e-15 : 2e-4;
            Assert.Contains(places, p => Math.Abs(p - greatest) < within);
            Assert.Contains(places, p => Math.Abs(p - least) < within);
            if (name == "ring")
            {
                // The hole of a ring begins on its inner side.
                Assert.Contains(places, p => Math.Abs(p - (0.03 * lean - 0.012)) < 1e-12);
                Assert.Contains(places, p => Math.Abs(p + (0.03 * lean - 0.012)) < 1e-12);
            }
        }
    }

    // The form with a count of the rays that are sent through it.
    private sealed class Counted(Shape inner) : Shape, RayIntegral.ISilhouette
    {
        public int Rays { get; private set; }

        public override Moments Moments => inner.Moments;

        public bool HidesGrazes => ((RayIntegral.ISilhouette)inner).HidesGrazes;

        public override double Reach(Vector3D from) => inner.Reach(from);

        public override Moments Within(Shaft shaft) => RayIntegral.Of(this, shaft);

        public override void Chords(Vector3D origin, Vector3D direction, List<double> chords)
        {
            Rays++;
            inner.Chords(origin, direction, chords);
        }

        public void Extents(Vector3D direction, List<double> places) => ((RayIntegral.ISilhouette)inner).Extents(direction, places);

        public void Grazes(Vector3D origin, Vector3D across, Vector3D along, List<double> places) => ((RayIntegral.ISilhouette)inner).Grazes(origin, across, along, places);
    }

    [Theory]
    [InlineData("cylinder", 86_000)]
    [InlineData("frustum", 75_000)]
    [InlineData("cone", 46_000)]
    [InlineData("cap", 110_000)]
    [InlineData("ball of arcs", 89_000)]
    [InlineData("two cones", 47_000)]
    [InlineData("ellipsoid", 48_000)]
    public void With_the_places_named_few_rays_are_enough(string name, int most)
    {
        // Through three shafts; the bounds are what was counted and a seventh more.
        var total = 0;
        foreach (var (bottom, axis, radius) in ((Vector3D, Vector3D, double)[])[(new(0.02, 0.01, -0.1), new Vector3D(0.2, -0.1, 1).Unit, 0.0127), (new(0.005, -0.1, 0.015), new Vector3D(0.1, 1, 0.2).Unit, 0.012), (new(0.01, 0.005, 0.012), new Vector3D(1, 0.3, 0.5).Unit, 0.01)])
        {
            var counted = new Counted(Form(name).Solid.Shape);
            counted.Within(new(bottom, axis, radius));
            total += counted.Rays;
        }
        Assert.True(total <= most, $"{name}: {total}");
    }

    [Fact]
    public void Roots_are_roots_and_numbers()
    {
        var random = new Random(5);
        double Any() => (2 * random.NextDouble() - 1) * Math.Pow(10, random.Next(-6, 6));
        for (var i = 0; i < 500; i++)
        {
            // a v² + 2 b v + c by its roots.
            var (a, r, s) = (Any(), Any(), Any());
            List<double> roots = [99];
            RayIntegral.Roots(a, -a * (r + s) / 2, a * r * s, roots);
            Assert.Equal(3, roots.Count);
            double[] expected = [Math.Min(r, s), Math.Max(r, s)], got = [Math.Min(roots[1], roots[2]), Math.Max(roots[1], roots[2])];
            Assert.All(expected.Zip(got), p => Assert.Equal(p.First, p.Second, 1e-7 * (Math.Abs(r) + Math.Abs(s))));
        }
        static double[] Of(double a, double b, double c)
        {
            List<double> roots = [];
            RayIntegral.Roots(a, b, c, roots);
            return [.. roots];
        }
        Assert.Empty(Of(1, 1, 2));
        Assert.Empty(Of(0, 0, 3));
        Assert.Equal([-1.5], Of(0, 1, 3));
        Assert.All((double[][])[Of(1e-310, 1, 3), Of(-1e-310, -1, 3), Of(1e-310, 0, 0), Of(1, 0, 0), Of(2, -3, 0)], roots => Assert.All(roots, v => Assert.True(double.IsFinite(v))));
        Assert.Contains(-1.5, Of(1e-310, 1, 3));
        Assert.Equal([0.0, 3.0], Of(2, -3, 0).Order());
    }
}
