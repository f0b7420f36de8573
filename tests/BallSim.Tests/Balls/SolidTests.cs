using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Tests.Balls;

public class SolidTests
{
    private const double Trust = 1e-13;

    private static void Near(double expected, double got, double size, double within = Trust) =>
        Assert.True(Math.Abs(expected - got) <= within * Math.Abs(size), $"expected {expected:R}, got {got:R}");

    // Beer and Johnston, Vector Mechanics, "Mass moments of inertia of common geometric shapes" (inside cover; from memory): cylinder
    // m r²/2 and m (3 r² + h²)/12, cone 3 m r²/10, sphere 2 m r²/5, block m (a² + b²)/12.
    [Fact]
    public void Handbook_solids()
    {
        var cylinder = Solid.Cylinder(0.03, 0.12).Properties(1200);
        Near(1200 * Math.PI * 0.03 * 0.03 * 0.12, cylinder.Mass, cylinder.Mass);
        Near(cylinder.Mass * 0.03 * 0.03 / 2, cylinder.Inertia.Zz, cylinder.Inertia.Zz);
        Near(cylinder.Mass * (3 * 0.03 * 0.03 + 0.12 * 0.12) / 12, cylinder.Inertia.Xx, cylinder.Inertia.Xx);

        var cone = Solid.ConeFrustum(0.05, 0, 0.1).Properties(800);
        Near(800 * Math.PI * 0.05 * 0.05 * 0.1 / 3, cone.Mass, cone.Mass);
        Near(0.025, cone.CentreOfMass.Z, 0.025);
        Near(0.3 * cone.Mass * 0.05 * 0.05, cone.Inertia.Zz, cone.Inertia.Zz);

        var sphere = Solid.Sphere(0.1).Properties(1000);
        Near(0.4 * sphere.Mass * 0.01, sphere.Inertia.Yy, sphere.Inertia.Yy);

        var block = Solid.Box(0.02, 0.03, 0.05).Properties(1000);
        Near(0.03, block.Mass, 0.03);
        Near(block.Mass * (0.03 * 0.03 + 0.05 * 0.05) / 12, block.Inertia.Xx, block.Inertia.Xx);
    }

    // Torus: V = 2π² R r², I = m (R² + 3/4 r²) about the axis, m (R²/2 + 5/8 r²) across it (Beyer, CRC Standard Mathematical Tables; from memory).
    // Shell: difference of two spheres. Cap: V = π h² (3R - h)/3, centre 3 (2R - h)²/(4 (3R - h)) (same tables).
    [Fact]
    public void Round_solids_of_the_tables()
    {
        var torus = Solid.Torus(0.06, 0.015).Properties(1000);
        Near(1000 * 2 * Math.PI * Math.PI * 0.06 * 0.015 * 0.015, torus.Mass, torus.Mass);
        Near(torus.Mass * (0.06 * 0.06 + 0.75 * 0.015 * 0.015), torus.Inertia.Zz, torus.Inertia.Zz);
        Near(torus.Mass * (0.06 * 0.06 / 2 + 0.625 * 0.015 * 0.015), torus.Inertia.Xx, torus.Inertia.Xx);

        var shell = Solid.SphericalShell(0.08, 0.1).Properties(1000);
        var hollowed = Solid.Sphere(0.1).Properties(1000) - Solid.Sphere(0.08).Properties(1000);
        Near(hollowed.Mass, shell.Mass, shell.Mass);
        Near(hollowed.Inertia.Zz, shell.Inertia.Zz, shell.Inertia.Zz);
        Near(hollowed.Inertia.Xx, shell.Inertia.Xx, shell.Inertia.Xx);

        foreach (var h in (double[])[0.001, 0.02, 0.1, 0.17])
        {
            var cap = Solid.SphericalCap(0.1, h).Properties(1);
            Near(Math.PI * h * h * (0.3 - h) / 3, cap.Mass, cap.Mass, 1e-12);
            Near(3 * (0.2 - h) * (0.2 - h) / (4 * (0.3 - h)), cap.CentreOfMass.Z, 0.1, 1e-12);
        }
        var ellipsoid = Solid.Ellipsoid(0.03, 0.04, 0.05).Properties(1000);
        Near(ellipsoid.Mass * (0.04 * 0.04 + 0.05 * 0.05) / 5, ellipsoid.Inertia.Xx, ellipsoid.Inertia.Xx);
    }

    // Knight, College Physics, ch. 7 (statement seen; values computed from the moments of spheres and a thin shell): a core of 1.6 kg and 0.196 m
    // across in a thin shell of 1.6 kg and 0.206 m; a uniform ball of 3.2 kg and 0.216 m. The thin shell here is 10 µm thick.
    [Fact]
    public void Core_and_shell_of_the_textbook()
    {
        var core = Solid.Sphere(0.098);
        var shell = Solid.SphericalShell(0.103 - 5e-6, 0.103 + 5e-6);
        var ball = core.Properties(1.6 / core.Volume) + shell.Properties(1).Scaled(1.6 / shell.Volume);
        Assert.Equal(3.2, ball.Mass, 1e-12);
        Assert.Equal(0.01746, ball.Inertia.Zz, 5e-6);
        var uniform = Solid.Sphere(0.108);
        Assert.Equal(0.01493, uniform.Properties(3.2 / uniform.Volume).Inertia.Zz, 5e-6);
    }

    [Fact]
    public void An_outline_of_arcs_is_the_solid_it_draws()
    {
        // A sphere in five arcs and one way round or the other; a bowl whose inside is an arc.
        var r = 0.05;
        Profile Arcs(int sign, int count) => Enumerable.Range(0, count).Aggregate(Profile.From(-sign * r, 0), (p, i) =>
        {
            (double, double) At(double t) => (-sign * r * Math.Cos(Math.PI * t), i + 0.5 < count || t < 1 ? r * Math.Sin(Math.PI * t) : 0);
            var ((a, b), (c, d)) = (At((i + 0.5) / count), At((i + 1.0) / count));
            return p.ArcTo(a, b, c, i + 1 == count ? 0 : d);
        });
        var sphere = Solid.Sphere(r).Properties(1);
        foreach (var (sign, count) in ((int, int)[])[(1, 1), (1, 5), (-1, 4)])
        {
            var turned = Solid.Revolved(Arcs(sign, count)).Properties(1);
            Near(sphere.Mass, turned.Mass, sphere.Mass);
            Near(sphere.Inertia.Xx, turned.Inertia.Xx, sphere.Inertia.Xx);
            Near(sphere.Inertia.Zz, turned.Inertia.Zz, sphere.Inertia.Zz);
        }
        var half = Profile.From(-r, 0).ArcTo(-r * Math.Sqrt(0.5), r * Math.Sqrt(0.5), 0, r).LineTo(0, 0.04).ArcTo(-0.04 * Math.Sqrt(0.5), 0.04 * Math.Sqrt(0.5), -0.04, 0);
        Near(2 * Math.PI / 3 * (r * r * r - 0.04 * 0.04 * 0.04), Solid.Revolved(half).Volume, r * r * r);
    }

    [Fact]
    public void Impossible_outlines_are_refused()
    {
        Refused(() => Profile.From(0, 0).ArcTo(0.01, 0.01, 0.02, 0.02), "one line");
        Refused(() => Profile.From(0, 0.01).ArcTo(0.02, 0.0, 0.04, 0.002), "crosses the axis");
        Refused(() => Solid.Revolved(Profile.From(0, 0).LineTo(0, 0.04).LineTo(0.05, 0.01).LineTo(0.05, 0.04).LineTo(-0.01, 0.01)), "crosses itself");
        Refused(() => Solid.Revolved(Profile.From(0, 0).LineTo(0.1, 0)), "no volume");
        Refused(() => Profile.From(2.4, 0), "for inches write 2.4 * Inch");
        Refused(() => Solid.Sphere(0), "above 0");
        Refused(() => Solid.SphericalCap(0.1, 0.2), "less than the diameter");
        Refused(() => Solid.Torus(0.01, 0.02), "must not exceed");
        Refused(() => Solid.Sphere(0.1).Properties(26_000), "density");
        Refused(() => new Part(Solid.Sphere(0.1), 2.2e6), "Density");
    }

    [Fact]
    public void A_broken_mesh_is_told_by_its_faults()
    {
        var whole = MeshForms.Icosphere(0.05, 1);
        Assert.True(whole.Report.IsSound);
        var open = TriangleMesh.Of(whole.Vertices, whole.Triangles.Skip(2));
        Assert.True(open.Report.OpenEdges is > 2 and < 7);
        Refused(() => Solid.FromMesh(open), $"{open.Report.OpenEdges} edges with a triangle on one side only: the surface has a hole (for example from (");
        var (a, b, c) = whole.Triangles[0];
        var flipped = TriangleMesh.Of(whole.Vertices, whole.Triangles.Skip(1).Append((a, c, b)));
        Assert.Equal((3, 0), (flipped.Report.FlippedEdges, flipped.Report.OpenEdges));
        Refused(() => Solid.FromMesh(flipped), "3 edges run twice in the same direction");
        var degenerate = TriangleMesh.Of(whole.Vertices, whole.Triangles.Append((a, b, b)));
        Assert.Equal(1, degenerate.Report.DegenerateTriangles);
        Refused(() => Solid.FromMesh(degenerate), "1 triangle has no area (for example triangle 80");
        var crowded = TriangleMesh.Of(whole.Vertices.Append(new(0.1, 0, 0)), whole.Triangles.Append((a, b, 42)));
        Assert.Equal((1, 2), (crowded.Report.CrowdedEdges, crowded.Report.OpenEdges));
        var inside = whole.Reversed();
        Assert.True(inside.Report.IsInsideOut);
        Refused(() => Solid.FromMesh(inside), "faces inwards as a whole");
        Refused(() => TriangleMesh.Of(whole.Vertices, [(0, 1, 42)]), "counted from 0");
        // A hollow: the inner surface faces the other way, and the whole is sound.
        var hollow = TriangleMesh.Of(whole.Vertices.Concat(whole.Vertices.Select(v => 0.5 * v)),
            whole.Triangles.Concat(whole.Reversed().Triangles.Select(t => (t.A + 42, t.B + 42, t.C + 42))));
        Assert.True(hollow.Report.IsSound);
        Near(0.875 * Solid.FromMesh(whole).Volume, Solid.FromMesh(hollow).Volume, 1e-3);
    }

    [Fact]
    public void Loose_triangles_are_joined_at_their_corners()
    {
        var whole = MeshForms.Icosphere(0.05, 2);
        var loose = whole.Triangles.Select(t => (whole.Vertices[t.A], whole.Vertices[t.B], whole.Vertices[t.C])).ToArray();
        var joined = TriangleMesh.Joined(loose);
        Assert.Equal(whole.Vertices.Count, joined.Vertices.Count);
        Assert.True(joined.Report.IsSound);
        // The same with corners that differ by rounding: joined only when asked.
        var random = new Random(7);
        Vector3D Shaken(Vector3D v) => v + 1e-9 * new Vector3D(random.NextDouble(), random.NextDouble(), random.NextDouble());
        var rough = loose.Select(t => (Shaken(t.Item1), Shaken(t.Item2), Shaken(t.Item3))).ToArray();
        Assert.False(TriangleMesh.Joined(rough).Report.IsSound);
        Assert.True(TriangleMesh.Joined(rough, within: 1e-8).Report.IsSound);
        Assert.Equal(whole.Vertices.Count, TriangleMesh.Joined(rough, within: 1e-8).Vertices.Count);
    }

    internal static void Refused(Func<object> build, string part) 
    {
        var message = Assert.ThrowsAny<ArgumentException>(build).Message;
        Assert.True(message.Contains(part, StringComparison.Ordinal), message);
    }
}
