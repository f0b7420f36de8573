using BallSim.Balls;

namespace BallSim.Tests.Balls;

/// <summary>Solids with what they are said in another way: whether a point lies within, by the inequality that defines the form; ρ is the distance from the axis, all lengths m.</summary>
internal static class RoundForms
{
    public sealed record Form(string Name, Solid Solid, Func<double, double, bool> Holds)
    {
        public bool Contains(Vector3D p) => Holds(p.Z, double.Hypot(p.X, p.Y));
    }

    private static double Square(double x) => x * x;

    /// <summary>Solids of revolution about z, convex and not, of straight lines, spheres, rings whose tube bulges or is hollowed out, and lemons (an arc whose centre lies beyond the axis).</summary>
    public static IReadOnlyList<Form> Revolved { get; } =
    [
        new("cylinder", Solid.Cylinder(0.03, 0.05), (z, ρ) => Math.Abs(z) < 0.025 && ρ < 0.03),
        new("frustum", Solid.ConeFrustum(0.04, 0.015, 0.05), (z, ρ) => z is > 0 and < 0.05 && ρ < 0.04 - 0.5 * z),
        new("cone", Solid.ConeFrustum(0, 0.03, 0.06), (z, ρ) => z is > 0 and < 0.06 && ρ < 0.5 * z),
        new("ball of arcs", Solid.Revolved(Profile.From(-0.03, 0).ArcTo(0.01, 0.04, 0.05, 0)), (z, ρ) => Square(z - 0.01) + ρ * ρ < 0.0016),
        new("cap", Solid.SphericalCap(0.05, 0.03), (z, ρ) => z > 0.02 && z * z + ρ * ρ < 0.0025),
        new("shell", Solid.SphericalShell(0.03, 0.04), (z, ρ) => z * z + ρ * ρ is > 0.0009 and < 0.0016),
        new("ring", Solid.Torus(0.03, 0.012), (z, ρ) => z * z + Square(ρ - 0.03) < 0.000144),
        new("ring without a hole", Solid.Torus(0.02, 0.02), (z, ρ) => z * z + Square(ρ - 0.02) < 0.0004),
        // A circle through (-3, 3), (0, 1), (3, 3) cm has its centre at 4.25 and the radius 3.25.
        new("waist", Solid.Revolved(Profile.From(-0.03, 0).LineTo(-0.03, 0.03).ArcTo(0, 0.01, 0.03, 0.03).LineTo(0.03, 0)),
            (z, ρ) => Math.Abs(z) < 0.03 && ρ < 0.0425 - Math.Sqrt(0.0325 * 0.0325 - z * z)),
        // Through (-3, 2), (0, 3), (3, 2) cm: centre at -2, radius 5.
        new("lemon", Solid.Revolved(Profile.From(-0.03, 0).LineTo(-0.03, 0.02).ArcTo(0, 0.03, 0.03, 0.02).LineTo(0.03, 0)),
            (z, ρ) => Math.Abs(z) < 0.03 && ρ < Math.Sqrt(0.0025 - z * z) - 0.02),
        // Through (∓0.6, 2.2) and (0, 4) cm: centre at 3, radius 1; a disc that swells to a bead at its rim.
        new("pulley", Solid.Revolved(Profile.From(-0.006, 0).LineTo(-0.006, 0.022).ArcTo(0, 0.04, 0.006, 0.022).LineTo(0.006, 0)),
            (z, ρ) => Math.Abs(z) < 0.006 && ρ < 0.022 || z * z + Square(ρ - 0.03) < 0.0001),
        new("tube", Solid.Revolved(Profile.From(-0.02, 0.01).LineTo(-0.02, 0.03).LineTo(0.03, 0.03).LineTo(0.03, 0.01)), (z, ρ) => z is > -0.02 and < 0.03 && ρ is > 0.01 and < 0.03),
        new("two cones", Solid.Revolved(Profile.From(-0.02, 0).LineTo(0, 0.03).LineTo(0.04, 0)), (z, ρ) => z < 0 ? ρ < 1.5 * (z + 0.02) : ρ < 0.75 * (0.04 - z)),
        // The same run the other way round.
        new("two cones back", Solid.Revolved(Profile.From(0.04, 0).LineTo(0, 0.03).LineTo(-0.02, 0)), (z, ρ) => z < 0 ? ρ < 1.5 * (z + 0.02) : ρ < 0.75 * (0.04 - z)),
    ];

    /// <summary>Solids without an axis; whether they hold a point asks for the point.</summary>
    public static IReadOnlyList<(string Name, Solid Solid, Func<Vector3D, bool> Contains)> Other { get; } =
    [
        ("sphere", Solid.Sphere(0.03), p => p.Length < 0.03),
        ("ellipsoid", Solid.Ellipsoid(0.02, 0.03, 0.05), p => Square(p.X / 0.02) + Square(p.Y / 0.03) + Square(p.Z / 0.05) < 1),
        ("box", Solid.Box(0.04, 0.06, 0.08), p => Math.Abs(p.X) < 0.02 && Math.Abs(p.Y) < 0.03 && Math.Abs(p.Z) < 0.04),
    ];

    public static IEnumerable<(string Name, Solid Solid, Func<Vector3D, bool> Contains)> All => Revolved.Select(f => (f.Name, f.Solid, (Func<Vector3D, bool>)f.Contains)).Concat(Other);
}
