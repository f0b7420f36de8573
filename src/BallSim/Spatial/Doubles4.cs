using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using X86 = System.Runtime.Intrinsics.X86;

namespace BallSim.Spatial;

/// <summary>Four doubles side by side: one AVX2 vector.</summary>
internal readonly struct Doubles4(Vector256<double> value) : ILanes<Doubles4>
{
    private readonly Vector256<double> value = value;

    public static int Count => 4;

    /// <summary>From the first lane to the last.</summary>
    public double Sum
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => value.GetElement(0) + value.GetElement(1) + value.GetElement(2) + value.GetElement(3);
    }

    public static Doubles4 Sliver => 1e-9;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Doubles4(double value) => new(Vector256.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 Of(double a, double b, double c, double d) => new(Vector256.Create(a, b, c, d));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 operator +(Doubles4 a, Doubles4 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 operator -(Doubles4 a, Doubles4 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 operator *(Doubles4 a, Doubles4 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 operator /(Doubles4 a, Doubles4 b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 operator -(Doubles4 a) => new(-a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 Fma(Doubles4 a, Doubles4 b, Doubles4 c) => new(Vector256.FusedMultiplyAdd(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 Fms(Doubles4 a, Doubles4 b, Doubles4 c) =>
        new(X86.Fma.IsSupported ? X86.Fma.MultiplySubtract(a.value, b.value, c.value) : Vector256.FusedMultiplyAdd(a.value, b.value, -c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 Fnma(Doubles4 a, Doubles4 b, Doubles4 c) =>
        new(X86.Fma.IsSupported ? X86.Fma.MultiplyAddNegated(a.value, b.value, c.value) : Vector256.FusedMultiplyAdd(-a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 Sqrt(Doubles4 a) => new(Vector256.Sqrt(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 Abs(Doubles4 a) => new(Vector256.Abs(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 Min(Doubles4 a, Doubles4 b) => new(Vector256.ConditionalSelect(Vector256.LessThan(a.value, b.value), a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 Max(Doubles4 a, Doubles4 b) => new(Vector256.ConditionalSelect(Vector256.GreaterThan(a.value, b.value), a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 IfLess(Doubles4 a, Doubles4 b, Doubles4 then, Doubles4 otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.LessThan(a.value, b.value), then.value, otherwise.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 InverseCubeRootGuess(Doubles4 a)
    {
        var e = a.value.AsUInt64() - Vector256.Create(0x3FF0000000000000UL);
        var third = (e >>> 2) + (e >>> 4) + (e >>> 6) + (e >>> 8) + (e >>> 10) + (e >>> 12);
        return new((Vector256.Create(0x3FEEDC0000000000UL) - third).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 InverseFourthRootGuess(Doubles4 a)
    {
        var e = a.value.AsUInt64() - Vector256.Create(0x3FF0000000000000UL);
        return new((Vector256.Create(0x3FEF060000000000UL) - (e >>> 2)).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 InverseSixthRootGuess(Doubles4 a)
    {
        var e = a.value.AsUInt64() - Vector256.Create(0x3FF0000000000000UL);
        var sixth = (e >>> 3) + (e >>> 5) + (e >>> 7) + (e >>> 9) + (e >>> 11) + (e >>> 13);
        return new((Vector256.Create(0x3FEF200000000000UL) - sixth).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Doubles4 Coarse(Doubles4 a) => new((a.value.AsInt64() & Vector256.Create(-(1L << 46))).AsDouble());

    public static double Lane(in Doubles4 a, int lane) => Unsafe.Add(ref Unsafe.As<Doubles4, double>(ref Unsafe.AsRef(in a)), lane);

    public static void SetLane(ref Doubles4 a, int lane, double value) => Unsafe.Add(ref Unsafe.As<Doubles4, double>(ref a), lane) = value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Any(Doubles4 flag) => Mask(flag) != 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static uint Mask(Doubles4 a) => (uint)Vector256.GreaterThan(a.value, Vector256<double>.Zero).ExtractMostSignificantBits();
}
