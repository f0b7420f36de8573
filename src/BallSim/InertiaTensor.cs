using BallSim.Spatial;

namespace BallSim;

/// <summary>A symmetric inertia tensor in kg m², about a point and in a frame that the place of use names. Off-diagonal members are the matrix entries (products of inertia with their minus).</summary>
/// <param name="Xx">Moment about x, kg m².</param>
/// <param name="Yy">Moment about y, kg m².</param>
/// <param name="Zz">Moment about z, kg m².</param>
/// <param name="Xy">Matrix entry xy, kg m².</param>
/// <param name="Xz">Matrix entry xz, kg m².</param>
/// <param name="Yz">Matrix entry yz, kg m².</param>
public readonly record struct InertiaTensor(double Xx, double Yy, double Zz, double Xy = 0, double Xz = 0, double Yz = 0)
{
    /// <summary>The tensor applied to a vector: angular momentum from angular velocity.</summary>
    public Vector3D Apply(Vector3D v) => new(
        Xx * v.X + Xy * v.Y + Xz * v.Z,
        Xy * v.X + Yy * v.Y + Yz * v.Z,
        Xz * v.X + Yz * v.Y + Zz * v.Z);

    /// <summary>Moment of inertia about an axis through the reference point, kg m²; the axis may have any length but zero.</summary>
    public double About(Vector3D axis)
    {
        var u = axis.Unit;
        return u.Dot(Apply(u));
    }

    /// <summary>Tensor of a point of the given mass, kg, at a place relative to the reference point, m: m (|r|² 1 - r rᵀ).</summary>
    public static InertiaTensor OfPoint(double mass, Vector3D place)
    {
        var (x, y, z) = place;
        return new(mass * (y * y + z * z), mass * (z * z + x * x), mass * (x * x + y * y), -mass * x * y, -mass * x * z, -mass * y * z);
    }

    /// <summary>Tensor of two bodies together, about the same point and in the same frame.</summary>
    public static InertiaTensor operator +(InertiaTensor a, InertiaTensor b) =>
        new(a.Xx + b.Xx, a.Yy + b.Yy, a.Zz + b.Zz, a.Xy + b.Xy, a.Xz + b.Xz, a.Yz + b.Yz);

    /// <summary>Tensor of what is left when a body is taken out of another, about the same point and in the same frame.</summary>
    public static InertiaTensor operator -(InertiaTensor a, InertiaTensor b) => a + -1 * b;

    /// <summary>Tensor of the same body at another density.</summary>
    public static InertiaTensor operator *(double s, InertiaTensor a) =>
        new(s * a.Xx, s * a.Yy, s * a.Zz, s * a.Xy, s * a.Xz, s * a.Yz);

    /// <summary>Tensor of the body turned about the reference point: Q I Qᵀ.</summary>
    public InertiaTensor Turned(Rotation rotation)
    {
        // Row i of Q is where the inverse takes the i-th axis; the entries are the tensor between those rows.
        var back = rotation.Inverse;
        var (x, y, z) = (back.Apply(Vector3D.UnitX), back.Apply(Vector3D.UnitY), back.Apply(Vector3D.UnitZ));
        var (tx, ty, tz) = (Apply(x), Apply(y), Apply(z));
        return new(x.Dot(tx), y.Dot(ty), z.Dot(tz), x.Dot(ty), x.Dot(tz), y.Dot(tz));
    }

    /// <summary>The principal moments, kg m², and their axes, in the frame of this tensor.</summary>
    public PrincipalAxes Principal => PrincipalAxes.Of(this);

    internal bool IsFinite => double.IsFinite(Xx) && double.IsFinite(Yy) && double.IsFinite(Zz)
        && double.IsFinite(Xy) && double.IsFinite(Xz) && double.IsFinite(Yz);

    internal Sym3<Real> Spatial => new(Xx, Yy, Zz, Xy, Xz, Yz);

    /// <summary>Diagonal and off-diagonal entries, kg m².</summary>
    public override string ToString() => FormattableString.Invariant($"({Xx:G6}, {Yy:G6}, {Zz:G6}; xy {Xy:G4}, xz {Xz:G4}, yz {Yz:G4}) kg m²");
}
