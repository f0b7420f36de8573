using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using X86 = System.Runtime.Intrinsics.X86;

namespace BallSim.Spatial;

/// <summary>Sixteen floats side by side: one AVX-512 vector.</summary>
internal readonly struct Floats16(Vector512<float> value) : ILanes<Floats16>
{
    private readonly Vector512<float> value = value;

    public static int Count => 16;

    public static Floats16 Sliver => 1e-5;

    public static bool IsSingle => true;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Floats16(double value) => new(Vector512.Create((float)value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 operator +(Floats16 a, Floats16 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 operator -(Floats16 a, Floats16 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 operator *(Floats16 a, Floats16 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 operator /(Floats16 a, Floats16 b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 operator -(Floats16 a) => new(-a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 Fma(Floats16 a, Floats16 b, Floats16 c) => new(Vector512.FusedMultiplyAdd(a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 Fms(Floats16 a, Floats16 b, Floats16 c) =>
        new(X86.Avx512F.IsSupported ? X86.Avx512F.FusedMultiplySubtract(a.value, b.value, c.value) : Vector512.FusedMultiplyAdd(a.value, b.value, -c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 Fnma(Floats16 a, Floats16 b, Floats16 c) =>
        new(X86.Avx512F.IsSupported ? X86.Avx512F.FusedMultiplyAddNegated(a.value, b.value, c.value) : Vector512.FusedMultiplyAdd(-a.value, b.value, c.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 Sqrt(Floats16 a) => new(Vector512.Sqrt(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 Abs(Floats16 a) => new(Vector512.Abs(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 Min(Floats16 a, Floats16 b) => new(Vector512.ConditionalSelect(Vector512.LessThan(a.value, b.value), a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 Max(Floats16 a, Floats16 b) => new(Vector512.ConditionalSelect(Vector512.GreaterThan(a.value, b.value), a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 IfLess(Floats16 a, Floats16 b, Floats16 then, Floats16 otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.LessThan(a.value, b.value), then.value, otherwise.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 InverseCubeRootGuess(Floats16 a)
    {
        var e = a.value.AsUInt32() - Vector512.Create(0x3F800000U);
        var third = (e >>> 2) + (e >>> 4) + (e >>> 6) + (e >>> 8) + (e >>> 10) + (e >>> 12);
        return new((Vector512.Create(0x3F76E000U) - third).AsSingle());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 InverseFourthRootGuess(Floats16 a)
    {
        var e = a.value.AsUInt32() - Vector512.Create(0x3F800000U);
        return new((Vector512.Create(0x3F783000U) - (e >>> 2)).AsSingle());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 InverseSixthRootGuess(Floats16 a)
    {
        var e = a.value.AsUInt32() - Vector512.Create(0x3F800000U);
        var sixth = (e >>> 3) + (e >>> 5) + (e >>> 7) + (e >>> 9) + (e >>> 11) + (e >>> 13);
        return new((Vector512.Create(0x3F790000U) - sixth).AsSingle());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Floats16 Coarse(Floats16 a) => new((a.value.AsInt32() & Vector512.Create(-(1 << 17))).AsSingle());

    public static double Lane(in Floats16 a, int lane) => Unsafe.Add(ref Unsafe.As<Floats16, float>(ref Unsafe.AsRef(in a)), lane);

    public static void SetLane(ref Floats16 a, int lane, double value) => Unsafe.Add(ref Unsafe.As<Floats16, float>(ref a), lane) = (float)value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Any(Floats16 flag) => Mask(flag) != 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static uint Mask(Floats16 a) => (uint)Vector512.GreaterThan(a.value, Vector512<float>.Zero).ExtractMostSignificantBits();
}
