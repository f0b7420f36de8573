using System.Runtime.CompilerServices;

namespace BallSim.Spatial;

/// <summary>Three numbers in a frame that the variable's name tells.</summary>
internal readonly struct Vec3<T>(T x, T y, T z)
    where T : struct, IReal<T>
{
    public readonly T X = x, Y = y, Z = z;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3<T> operator +(Vec3<T> a, Vec3<T> b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3<T> operator -(Vec3<T> a, Vec3<T> b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3<T> operator -(Vec3<T> a) => new(-a.X, -a.Y, -a.Z);
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3<T> operator *(T s, Vec3<T> a) => new(s * a.X, s * a.Y, s * a.Z);

    /// <summary>a + s b.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3<T> AddScaled(Vec3<T> a, T s, Vec3<T> b) => new(T.Fma(s, b.X, a.X), T.Fma(s, b.Y, a.Y), T.Fma(s, b.Z, a.Z));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Dot(Vec3<T> b) => T.Fma(X, b.X, T.Fma(Y, b.Y, Z * b.Z));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec3<T> Cross(Vec3<T> b) => new(
        T.Fms(Y, b.Z, Z * b.Y),
        T.Fms(Z, b.X, X * b.Z),
        T.Fms(X, b.Y, Y * b.X));

    /// <summary>Component by component: a tensor along its principal axes times a vector.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec3<T> Times(Vec3<T> b) => new(X * b.X, Y * b.Y, Z * b.Z);
}
