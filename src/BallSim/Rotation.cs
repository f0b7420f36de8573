using BallSim.Spatial;

namespace BallSim;

/// <summary>A rotation as a unit quaternion (W, X, Y, Z). As an orientation of the ball it takes vectors of the ball frame to the lane frame.</summary>
/// <param name="W">Scalar part, cos of half the angle.</param>
/// <param name="X">First component of the vector part.</param>
/// <param name="Y">Second component of the vector part.</param>
/// <param name="Z">Third component of the vector part.</param>
/// <remarks>(W, X, Y, Z) and its negative are the same rotation.</remarks>
public readonly record struct Rotation(double W, double X, double Y, double Z)
{
    /// <summary>No rotation.</summary>
    public static Rotation Identity => new(1, 0, 0, 0);

    /// <summary>The rotation about an axis (any length but zero) by an angle in rad, right-handed.</summary>
    public static Rotation About(Vector3D axis, double angle)
    {
        var u = axis.Unit * Math.Sin(angle / 2);
        return new Rotation(Math.Cos(angle / 2), u.X, u.Y, u.Z);
    }

    /// <summary>
    /// The rotation that takes the frame (<paramref name="x"/>, <paramref name="y"/>, x × y) of two orthonormal vectors onto
    /// (<paramref name="toX"/>, <paramref name="toY"/>, toX × toY).
    /// </summary>
    public static Rotation Between(Vector3D x, Vector3D y, Vector3D toX, Vector3D toY)
    {
        var z = x.Cross(y);
        var toZ = toX.Cross(toY);
        // M = to · fromᵀ, then the quaternion of M by its largest component, so that no division by a small number occurs.
        double m(Vector3D a, Vector3D b) => a.Dot(b);
        Vector3D Row(Vector3D e) => m(e, toX) * x + m(e, toY) * y + m(e, toZ) * z;
        var (r0, r1, r2) = (Row(Vector3D.UnitX), Row(Vector3D.UnitY), Row(Vector3D.UnitZ));
        var trace = r0.X + r1.Y + r2.Z;
        Rotation q;
        if (trace > 0)
        {
            q = new(1 + trace, r2.Y - r1.Z, r0.Z - r2.X, r1.X - r0.Y);
        }
        else if (r0.X >= r1.Y && r0.X >= r2.Z)
        {
            q = new(r2.Y - r1.Z, 1 + r0.X - r1.Y - r2.Z, r0.Y + r1.X, r0.Z + r2.X);
        }
        else if (r1.Y >= r2.Z)
        {
            q = new(r0.Z - r2.X, r0.Y + r1.X, 1 - r0.X + r1.Y - r2.Z, r1.Z + r2.Y);
        }
        else
        {
            q = new(r1.X - r0.Y, r0.Z + r2.X, r1.Z + r2.Y, 1 - r0.X - r1.Y + r2.Z);
        }
        return q.Normalised;
    }

    /// <summary>The vector turned by this rotation.</summary>
    public Vector3D Apply(Vector3D v)
    {
        var u = new Vector3D(X, Y, Z);
        var t = 2 * u.Cross(v);
        return v + W * t + u.Cross(t);
    }

    /// <summary>The opposite rotation.</summary>
    public Rotation Inverse => new(W, -X, -Y, -Z);

    /// <summary>First <paramref name="b"/>, then <paramref name="a"/>.</summary>
    public static Rotation operator *(Rotation a, Rotation b) => new(
        a.W * b.W - a.X * b.X - a.Y * b.Y - a.Z * b.Z,
        a.W * b.X + a.X * b.W + a.Y * b.Z - a.Z * b.Y,
        a.W * b.Y - a.X * b.Z + a.Y * b.W + a.Z * b.X,
        a.W * b.Z + a.X * b.Y - a.Y * b.X + a.Z * b.W);

    /// <summary>(W, X, Y, Z) to six digits.</summary>
    // A record would print Inverse, which is a rotation, which would print its Inverse, and so on for ever.
    public override string ToString() => $"({Check.Text(W)}, {Check.Text(X)}, {Check.Text(Y)}, {Check.Text(Z)})";

    internal double Norm => Math.Sqrt(W * W + X * X + Y * Y + Z * Z);

    internal Rotation Normalised
    {
        get
        {
            // Once of length one, always the same: what is written and read again does not creep.
            var n = Norm;
            return Math.Abs(n - 1) < 1e-15 ? this : new(W / n, X / n, Y / n, Z / n);
        }
    }

    internal Quat<Real> Spatial => new(W, X, Y, Z);

    internal static Rotation From(Quat<Real> q) => new(q.W, q.X, q.Y, q.Z);
}
