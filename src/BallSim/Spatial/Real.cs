using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using X86 = System.Runtime.Intrinsics.X86;

namespace BallSim.Spatial;

/// <summary>One double as a number type of the equations.</summary>
internal readonly struct Real(double value) : IScalar<Real>, IEquatable<Real>
{
    private readonly double value = value;

    public static Real Sliver => 1e-9;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Real(double value) => new(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator double(Real a) => a.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static explicit IScalar<Real>.operator double(Real a) => a.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator +(Real a, Real b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator -(Real a, Real b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator *(Real a, Real b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator /(Real a, Real b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator -(Real a) => new(-a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool operator <(Real a, Real b) => a.value < b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool operator >(Real a, Real b) => a.value > b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool operator <=(Real a, Real b) => a.value <= b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool operator >=(Real a, Real b) => a.value >= b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool operator ==(Real a, Real b) => a.value == b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool operator !=(Real a, Real b) => a.value != b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Fma(Real a, Real b, Real c) => new(Math.FusedMultiplyAdd(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Fms(Real a, Real b, Real c) => new(Math.FusedMultiplyAdd(a.value, b.value, -c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Fnma(Real a, Real b, Real c) => new(Math.FusedMultiplyAdd(-a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Sqrt(Real a) => new(Math.Sqrt(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Abs(Real a) => new(Math.Abs(a.value));

    // No jumps: which number is the larger is anybody's guess, and a wrong one costs more than a sum.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Min(Real a, Real b) => new(X86.Sse2.IsSupported
        ? X86.Sse2.MinScalar(Alone(a), Alone(b)).ToScalar()
        : a.value < b.value ? a.value : b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Max(Real a, Real b) => new(X86.Sse2.IsSupported
        ? X86.Sse2.MaxScalar(Alone(a), Alone(b)).ToScalar()
        : a.value > b.value ? a.value : b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real IfLess(Real a, Real b, Real then, Real otherwise) => new(X86.Avx.IsSupported
        ? X86.Avx.BlendVariable(Alone(otherwise), Alone(then), X86.Sse2.CompareScalarLessThan(Alone(a), Alone(b))).ToScalar()
        : a.value < b.value ? then.value : otherwise.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Any(Real flag) => flag.value > 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real InverseCubeRootGuess(Real a)
    {
        // The bits of a double are, but for a constant, 2^52 log2(a) piecewise linear; a third of them by shifts and adds, as lanes have no integer division.
        var e = BitConverter.DoubleToInt64Bits(a.value) - 0x3FF0000000000000L;
        var third = (e >> 2) + (e >> 4) + (e >> 6) + (e >> 8) + (e >> 10) + (e >> 12);
        return new(BitConverter.Int64BitsToDouble(0x3FEEDC0000000000L - third));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real InverseFourthRootGuess(Real a)
    {
        var e = BitConverter.DoubleToInt64Bits(a.value) - 0x3FF0000000000000L;
        return new(BitConverter.Int64BitsToDouble(0x3FEF060000000000L - (e >> 2)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real InverseSixthRootGuess(Real a)
    {
        var e = BitConverter.DoubleToInt64Bits(a.value) - 0x3FF0000000000000L;
        var sixth = (e >> 3) + (e >> 5) + (e >> 7) + (e >> 9) + (e >> 11) + (e >> 13);
        return new(BitConverter.Int64BitsToDouble(0x3FEF200000000000L - sixth));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Coarse(Real a) => new(BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(a.value) & -(1L << 46)));

    // One double says nothing of the others: four components of a state fit one vector, and each still gets its own single rounding.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AddsWhole<TState>(ref TState y, Real s, in TState k)
        where TState : struct
    {
        if (!Packs<TState>())
        {
            return false;
        }
        var a = Vector256.Create(s.value);
        for (var i = 0; i < Unsafe.SizeOf<TState>() / 32; i++)
        {
            Part(ref y, i) = Vector256.FusedMultiplyAdd(a, Part(in k, i), Part(ref y, i));
        }
        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AddsWhole<TState>(ref TState y, Real s1, in TState k1, Real s2, in TState k2)
        where TState : struct
    {
        if (!Packs<TState>())
        {
            return false;
        }
        var (a1, a2) = (Vector256.Create(s1.value), Vector256.Create(s2.value));
        for (var i = 0; i < Unsafe.SizeOf<TState>() / 32; i++)
        {
            Part(ref y, i) = Vector256.FusedMultiplyAdd(a2, Part(in k2, i), Vector256.FusedMultiplyAdd(a1, Part(in k1, i), Part(ref y, i)));
        }
        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AddsWhole<TState>(ref TState y, Real s1, in TState k1, Real s2, in TState k2, Real s3, in TState k3)
        where TState : struct
    {
        if (!Packs<TState>())
        {
            return false;
        }
        var (a1, a2, a3) = (Vector256.Create(s1.value), Vector256.Create(s2.value), Vector256.Create(s3.value));
        for (var i = 0; i < Unsafe.SizeOf<TState>() / 32; i++)
        {
            Part(ref y, i) = Vector256.FusedMultiplyAdd(a3, Part(in k3, i), Vector256.FusedMultiplyAdd(a2, Part(in k2, i), Vector256.FusedMultiplyAdd(a1, Part(in k1, i), Part(ref y, i))));
        }
        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool DoesFour<TWork>(Real a, Real b, Real c, Real d, Real e, ref TWork work)
        where TWork : struct, IFourfold
    {
        if (!X86.Fma.IsSupported)
        {
            return false;
        }
        work.Do(a.value, b.value, c.value, d.value, e.value);
        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool SetsFour(ref Real first, Real a, Real b, Real c, Real d)
    {
        if (!X86.Fma.IsSupported)
        {
            return false;
        }
        Unsafe.As<Real, Vector256<double>>(ref first) = Vector256.Create(a.value, b.value, c.value, d.value);
        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool SumsWhole<TState>(ref TState y, in TState start, in TState k, int count, int numbers, in Real h, double c1, double c2, double c3, double c4, double c5)
        where TState : struct
    {
        if (!Packs<TState>())
        {
            return false;
        }
        var n = Unsafe.SizeOf<TState>() / 32;
        var parts = numbers < 4 * n ? (numbers + 3) / 4 : n;
        var (s1, s2, s3, s4, s5) = (Vector256.Create(h.value * c1), Vector256.Create(h.value * c2), Vector256.Create(h.value * c3), Vector256.Create(h.value * c4), Vector256.Create(h.value * c5));
        for (var i = 0; i < parts; i++)
        {
            var sum = Vector256.FusedMultiplyAdd(s1, Part(in k, i), Part(in start, i));
            if (count > 1)
            {
                sum = Vector256.FusedMultiplyAdd(s2, Part(in k, n + i), sum);
            }
            if (count > 2)
            {
                sum = Vector256.FusedMultiplyAdd(s3, Part(in k, 2 * n + i), sum);
            }
            if (count > 3)
            {
                sum = Vector256.FusedMultiplyAdd(s4, Part(in k, 3 * n + i), sum);
            }
            if (count > 4)
            {
                sum = Vector256.FusedMultiplyAdd(s5, Part(in k, 4 * n + i), sum);
            }
            Part(ref y, i) = sum;
        }
        return true;
    }

    public bool Equals(Real other) => value.Equals(other.value);
    public override bool Equals(object? obj) => obj is Real other && Equals(other);
    public override int GetHashCode() => value.GetHashCode();
    public override string ToString() => Check.Text(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<double> Alone(Real a) => Vector128.CreateScalarUnsafe(a.value);

    private static bool Packs<TState>()
        where TState : struct => X86.Fma.IsSupported && Unsafe.SizeOf<TState>() % 32 == 0;

    private static ref Vector256<double> Part<TState>(ref readonly TState state, int i)
        where TState : struct => ref Unsafe.Add(ref Unsafe.As<TState, Vector256<double>>(ref Unsafe.AsRef(in state)), i);
}
