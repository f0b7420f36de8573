namespace BallSim.Balls;

/// <summary>
/// The ten integrals of a density over a body, about the origin: ∫1, ∫x, ∫y, ∫z, ∫xx, ∫yy, ∫zz, ∫xy, ∫yz, ∫zx. They are linear in the
/// density, so that bodies add and subtract without any parallel axis.
/// </summary>
internal readonly record struct Moments(
    double Total, double X, double Y, double Z, double Xx, double Yy, double Zz, double Xy, double Yz, double Zx)
{
    public static Moments operator +(Moments a, Moments b) => new(a.Total + b.Total, a.X + b.X, a.Y + b.Y, a.Z + b.Z,
        a.Xx + b.Xx, a.Yy + b.Yy, a.Zz + b.Zz, a.Xy + b.Xy, a.Yz + b.Yz, a.Zx + b.Zx);

    public static Moments operator -(Moments a, Moments b) => a + -1 * b;

    public static Moments operator *(double s, Moments a) =>
        new(s * a.Total, s * a.X, s * a.Y, s * a.Z, s * a.Xx, s * a.Yy, s * a.Zz, s * a.Xy, s * a.Yz, s * a.Zx);

    public Vector3D First => new(X, Y, Z);

    /// <summary>A size that compares all ten: moments over powers of a length.</summary>
    public double Size(double length)
    {
        var first = Math.Max(Math.Abs(X), Math.Max(Math.Abs(Y), Math.Abs(Z)));
        var second = Math.Max(Math.Max(Math.Max(Math.Abs(Xx), Math.Abs(Yy)), Math.Abs(Zz)), Math.Max(Math.Max(Math.Abs(Xy), Math.Abs(Yz)), Math.Abs(Zx)));
        return Math.Max(Math.Abs(Total), Math.Max(first / length, second / (length * length)));
    }

    /// <summary>The body carried by a vector.</summary>
    public Moments Moved(Vector3D by)
    {
        var (a, b, c) = by;
        return new(Total, X + a * Total, Y + b * Total, Z + c * Total,
            Xx + a * (2 * X + a * Total), Yy + b * (2 * Y + b * Total), Zz + c * (2 * Z + c * Total),
            Xy + a * Y + b * X + a * b * Total, Yz + b * Z + c * Y + b * c * Total, Zx + c * X + a * Z + c * a * Total);
    }

    /// <summary>The body turned about the origin.</summary>
    public Moments Turned(Rotation rotation)
    {
        var first = rotation.Apply(First);
        // The second moments turn as any symmetric tensor does.
        var second = new InertiaTensor(Xx, Yy, Zz, Xy, Zx, Yz).Turned(rotation);
        return new(Total, first.X, first.Y, first.Z, second.Xx, second.Yy, second.Zz, second.Xy, second.Yz, second.Xz);
    }

    /// <summary>Mass, centre of mass and tensor, the total being a mass: I = (tr S) 1 - S about the centre of mass.</summary>
    public MassProperties Properties()
    {
        if (Total == 0)
        {
            return default;
        }
        var centre = First / Total;
        var s = Moved(-centre);
        return new(Total, centre, new(s.Yy + s.Zz, s.Zz + s.Xx, s.Xx + s.Yy, -s.Xy, -s.Zx, -s.Yz));
    }
}
