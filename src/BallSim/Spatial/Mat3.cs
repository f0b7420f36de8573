using System.Runtime.CompilerServices;

namespace BallSim.Spatial;

/// <summary>A rotation as a matrix; its columns are the images of the body's axes.</summary>
internal readonly struct Mat3<T>(Vec3<T> row0, Vec3<T> row1, Vec3<T> row2)
    where T : struct, IReal<T>
{
    public readonly Vec3<T> Row0 = row0, Row1 = row1, Row2 = row2;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3<T> operator *(Mat3<T> r, Vec3<T> v) => new(r.Row0.Dot(v), r.Row1.Dot(v), r.Row2.Dot(v));

    /// <summary>The transpose applied to a vector: lane to body.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec3<T> Back(Vec3<T> v) => new(
        T.Fma(Row0.X, v.X, T.Fma(Row1.X, v.Y, Row2.X * v.Z)),
        T.Fma(Row0.Y, v.X, T.Fma(Row1.Y, v.Y, Row2.Y * v.Z)),
        T.Fma(Row0.Z, v.X, T.Fma(Row1.Z, v.Y, Row2.Z * v.Z)));

    /// <summary>R S Rᵀ: a tensor of the body expressed in the lane frame.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Sym3<T> Turned(Sym3<T> s)
    {
        var (a, b, c) = (s * Row0, s * Row1, s * Row2);
        return new(Row0.Dot(a), Row1.Dot(b), Row2.Dot(c), Row0.Dot(b), Row0.Dot(c), Row1.Dot(c));
    }
}
