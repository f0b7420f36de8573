using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using X86 = System.Runtime.Intrinsics.X86;

namespace BallSim.Spatial;

/// <summary>Eight doubles side by side: one AVX-512 vector.</summary>
internal readonly struct Doubles8(Vector512<double> value) : ILanes<Doubles8>
{
    private readonly Vector512<double> value = value;

    public static int Count => 8;

    public static Doubles8 Sliver => 1e-9;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Doubles8(double value) => new(Vector512.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 operator +(Doubles8 a, Doubles8 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 operator -(Doubles8 a, Doubles8 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 operator *(Doubles8 a, Doubles8 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 operator /(Doubles8 a, Doubles8 b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 operator -(Doubles8 a) => new(-a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 Fma(Doubles8 a, Doubles8 b, Doubles8 c) => new(Vector512.FusedMultiplyAdd(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 Fms(Doubles8 a, Doubles8 b, Doubles8 c) =>
        new(X86.Avx512F.IsSupported ? X86.Avx512F.FusedMultiplySubtract(a.value, b.value, c.value) : Vector512.FusedMultiplyAdd(a.value, b.value, -c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 Fnma(Doubles8 a, Doubles8 b, Doubles8 c) =>
        new(X86.Avx512F.IsSupported ? X86.Avx512F.FusedMultiplyAddNegated(a.value, b.value, c.value) : Vector512.FusedMultiplyAdd(-a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 Sqrt(Doubles8 a) => new(Vector512.Sqrt(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 Abs(Doubles8 a) => new(Vector512.Abs(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 Min(Doubles8 a, Doubles8 b) => new(Vector512.ConditionalSelect(Vector512.LessThan(a.value, b.value), a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 Max(Doubles8 a, Doubles8 b) => new(Vector512.ConditionalSelect(Vector512.GreaterThan(a.value, b.value), a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 IfLess(Doubles8 a, Doubles8 b, Doubles8 then, Doubles8 otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.LessThan(a.value, b.value), then.value, otherwise.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 InverseCubeRootGuess(Doubles8 a)
    {
        var e = a.value.AsUInt64() - Vector512.Create(0x3FF0000000000000UL);
        var third = (e >>> 2) + (e >>> 4) + (e >>> 6) + (e >>> 8) + (e >>> 10) + (e >>> 12);
        return new((Vector512.Create(0x3FEEDC0000000000UL) - third).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 InverseFourthRootGuess(Doubles8 a)
    {
        var e = a.value.AsUInt64() - Vector512.Create(0x3FF0000000000000UL);
        return new((Vector512.Create(0x3FEF060000000000UL) - (e >>> 2)).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 InverseSixthRootGuess(Doubles8 a)
    {
        var e = a.value.AsUInt64() - Vector512.Create(0x3FF0000000000000UL);
        var sixth = (e >>> 3) + (e >>> 5) + (e >>> 7) + (e >>> 9) + (e >>> 11) + (e >>> 13);
        return new((Vector512.Create(0x3FEF200000000000UL) - sixth).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles8 Coarse(Doubles8 a) => new((a.value.AsInt64() & Vector512.Create(-(1L << 46))).AsDouble());

    public static double Lane(in Doubles8 a, int lane) => Unsafe.Add(ref Unsafe.As<Doubles8, double>(ref Unsafe.AsRef(in a)), lane);

    public static void SetLane(ref Doubles8 a, int lane, double value) => Unsafe.Add(ref Unsafe.As<Doubles8, double>(ref a), lane) = value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Any(Doubles8 flag) => Mask(flag) != 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static uint Mask(Doubles8 a) => (uint)Vector512.GreaterThan(a.value, Vector512<double>.Zero).ExtractMostSignificantBits();
}
