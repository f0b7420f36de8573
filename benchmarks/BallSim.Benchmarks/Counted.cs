using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Benchmarks;

/// <summary>
/// A double that counts what is done with it: an addition, multiplication, division or root is one operation, a fused multiply-add two; signs, comparisons and choices are none. In the equations it tells how many
/// operations a shot takes.
/// </summary>
internal readonly struct Counted(double value) : IScalar<Counted>, IEquatable<Counted>
{
    private readonly double value = value;

    /// <summary>Operations so far, on this thread.</summary>
    [ThreadStatic]
    internal static long Operations;

    public static Counted Sliver => 1e-9;

    public static implicit operator Counted(double value) => new(value);

    static explicit IScalar<Counted>.operator double(Counted a) => a.value;

    public static Counted operator +(Counted a, Counted b) => Done(1, a.value + b.value);
    public static Counted operator -(Counted a, Counted b) => Done(1, a.value - b.value);
    public static Counted operator *(Counted a, Counted b) => Done(1, a.value * b.value);
    public static Counted operator /(Counted a, Counted b) => Done(1, a.value / b.value);
    public static Counted operator -(Counted a) => -a.value;
    public static bool operator <(Counted a, Counted b) => a.value < b.value;
    public static bool operator >(Counted a, Counted b) => a.value > b.value;
    public static bool operator <=(Counted a, Counted b) => a.value <= b.value;
    public static bool operator >=(Counted a, Counted b) => a.value >= b.value;
    public static bool operator ==(Counted a, Counted b) => a.value == b.value;
    public static bool operator !=(Counted a, Counted b) => a.value != b.value;

    public static Counted Fma(Counted a, Counted b, Counted c) => Done(2, Math.FusedMultiplyAdd(a.value, b.value, c.value));

    public static Counted Sqrt(Counted a) => Done(1, Math.Sqrt(a.value));

    public static Counted Abs(Counted a) => Math.Abs(a.value);

    public static Counted Min(Counted a, Counted b) => a.value < b.value ? a : b;

    public static Counted Max(Counted a, Counted b) => a.value > b.value ? a : b;

    public static Counted IfLess(Counted a, Counted b, Counted then, Counted otherwise) => a.value < b.value ? then : otherwise;

    public static bool Any(Counted flag) => flag.value > 0;

    public static Counted InverseCubeRootGuess(Counted a) => (double)Real.InverseCubeRootGuess(a.value);

    public static Counted InverseFourthRootGuess(Counted a) => (double)Real.InverseFourthRootGuess(a.value);

    public static Counted InverseSixthRootGuess(Counted a) => (double)Real.InverseSixthRootGuess(a.value);

    public static Counted Coarse(Counted a) => (double)Real.Coarse(a.value);

    /// <summary>As the numbers that run do it: of a stage the numbers that it needs.</summary>
    public static bool SumsWhole<TState>(ref TState y, in TState start, in TState k, int count, int numbers, in Counted h, double c1, double c2, double c3, double c4, double c5)
        where TState : struct
    {
        var n = Unsafe.SizeOf<TState>() / Unsafe.SizeOf<Counted>();
        ref var to = ref Unsafe.As<TState, Counted>(ref y);
        ref var from = ref Unsafe.As<TState, Counted>(ref Unsafe.AsRef(in start));
        ref var slopes = ref Unsafe.As<TState, Counted>(ref Unsafe.AsRef(in k));
        Span<Counted> factors = [c1, c2, c3, c4, c5];
        for (var j = 0; j < count; j++)
        {
            factors[j] = h * factors[j];
        }
        for (var i = 0; i < Math.Min(numbers, n); i++)
        {
            var sum = Unsafe.Add(ref from, i);
            for (var j = 0; j < count; j++)
            {
                sum = Fma(factors[j], Unsafe.Add(ref slopes, (j * n) + i), sum);
            }
            Unsafe.Add(ref to, i) = sum;
        }
        return true;
    }

    public bool Equals(Counted other) => value.Equals(other.value);

    public override bool Equals(object? obj) => obj is Counted other && Equals(other);

    public override int GetHashCode() => value.GetHashCode();

    /// <summary>The number, after so many operations.</summary>
    internal static Counted Done(int operations, double result)
    {
        Operations += operations;
        return result;
    }

    /// <summary>The number.</summary>
    internal double Value => value;
}
