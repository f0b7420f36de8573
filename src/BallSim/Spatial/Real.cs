using System.Runtime.CompilerServices;

namespace BallSim.Spatial;

/// <summary>One double as a number type of the equations.</summary>
internal readonly struct Real(double value) : IScalar<Real>, IEquatable<Real>
{
    private readonly double value = value;

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
    public static Real Sqrt(Real a) => new(Math.Sqrt(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Abs(Real a) => new(Math.Abs(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Min(Real a, Real b) => new(a.value < b.value ? a.value : b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Max(Real a, Real b) => new(a.value > b.value ? a.value : b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real IfLess(Real a, Real b, Real then, Real otherwise) => a.value < b.value ? then : otherwise;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real InverseCubeRootGuess(Real a)
    {
        // The bits of a double are, but for a constant, 2^52 log2(a) piecewise linear; a third of them by shifts and adds, as lanes have no integer division.
        var e = BitConverter.DoubleToInt64Bits(a.value) - 0x3FF0000000000000L;
        var third = (e >> 2) + (e >> 4) + (e >> 6) + (e >> 8) + (e >> 10) + (e >> 12);
        return new(BitConverter.Int64BitsToDouble(0x3FEEDC0000000000L - third));
    }

    public bool Equals(Real other) => value.Equals(other.value);
    public override bool Equals(object? obj) => obj is Real other && Equals(other);
    public override int GetHashCode() => value.GetHashCode();
    public override string ToString() => Check.Text(value);
}
