using BallSim.Files.Text;
using BallSim.Releases;

namespace BallSim.Files.Json;

/// <summary>The tables of numbers of the values that no scenario holds: a body by its mass and moments, a state of motion, how an ensemble is computed.</summary>
internal static class StudyShapes
{
    public static Shape<Vector3D> Length { get; } = Vector(UnitKind.Length);

    public static Shape<Vector3D> Spin { get; } = Vector(UnitKind.SpinRate);

    public static Shape<Rotation> Rotation { get; } = new(
        new("w", null, q => q.W, (q, v) => new(v, q.X, q.Y, q.Z)),
        new("x", null, q => q.X, (q, v) => new(q.W, v, q.Y, q.Z)),
        new("y", null, q => q.Y, (q, v) => new(q.W, q.X, v, q.Z)),
        new("z", null, q => q.Z, (q, v) => new(q.W, q.X, q.Y, v)));

    public static Shape<InertiaTensor> Inertia { get; } = new(
        new("xx", UnitKind.Inertia, i => i.Xx, (i, v) => new(v, i.Yy, i.Zz, i.Xy, i.Xz, i.Yz)),
        new("yy", UnitKind.Inertia, i => i.Yy, (i, v) => new(i.Xx, v, i.Zz, i.Xy, i.Xz, i.Yz)),
        new("zz", UnitKind.Inertia, i => i.Zz, (i, v) => new(i.Xx, i.Yy, v, i.Xy, i.Xz, i.Yz)),
        new("xy", UnitKind.Inertia, i => i.Xy, (i, v) => new(i.Xx, i.Yy, i.Zz, v, i.Xz, i.Yz)),
        new("xz", UnitKind.Inertia, i => i.Xz, (i, v) => new(i.Xx, i.Yy, i.Zz, i.Xy, v, i.Yz)),
        new("yz", UnitKind.Inertia, i => i.Yz, (i, v) => new(i.Xx, i.Yy, i.Zz, i.Xy, i.Xz, v)));

    public static Shape<InitialState> State { get; } = new(
        new("x", UnitKind.Length, s => s.X, (s, v) => s with { X = v }),
        new("y", UnitKind.Length, s => s.Y, (s, v) => s with { Y = v }),
        new("velocityX", UnitKind.Speed, s => s.VelocityX, (s, v) => s with { VelocityX = v }),
        new("velocityY", UnitKind.Speed, s => s.VelocityY, (s, v) => s with { VelocityY = v }),
        new("loft", UnitKind.Length, s => s.Loft, (s, v) => s with { Loft = v }));

    private static Shape<Vector3D> Vector(UnitKind kind) => new(
        new("x", kind, p => p.X, (p, v) => new(v, p.Y, p.Z)),
        new("y", kind, p => p.Y, (p, v) => new(p.X, v, p.Z)),
        new("z", kind, p => p.Z, (p, v) => new(p.X, p.Y, v)));
}
