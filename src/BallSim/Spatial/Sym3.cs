using System.Runtime.CompilerServices;

namespace BallSim.Spatial;

/// <summary>A symmetric 3 × 3 matrix.</summary>
internal readonly struct Sym3<T>(T xx, T yy, T zz, T xy, T xz, T yz)
    where T : struct, IReal<T>
{
    public readonly T Xx = xx, Yy = yy, Zz = zz, Xy = xy, Xz = xz, Yz = yz;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3<T> operator *(Sym3<T> a, Vec3<T> v) => new(
        T.Fma(a.Xx, v.X, T.Fma(a.Xy, v.Y, a.Xz * v.Z)),
        T.Fma(a.Xy, v.X, T.Fma(a.Yy, v.Y, a.Yz * v.Z)),
        T.Fma(a.Xz, v.X, T.Fma(a.Yz, v.Y, a.Zz * v.Z)));

    /// <summary>The inverse by cofactors; the matrix must be positive definite.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Sym3<T> Inverse()
    {
        var cxx = T.Fms(Yy, Zz, Yz * Yz);
        var cxy = T.Fms(Xz, Yz, Xy * Zz);
        var cxz = T.Fms(Xy, Yz, Xz * Yy);
        T one = 1.0;
        var d = one / T.Fma(Xx, cxx, T.Fma(Xy, cxy, Xz * cxz));
        return new(cxx * d, T.Fms(Xx, Zz, Xz * Xz) * d, T.Fms(Xx, Yy, Xy * Xy) * d,
            cxy * d, cxz * d, T.Fms(Xy, Xz, Xx * Yz) * d);
    }

    /// <summary>This matrix plus m (|p|² 1 - p pᵀ): the parallel-axis theorem for a mass m at p.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Sym3<T> AtArm(T m, Vec3<T> p)
    {
        var (xx, yy, zz) = (p.X * p.X, p.Y * p.Y, p.Z * p.Z);
        return new(T.Fma(m, yy + zz, Xx), T.Fma(m, xx + zz, Yy), T.Fma(m, xx + yy, Zz),
            T.Fnma(m, p.X * p.Y, Xy), T.Fnma(m, p.X * p.Z, Xz), T.Fnma(m, p.Y * p.Z, Yz));
    }
}
