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
        }
    }
}
