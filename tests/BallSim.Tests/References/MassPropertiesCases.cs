using System.Text.Json;
using BallSim.Balls;
using BallSim.Drilling;
using static BallSim.Tests.References.ReferenceFile;

namespace BallSim.Tests.References;

/// <summary>
/// Mass properties solved outside the project (mass-properties.json: closed forms of standard tables, exact tetrahedron moments, drilled balls by two
/// quadratures). The families are told apart by what a case holds, not by its name.
/// </summary>
public class MassPropertiesCases
{
    private const string File = "mass-properties.json";
    private const double Undrilled = 1e-9;
    private const double Drilled = 1e-8;

    public static TheoryData<string> Solids => Names(File, c => c.TryGetProperty("solids", out _));

    public static TheoryData<string> Composites => Names(File, c => c.TryGetProperty("parts", out _));

    public static TheoryData<string> Balls => Names(File, c => c.TryGetProperty("ball", out _));

    public static TheoryData<string> Meshes => Names(File, c => !c.TryGetProperty("solids", out _) && !c.TryGetProperty("parts", out _) && !c.TryGetProperty("ball", out _));

    [Theory]
    [MemberData(nameof(Solids))]
    public void Solids_agree(string name)
    {
        foreach (var s in Case(File, name).GetProperty("solids").EnumerateArray())
        {
            var p = s.GetProperty("parameters_m");
            var kind = s.GetProperty("solid").GetString()!;
            Agree(s.GetProperty("expected"), Named(kind, key => p.Number(key)).Properties(s.Number("density")), Undrilled, kind);
        }
    }

    [Theory]
    [MemberData(nameof(Composites))]
    public void Composites_agree(string name)
    {
        var c = Case(File, name);
        var sum = default(MassProperties);
        foreach (var p in c.GetProperty("parts").EnumerateArray())
        {
            // The measures stand under a key that spells their names: "r_h": [0.02, 0.06].
            var measures = p.EnumerateObject().First(o => o.Name is not ("solid" or "density" or "translation") && !o.Name.StartsWith("rotation", StringComparison.Ordinal));
            var values = p.GetProperty(measures.Name).EnumerateArray().Select(v => v.GetDouble()).ToArray();
            var kind = p.GetProperty("solid").GetString()!;
            double Measure(string key) => measures.Name == "edges" ? values["abc".IndexOf(key, StringComparison.Ordinal)] : values[Array.IndexOf(measures.Name.Split('_'), key)];
            var rotation = p.EnumerateObject().Single(o => o.Name.StartsWith("rotation", StringComparison.Ordinal)).Value;
            sum += Named(kind, Measure).Turned(Matrix(rotation)).Moved(p.Vector("translation")).Properties(p.Number("density"));
        }
        Agree(c.GetProperty("expected"), sum, Undrilled, name);
    }

    [Theory]
    [MemberData(nameof(Meshes))]
    public void Meshes_agree(string name)
    {
        var compared = 0;
        foreach (var entry in Case(File, name).EnumerateObject().Where(e => e.Name is not ("name" or "accuracy")))
        {
            var value = entry.Value;
            foreach (var row in value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().ToArray() : [value])
            {
                AgreeMesh(entry.Name, row);
                compared++;
            }
        }
        Assert.True(compared > 0);
    }

    [Theory]
    [MemberData(nameof(Balls))]
    public void Drilled_balls_agree(string name)
    {
        var c = Case(File, name);
        var ball = c.GetProperty("ball");
        var layers = ball.EnumerateObject().Single(o => o.Name.StartsWith("layers", StringComparison.Ordinal)).Value.EnumerateArray()
            .Select(l => (l[0].GetDouble(), l[1].GetDouble())).ToArray();
        var core = ball.GetProperty("core");
        var interior = new Interior(layers, core.ValueKind == JsonValueKind.Null ? [] : [Core(core)]);
        var undrilled = interior.Moments.Properties();
        Agree(c.GetProperty("expected_undrilled"), undrilled, Undrilled, "undrilled");
        var radius = ball.Number("R");
        var holes = c.GetProperty("holes").EnumerateArray().Select((h, i) =>
            new Hole($"hole {i + 1}", h.Vector("entry"), h.Vector("axis_out"), h.Number("diameter"), h.Number("depth"))).ToArray();
        var body = new Ball { Mass = undrilled.Mass, Radius = radius, Inertia = undrilled.Inertia, CentreOfMass = undrilled.CentreOfMass, Interior = interior };
        var sheet = DrillSheet.Of(body, holes);
        Near(c.Number("removed_mass"), sheet.Removed.Mass, Drilled * c.Number("removed_mass"), "removed mass");
        Agree(c.GetProperty("expected_drilled"), sheet.Ball.Properties, Drilled, "drilled");
    }

    private static Part Core(JsonElement core)
    {
        var points = core.GetProperty("profile").EnumerateArray().Select(p => (Along: p[0].GetDouble(), Off: p[1].GetDouble())).ToArray();
        var profile = points.Skip(1).Aggregate(Profile.From(points[0].Along, points[0].Off), (line, p) => line.LineTo(p.Along, p.Off));
        return new(Solid.Revolved(profile).Turned(Matrix(core.GetProperty("A"))).Moved(core.Vector("t")), core.Number("density"));
    }

    private static Solid Named(string kind, Func<string, double> p) => kind.Split(' ', ',')[0] switch
    {
        "sphere" => Solid.Sphere(p("r")),
        "hemisphere" => Solid.SphericalCap(p("r"), p("r")),
        "spherical" when kind.StartsWith("spherical cap", StringComparison.Ordinal) => Solid.SphericalCap(p("R"), p("h")),
        "ellipsoid" => Solid.Ellipsoid(p("a"), p("b"), p("c")),
        "cylinder" => Solid.Cylinder(p("r"), p("h")),
        "cone" => Solid.ConeFrustum(p("r0"), p("r1"), p("h")),
        "torus" => Solid.Torus(p("R"), p("r")),
        "box" => Solid.Box(p("a"), p("b"), p("c")),
        _ => throw new KeyNotFoundException(kind),
    };

    // Rows of a matrix whose columns are where the axes go.
    private static Rotation Matrix(JsonElement rows)
    {
        Vector3D Column(int k) => new(rows[0][k].GetDouble(), rows[1][k].GetDouble(), rows[2][k].GetDouble());
        Assert.True((Column(0).Cross(Column(1)) - Column(2)).Length < 1e-12, "the axes are no right-handed frame");
        return Rotation.Between(Vector3D.UnitX, Vector3D.UnitY, Column(0), Column(1));
    }

    private static void AgreeMesh(string family, JsonElement row)
    {
        // Sizes of a family stand in its name: icosphere_R_0.1, torus_R_0.06_r_0.015.
        double Size(string key)
        {
            var words = family.Split(' ')[0].Split('_');
            return double.Parse(words[Array.IndexOf(words, key) + 1], System.Globalization.CultureInfo.InvariantCulture);
        }
        if (row.TryGetProperty("vertices", out var vertices))
        {
            var faces = row.EnumerateObject().Single(o => o.Name.StartsWith("faces", StringComparison.Ordinal)).Value;
            var mesh = TriangleMesh.Of(vertices.EnumerateArray().Select(v => new Vector3D(v[0].GetDouble(), v[1].GetDouble(), v[2].GetDouble())),
                faces.EnumerateArray().Select(f => (f[0].GetInt32(), f[1].GetInt32(), f[2].GetInt32())));
            var m = Solid.FromMesh(mesh).Moments;
            Agree(row.GetProperty("expected"), m.Properties(), Undrilled, family);
            double[] got = [m.Total, m.X, m.Y, m.Z, m.Xx, m.Yy, m.Zz, m.Xy, m.Yz, m.Zx];
            var exact = row.EnumerateObject().Single(o => o.Name.StartsWith("exact_moments", StringComparison.Ordinal)).Value.EnumerateArray().Select(Fraction).ToArray();
            Assert.Equal(got.Length, exact.Length);
            foreach (var (e, g) in exact.Zip(got))
            {
                Near(e, g, 1e-13 * exact.Max(Math.Abs), family);
            }
        }
        else if (row.TryGetProperty("icosphere_level", out var level))
        {
            var mesh = MeshForms.Icosphere(Size("R"), level.GetInt32());
            Assert.Equal(row.GetProperty("triangles").GetInt32(), mesh.Triangles.Count);
            AgreeVolume(row, mesh, "I_zz");
        }
        else if (row.TryGetProperty("n_around", out var around))
        {
            AgreeVolume(row, MeshForms.Torus(Size("R"), Size("r"), around.GetInt32(), row.GetProperty("k_section").GetInt32()), "I_zz");
        }
        else if (row.TryGetProperty("edge", out _))
        {
            var mesh = MeshForms.Icosphere(1, 0);
            Near(row.Number("edge"), (mesh.Vertices[mesh.Triangles[0].A] - mesh.Vertices[mesh.Triangles[0].B]).Length, 1e-15, "edge");
            AgreeVolume(row, mesh, "I_axis");
        }
        else
        {
            throw new KeyNotFoundException(family);
        }
    }

    private static void AgreeVolume(JsonElement row, TriangleMesh mesh, string moment)
    {
        var body = Solid.FromMesh(mesh).Properties(1);
        Near(row.Number("volume"), body.Mass, 1e-12 * body.Mass, "volume");
        Near(row.Number(moment), body.Inertia.Zz, 1e-12 * body.Inertia.Zz, moment);
    }

    private static double Fraction(JsonElement e)
    {
        var parts = e.GetString()!.Split('/').Select(s => double.Parse(s, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        return parts.Length == 1 ? parts[0] : parts[0] / parts[1];
    }

    private static void Agree(JsonElement expected, MassProperties got, double within, string what)
    {
        var compared = 0;
        foreach (var e in expected.EnumerateObject())
        {
            compared++;
            switch (e.Name)
            {
                case "mass":
                    Near(e.Value.GetDouble(), got.Mass, within * e.Value.GetDouble(), $"{what} mass");
                    break;
                case "com":
                    var centre = expected.Vector("com");
                    var off = (centre - got.CentreOfMass).Length;
                    Assert.True(off <= within * centre.Length + 1e-16, $"{what} com off by {off:E2}");
                    break;
                case "I_origin":
                    Agree(expected.Tensor("I_origin"), got.InertiaAbout(Vector3D.Zero), within, $"{what} I about the origin");
                    break;
                case "I_com":
                    Agree(expected.Tensor("I_com"), got.Inertia, within, $"{what} I about the centre of mass");
                    break;
                case "principal_moments":
                    Agree(expected.Numbers(e.Name), Moments(got.Inertia), within, what + e.Name);
                    break;
                case "principal_axes_columns":
                    AgreeAxes(e.Value, expected.Numbers("principal_moments"), got.Principal, within, what);
                    break;
                case "rg_m":
                    Agree(expected.Numbers(e.Name), [got.LowRg, got.IntermediateRg, got.HighRg], within, what + e.Name);
                    break;
                case "rg_in":
                    Agree(expected.Numbers(e.Name), [got.LowRg / Units.Inch, got.IntermediateRg / Units.Inch, got.HighRg / Units.Inch], within, what + e.Name);
                    break;
                case "rg_about_geometric_centre_in":
                    Agree(expected.Numbers(e.Name), [.. Moments(got.InertiaAbout(Vector3D.Zero)).Select(m => Math.Sqrt(m / got.Mass) / Units.Inch)], within, what + e.Name);
                    break;
                default:
                    throw new KeyNotFoundException(e.Name);
            }
        }
        Assert.True(compared >= 4, what);
    }

    private static double[] Moments(InertiaTensor tensor) => [tensor.Principal.LeastMoment, tensor.Principal.MiddleMoment, tensor.Principal.GreatestMoment];

    private static void Agree(double[] expected, double[] got, double within, string what)
    {
        foreach (var (e, g) in expected.Zip(got))
        {
            Near(e, g, within * Math.Abs(e), what);
        }
    }

    private static void Agree(InertiaTensor expected, InertiaTensor got, double within, string what)
    {
        var size = Math.Max(expected.Xx, Math.Max(expected.Yy, expected.Zz));
        double[] Entries(InertiaTensor t) => [t.Xx, t.Yy, t.Zz, t.Xy, t.Xz, t.Yz];
        foreach (var (e, g) in Entries(expected).Zip(Entries(got)))
        {
            Near(e, g, within * size, what);
        }
    }

    // An axis is known to the accuracy of the tensor over the distance of its moment from the others, and not at all where that vanishes.
    private static void AgreeAxes(JsonElement columns, double[] moments, PrincipalAxes got, double within, string what)
    {
        Vector3D[] axes = [got.Least, got.Middle, got.Greatest];
        for (var k = 0; k < 3; k++)
        {
            var gap = Enumerable.Range(0, 3).Where(j => j != k).Min(j => Math.Abs(moments[j] - moments[k])) / moments[2];
            if (gap > 1e-7)
            {
                var axis = new Vector3D(columns[0][k].GetDouble(), columns[1][k].GetDouble(), columns[2][k].GetDouble());
                var angle = axis.Cross(axes[k]).Length;
                Assert.True(angle <= 4 * within / gap, $"{what}: axis {k} off by {angle:E2}, its moment {gap:E1} from the next");
            }
        }
    }
}
