using BallSim.Balls;
using FsCheck;
using FsCheck.Fluent;

namespace BallSim.Tests.Laws;

/// <summary>Solids of every kind, placed and turned freely, with densities.</summary>
internal static class AnySolid
{
    public static Gen<double> Between(double low, double high) => Gen.Choose(0, 1_000_000).Select(k => low + (high - low) * k / 1e6);

    public static Gen<Vector3D> Vector(double size) =>
        from x in Between(-size, size) from y in Between(-size, size) from z in Between(-size, size) select new Vector3D(x, y, z);

    public static Gen<Rotation> Turn() =>
        from axis in Vector(1)
        from angle in Between(-Math.PI, Math.PI)
        select axis.Length > 1e-3 ? Rotation.About(axis, angle) : Rotation.Identity;

    /// <summary>In its own frame, no part of it farther than 6 cm from the origin.</summary>
    public static Gen<Solid> Form() =>
        from kind in Gen.Choose(0, 9)
        from a in Between(0.005, 0.03)
        from b in Between(0.005, 0.03)
        from c in Between(0.005, 0.03)
        select kind switch
        {
            0 => Solid.Sphere(a),
            1 => Solid.SphericalCap(a, b < 2 * a ? b : a),
            2 => Solid.SphericalShell(a, a + b),
            3 => Solid.Ellipsoid(a, b, c),
            4 => Solid.Cylinder(a, b),
            5 => Solid.ConeFrustum(a, b, c),
            6 => Solid.Torus(0.03, a),
            7 => Solid.Box(a, b, c),
            8 => Solid.Revolved(Profile.From(-a, 0).LineTo(-a, b).ArcTo(0, b + c, a, b).LineTo(2 * a - 1e-3, 0)),
            _ => Solid.FromMesh(MeshForms.Torus(0.03, a, 7, 6)),
        };

    public static Gen<Part> Placed() =>
        from form in Form() from turn in Turn() from place in Vector(0.05) from density in Between(100, 5000)
        select new Part(form.Turned(turn).Moved(place), density);
}
