using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace BallSim.Spatial;

/// <summary>
/// A number with its partial derivatives by up to twelve parameters: the equations, run with it, yield their own sensitivities. The value goes through the same operations in the same order as <see cref="Real"/> does, and
/// decisions are taken on the value alone, so that a run with it takes the very steps of the run without.
/// </summary>
/// <remarks>Forward differentiation, (a, a') (b, b') = (a b, a b' + b a'). Where √ has no derivative, at zero, the partials count as zero: the equations ask there only for products that vanish. Guesses that merely choose
/// a step have none.</remarks>
internal readonly struct Dual : IScalar<Dual>, IEquatable<Dual>
{
    /// <summary>How many parameters a number knows.</summary>
    public const int Slots = 12;

    // Four fields, each of one register: more, and the compiler would keep the number in memory.
    private readonly double value;
    private readonly Vector256<double> p, q, r;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Dual(double value, Vector256<double> p, Vector256<double> q, Vector256<double> r)
    {
        this.value = value;
        (this.p, this.q, this.r) = (p, q, r);
    }

    /// <summary>The parameter of a slot itself: its derivative by itself is one.</summary>
    public static Dual Variable(double value, int slot)
    {
        Vector256<double> p = default, q = default, r = default;
        var one = Vector256.CreateScalar(1.0).WithElement(0, 0.0).WithElement(slot % 4, 1.0);
        switch (slot / 4)
        {
            case 0:
                p = one;
                break;
            case 1:
                q = one;
                break;
            default:
                r = one;
                break;
        }
        return new(value, p, q, r);
    }

    /// <summary>A function of this number, from its value and its derivative here.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Dual Chain(double result, double slope) => new(result, slope * p, slope * q, slope * r);

    /// <summary>A function of two numbers, from its value and its derivatives.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual Chain(double result, double byA, Dual a, double byB, Dual b) =>
        new(result, byA * a.p + byB * b.p, byA * a.q + byB * b.q, byA * a.r + byB * b.r);

    /// <summary>The derivative by the parameter of a slot.</summary>
    public double Partial(int slot) => slot < 4 ? p[slot] : slot < 8 ? q[slot - 4] : r[slot - 8];

    public static Dual Sliver => Real.Sliver;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Dual(double value) => new(value, default, default, default);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Dual(Real value) => new(value, default, default, default);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static explicit operator double(Dual a) => a.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual operator +(Dual a, Dual b) => new(a.value + b.value, a.p + b.p, a.q + b.q, a.r + b.r);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual operator -(Dual a, Dual b) => new(a.value - b.value, a.p - b.p, a.q - b.q, a.r - b.r);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual operator *(Dual a, Dual b)
    {
        Vector256<double> x = Vector256.Create(a.value), y = Vector256.Create(b.value);
        return new(a.value * b.value, Join(x, b.p, y * a.p), Join(x, b.q, y * a.q), Join(x, b.r, y * a.r));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual operator /(Dual a, Dual b)
    {
        var quotient = a.value / b.value;
        Vector256<double> x = Vector256.Create(1 / b.value), y = Vector256.Create(-quotient);
        return new(quotient, x * Join(y, b.p, a.p), x * Join(y, b.q, a.q), x * Join(y, b.r, a.r));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual operator -(Dual a) => new(-a.value, -a.p, -a.q, -a.r);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool operator <(Dual a, Dual b) => a.value < b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool operator >(Dual a, Dual b) => a.value > b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool operator <=(Dual a, Dual b) => a.value <= b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool operator >=(Dual a, Dual b) => a.value >= b.value;

    public static bool operator ==(Dual a, Dual b) => a.value == b.value;

    public static bool operator !=(Dual a, Dual b) => a.value != b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual Fma(Dual a, Dual b, Dual c)
    {
        Vector256<double> x = Vector256.Create(a.value), y = Vector256.Create(b.value);
        return new(Math.FusedMultiplyAdd(a.value, b.value, c.value), Join(x, b.p, Join(y, a.p, c.p)), Join(x, b.q, Join(y, a.q, c.q)), Join(x, b.r, Join(y, a.r, c.r)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual Sqrt(Dual a)
    {
        var root = Math.Sqrt(a.value);
        return a.Chain(root, root > 0 ? 0.5 / root : 0);
    }

    public static Dual Abs(Dual a) => a.value < 0 ? -a : a;

    public static Dual Min(Dual a, Dual b) => a.value < b.value ? a : b;

    public static Dual Max(Dual a, Dual b) => a.value > b.value ? a : b;

    public static Dual IfLess(Dual a, Dual b, Dual then, Dual otherwise) => a.value < b.value ? then : otherwise;

    public static bool Any(Dual flag) => flag.value > 0;

    public static Dual InverseCubeRootGuess(Dual a)
    {
        double guess = Real.InverseCubeRootGuess(a.value);
        return a.Chain(guess, -guess / (3 * a.value));
    }

    public static Dual InverseFourthRootGuess(Dual a)
    {
        double guess = Real.InverseFourthRootGuess(a.value);
        return a.Chain(guess, -guess / (4 * a.value));
    }

    // It chooses steps, and a step may be of any length.
    public static Dual InverseSixthRootGuess(Dual a) => (double)Real.InverseSixthRootGuess(a.value);

    public static Dual Coarse(Dual a) => (double)Real.Coarse(a.value);

    public static Dual Sin(Dual a) => a.Chain(Math.Sin(a.value), Math.Cos(a.value));

    public static Dual Cos(Dual a) => a.Chain(Math.Cos(a.value), -Math.Sin(a.value));

    public bool Equals(Dual other) => value.Equals(other.value) && p.Equals(other.p) && q.Equals(other.q) && r.Equals(other.r);

    public override bool Equals(object? obj) => obj is Dual other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(value, p, q, r);

    public override string ToString() => Check.Text(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Join(Vector256<double> a, Vector256<double> b, Vector256<double> c) => Vector256.FusedMultiplyAdd(a, b, c);
}
