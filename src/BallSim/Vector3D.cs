using BallSim.Spatial;

namespace BallSim;

/// <summary>Three components in a frame that the place of use names: the lane frame (x right, y down-lane, z up) or the ball frame.</summary>
/// <param name="X">First component.</param>
/// <param name="Y">Second component.</param>
/// <param name="Z">Third component.</param>
public readonly record struct Vector3D(double X, double Y, double Z)
{
    /// <summary>The zero vector.</summary>
    public static Vector3D Zero => default;

    /// <summary>The first axis: right across the lane, or the pin of the ball.</summary>
    public static Vector3D UnitX => new(1, 0, 0);

    /// <summary>The second axis: down the lane, or the mass-bias mark of the ball.</summary>
    public static Vector3D UnitY => new(0, 1, 0);

    /// <summary>The third axis: up, or the intermediate axis of the ball.</summary>
    public static Vector3D UnitZ => new(0, 0, 1);

    /// <summary>Euclidean length, in the unit of the components.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>This vector scaled to length one; NaN components for the zero vector.</summary>
    public Vector3D Unit => this / Length;

    /// <summary>Scalar product.</summary>
    public double Dot(Vector3D other) => X * other.X + Y * other.Y + Z * other.Z;

    /// <summary>Vector product, this × other.</summary>
    public Vector3D Cross(Vector3D other) =>
        new(Y * other.Z - Z * other.Y, Z * other.X - X * other.Z, X * other.Y - Y * other.X);

    /// <summary>Angle to another vector, in rad, 0 to π; accurate for small and for nearly opposite angles alike.</summary>
    public double AngleTo(Vector3D other) => Math.Atan2(Cross(other).Length, Dot(other));

    /// <summary>Component-wise sum.</summary>
    public static Vector3D operator +(Vector3D a, Vector3D b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Component-wise difference.</summary>
    public static Vector3D operator -(Vector3D a, Vector3D b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The opposite vector.</summary>
    public static Vector3D operator -(Vector3D a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Scaled by a number.</summary>
    public static Vector3D operator *(double s, Vector3D a) => new(s * a.X, s * a.Y, s * a.Z);

    /// <summary>Scaled by a number.</summary>
    public static Vector3D operator *(Vector3D a, double s) => s * a;

    /// <summary>Divided by a number.</summary>
    public static Vector3D operator /(Vector3D a, double s) => new(a.X / s, a.Y / s, a.Z / s);

    /// <summary>(X, Y, Z) to six digits.</summary>
    // A record would print Unit, which is a vector, which would print its Unit, and so on for ever.
    public override string ToString() => $"({Check.Text(X)}, {Check.Text(Y)}, {Check.Text(Z)})";

    internal bool IsFinite => double.IsFinite(X) && double.IsFinite(Y) && double.IsFinite(Z);

    internal Vec3<Real> Spatial => new(X, Y, Z);

    internal static Vector3D From(Vec3<Real> v) => new(v.X, v.Y, v.Z);
}
