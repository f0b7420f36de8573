using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using X86 = System.Runtime.Intrinsics.X86;

namespace BallSim.Spatial;

/// <summary>Eight floats side by side: one AVX2 vector.</summary>
internal readonly struct Floats8(Vector256<float> value) : ILanes<Floats8>
{
    private readonly Vector256<float> value = value;

    public static int Count => 8;

    public static Floats8 Sliver => 1e-5;

    public static bool IsSingle => true;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Floats8(double value) => new(Vector256.Create((float)value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 operator +(Floats8 a, Floats8 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 operator -(Floats8 a, Floats8 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 operator *(Floats8 a, Floats8 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 operator /(Floats8 a, Floats8 b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 operator -(Floats8 a) => new(-a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 Fma(Floats8 a, Floats8 b, Floats8 c) => new(Vector256.FusedMultiplyAdd(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 Fms(Floats8 a, Floats8 b, Floats8 c) =>
        new(X86.Fma.IsSupported ? X86.Fma.MultiplySubtract(a.value, b.value, c.value) : Vector256.FusedMultiplyAdd(a.value, b.value, -c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 Fnma(Floats8 a, Floats8 b, Floats8 c) =>
        new(X86.Fma.IsSupported ? X86.Fma.MultiplyAddNegated(a.value, b.value, c.value) : Vector256.FusedMultiplyAdd(-a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 Sqrt(Floats8 a) => new(Vector256.Sqrt(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 Abs(Floats8 a) => new(Vector256.Abs(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 Min(Floats8 a, Floats8 b) => new(Vector256.ConditionalSelect(Vector256.LessThan(a.value, b.value), a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 Max(Floats8 a, Floats8 b) => new(Vector256.ConditionalSelect(Vector256.GreaterThan(a.value, b.value), a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 IfLess(Floats8 a, Floats8 b, Floats8 then, Floats8 otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.LessThan(a.value, b.value), then.value, otherwise.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 InverseCubeRootGuess(Floats8 a)
    {
        var e = a.value.AsUInt32() - Vector256.Create(0x3F800000U);
        var third = (e >>> 2) + (e >>> 4) + (e >>> 6) + (e >>> 8) + (e >>> 10) + (e >>> 12);
        return new((Vector256.Create(0x3F76E000U) - third).AsSingle());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 InverseFourthRootGuess(Floats8 a)
    {
        var e = a.value.AsUInt32() - Vector256.Create(0x3F800000U);
        return new((Vector256.Create(0x3F783000U) - (e >>> 2)).AsSingle());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 InverseSixthRootGuess(Floats8 a)
    {
        var e = a.value.AsUInt32() - Vector256.Create(0x3F800000U);
        var sixth = (e >>> 3) + (e >>> 5) + (e >>> 7) + (e >>> 9) + (e >>> 11) + (e >>> 13);
        return new((Vector256.Create(0x3F790000U) - sixth).AsSingle());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats8 Coarse(Floats8 a) => new((a.value.AsInt32() & Vector256.Create(-(1 << 17))).AsSingle());

    public static double Lane(in Floats8 a, int lane) => Unsafe.Add(ref Unsafe.As<Floats8, float>(ref Unsafe.AsRef(in a)), lane);

    public static void SetLane(ref Floats8 a, int lane, double value) => Unsafe.Add(ref Unsafe.As<Floats8, float>(ref a), lane) = (float)value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Any(Floats8 flag) => Mask(flag) != 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static uint Mask(Floats8 a) => (uint)Vector256.GreaterThan(a.value, Vector256<float>.Zero).ExtractMostSignificantBits();
}
