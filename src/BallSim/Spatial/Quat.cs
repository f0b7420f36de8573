using System.Runtime.CompilerServices;

namespace BallSim.Spatial;

/// <summary>A unit quaternion (w, x, y, z) that takes body vectors to lane vectors.</summary>
internal readonly struct Quat<T>(T w, T x, T y, T z)
    where T : struct, IReal<T>
{
    public readonly T W = w, X = x, Y = y, Z = z;

    /// <summary>This orientation turned by the rotation vector (x, y, z), its angle at most 5 rad: the exponential times it, to be normalised where it is kept. All but the last products are ready when the series are.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Quat<T> Turned(T x, T y, T z)
    {
        Elementary<T>.HalfTurn(T.Fma(x, x, T.Fma(y, y, z * z)), out var w, out var part);
        return new(
            T.Fms(w, W, part * T.Fma(x, X, T.Fma(y, Y, z * Z))),
            T.Fma(part, T.Fma(x, W, T.Fms(y, Z, z * Y)), w * X),
            T.Fma(part, T.Fma(y, W, T.Fms(z, X, x * Z)), w * Y),
            T.Fma(part, T.Fma(z, W, T.Fms(x, Y, y * X)), w * Z));
    }

    /// <summary>The same, for a vector.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Quat<T> Turned(Vec3<T> θ) => Turned(θ.X, θ.Y, θ.Z);

    /// <summary>First b, then a.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quat<T> operator *(Quat<T> a, Quat<T> b) => new(
        T.Fma(a.W, b.W, T.Fnma(a.X, b.X, T.Fms(-a.Y, b.Y, a.Z * b.Z))),
        T.Fma(a.W, b.X, T.Fma(a.X, b.W, T.Fms(a.Y, b.Z, a.Z * b.Y))),
        T.Fma(a.W, b.Y, T.Fma(a.Y, b.W, T.Fms(a.Z, b.X, a.X * b.Z))),
        T.Fma(a.W, b.Z, T.Fma(a.Z, b.W, T.Fms(a.X, b.Y, a.Y * b.X))));

    /// <summary>The same rotation with its length brought back to one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Quat<T> Normalised()
    {
        T one = 1.0;
        var s = one / T.Sqrt(T.Fma(W, W, T.Fma(X, X, T.Fma(Y, Y, Z * Z))));
        return new(W * s, X * s, Y * s, Z * s);
    }

    /// <summary>The inverse rotation of a unit quaternion.</summary>
    public Quat<T> Inverse => new(W, -X, -Y, -Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Mat3<T> Matrix()
    {
        T one = 1.0, two = 2.0;
        var (x2, y2, z2) = (two * X, two * Y, two * Z);
        var (xx, yy, zz) = (X * x2, Y * y2, Z * z2);
        var (xy, xz, yz) = (X * y2, X * z2, Y * z2);
        var (wx, wy, wz) = (W * x2, W * y2, W * z2);
        return new(
            new(one - (yy + zz), xy - wz, xz + wy),
            new(xy + wz, one - (xx + zz), yz - wx),
            new(xz - wy, yz + wx, one - (xx + yy)));
    }

    /// <summary>
    /// The rate of the rotation vector θ when the body turns with ω, both in the lane frame: ω - ½ θ × ω + c θ × (θ × ω), c = (1 - (φ) cot φ)/θ² with φ = θ/2.
    /// c is a polynomial in θ² that begins like its series (six terms) and errs by at most 1e-9 up to 3.8 rad, by 3e-13 at 1 rad; that of floats, through its values at Chebyshev's places, by 2e-8.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3<T> TurnRate(Vec3<T> θ, Vec3<T> ω)
    {
        var c = TurnSeries(θ.Dot(θ));
        T half = -0.5;
        var θω = θ.Cross(ω);
        return Vec3<T>.AddScaled(Vec3<T>.AddScaled(ω, half, θω), c, θ.Cross(θω));
    }

    /// <summary>c of <see cref="TurnRate"/> as a function of θ².</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T TurnSeries(T u)
    {
        var v = u * u;
        if (T.IsSingle)
        {
            T first = T.Fma(T.Fma(T.Fma(-1.6856768142319438e-11, v, 1.906408587084878e-08), v, 3.306461213626687e-05), v, 1.0 / 12);
            T second = T.Fma(T.Fma(T.Fma(1.5239794727885722e-12, v, 8.638842845099244e-10), v, 8.312527714735423e-07), v, 0.0013888895057654188);
            return T.Fma(second, u, first);
        }
        T even = -7.243310170259262e-15;
        even = T.Fma(even, v, 1.2961854208716445e-11);
        even = T.Fma(even, v, 1.0 / 47900160);
        even = T.Fma(even, v, 1.0 / 30240);
        even = T.Fma(even, v, 1.0 / 12);
        T odd = 9.180329892483273e-16;
        odd = T.Fma(odd, v, 4.767535553798835e-13);
        odd = T.Fma(odd, v, 691.0 / 1307674368000);
        odd = T.Fma(odd, v, 1.0 / 1209600);
        odd = T.Fma(odd, v, 1.0 / 720);
        return T.Fma(odd, u, even);
    }
}
