using System.Numerics;

namespace BallSim.Spatial;

/// <summary>
/// The number type of the equations: one double, or a vector of lanes that runs as many shots side by side. A lane type holds exactly one vector.
/// Every implementation performs the same operations in the same order, so that a lane of doubles is bit-equal to the scalar.
/// </summary>
internal interface IReal<T> : IAdditionOperators<T, T, T>, ISubtractionOperators<T, T, T>, IMultiplyOperators<T, T, T>,
    IDivisionOperators<T, T, T>, IUnaryNegationOperators<T, T>
    where T : struct, IReal<T>
{
    /// <summary>The same value in every lane.</summary>
    static abstract implicit operator T(double value);

    /// <summary>A length on the lane, m, that rounding may leave over of a step.</summary>
    static abstract T Sliver { get; }

    /// <summary>Whether a number has the digits of a float, so that series may be shorter.</summary>
    static virtual bool IsSingle => false;

    /// <summary>a b + c with one rounding.</summary>
    static abstract T Fma(T a, T b, T c);

    /// <summary>a b - c with one rounding. Vectors have an instruction for it, and a negation of its own costs them one more.</summary>
    static virtual T Fms(T a, T b, T c) => T.Fma(a, b, -c);

    /// <summary>c - a b with one rounding.</summary>
    static virtual T Fnma(T a, T b, T c) => T.Fma(-a, b, c);

    /// <summary>Correctly rounded square root.</summary>
    static abstract T Sqrt(T a);

    static abstract T Abs(T a);

    /// <summary>The smaller of two numbers; neither may be NaN.</summary>
    static abstract T Min(T a, T b);

    /// <summary>The larger of two numbers; neither may be NaN.</summary>
    static abstract T Max(T a, T b);

    /// <summary>Lane by lane: a &lt; b ? then : otherwise. Both values are computed.</summary>
    static abstract T IfLess(T a, T b, T then, T otherwise);

    /// <summary>Whether a flag (1 or 0) is set in any lane.</summary>
    static abstract bool Any(T flag);

    /// <summary>A first guess of a^(-1/3) for a in [1, 1e30], within 3.7 %, by integer arithmetic on the bits; refined in <see cref="Elementary{T}"/>.</summary>
    static abstract T InverseCubeRootGuess(T a);

    /// <summary>A guess of a^(-1/4) for a in [1, 1e30], within 3.3 %, in the same way.</summary>
    static abstract T InverseFourthRootGuess(T a);

    /// <summary>A guess of a^(-1/6) for a in [1, 1e30], within 4 %, in the same way.</summary>
    static abstract T InverseSixthRootGuess(T a);

    /// <summary>a towards zero to seven binary digits: what came of rounding shows no more.</summary>
    static abstract T Coarse(T a);

    /// <summary>
    /// y + s k for a state that consists of numbers T alone, if this number type has a quicker way than component by component; the result must be the same to the last bit. False: nothing was done.
    /// </summary>
    static virtual bool AddsWhole<TState>(ref TState y, T s, in TState k)
        where TState : struct => false;

    /// <summary>Two terms, in the order given.</summary>
    static virtual bool AddsWhole<TState>(ref TState y, T s1, in TState k1, T s2, in TState k2)
        where TState : struct => false;

    /// <summary>Three terms, in the order given.</summary>
    static virtual bool AddsWhole<TState>(ref TState y, T s1, in TState k1, T s2, in TState k2, T s3, in TState k3)
        where TState : struct => false;

    /// <summary>Work on these five numbers at four places side by side, if this number type is one double and the processor has lanes for it. False: nothing was done.</summary>
    static virtual bool DoesFour<TWork>(T a, T b, T c, T d, T e, ref TWork work)
        where TWork : struct, IFourfold => false;

    /// <summary>
    /// y = start + (h c1) k[0] + (h c2) k[1] + ... for the first so many of up to five states that stand one behind the other, in this order and each with one rounding; else as <see cref="AddsWhole{TState}(ref TState, T, in TState)"/>. Of a state
    /// its first so many numbers at least; the others stay what they are, or not.
    /// </summary>
    static virtual bool SumsWhole<TState>(ref TState y, in TState start, in TState k, int count, int numbers, in T h, double c1, double c2, double c3, double c4, double c5)
        where TState : struct => false;

    /// <summary>
    /// Writes four numbers that lie one behind the other, if this number type reads them together, as <see cref="AddsWhole{TState}(ref TState, T, in TState)"/> does: a processor hands on what was written whole; what was written in parts it must first bring to the
    /// cache before it reads the whole. False: nothing was done.
    /// </summary>
    static virtual bool SetsFour(ref T first, T a, T b, T c, T d) => false;
}
