using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// How the demand of rolling swings inside a step: what it asks beyond the limit of grip, N, at the three stages that stand apart between the ends; with oil on the cover, no less than that. A stage is good to second order, which is enough to
/// tell where a closer look is worth it.
/// </summary>
internal struct Swing<T>
    where T : struct, IReal<T>
{
    // What a stage is off by, as a part of the limit; what the curve leaves out, and its tops between the places at which it is asked, as a part of how far it swings: so near, it may pass.
    private const double Near = 0.002, NearOfSwing = 0.02;

    public T Third, Fourth, Fifth;

    /// <summary>Flag: it may pass zero inside the step, or does at its end; with what it comes to at both ends, and the limit of grip.</summary>
    public readonly T MayPass(T start, T end, T limit)
    {
        T one = 1.0, zero = 0.0;
        var high = T.Max(Third, T.Max(Fourth, Fifth));
        var swing = T.Max(high, T.Max(start, end)) - T.Min(T.Min(Third, T.Min(Fourth, Fifth)), T.Min(start, end));
        var near = -T.Fma(swing, NearOfSwing, limit * Near);
        Along(start, end, out var along);
        var early = T.Max(T.Max(along.At(0.12), along.At(0.32)), along.At(0.5));
        var late = T.Max(T.Max(along.At(0.6), along.At(0.7)), along.At(0.9));
        var top = T.Max(high, T.Max(early, late));
        // A top close behind the start, or close before the end.
        top = T.IfLess(zero, along.C1, T.Max(top, start), top);
        top = T.IfLess(along.SlopeAtEnd, zero, T.Max(top, end), top);
        return T.IfLess(top, near, T.IfLess(zero, end, one, zero), one);
    }

    /// <summary>The curve through all five.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Along(T start, T end, out Quartic<T> curve) => Quartic<T>.Along(start, Third, Fourth, Fifth, end, out curve);
}
