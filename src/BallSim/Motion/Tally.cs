using System.Runtime.CompilerServices;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// What an ensemble keeps of a shot's way, in numbers alone: the farthest point towards the bowler's own gutter, the first start of roll, how often the ball slipped again. Kept step by step, for one shot or for lanes.
/// </summary>
internal struct Tally<T> : IRecorder<T>
    where T : struct, IReal<T>
{
    // The turning point inside a step: the half in which it is, halved so often, then so many steps of Newton's within what is left. There the velocity, which swings with an offset ball, is all but a straight line.
    private const int Halvings = 10, Steps = 3;

    /// <summary>+1 for the right hand, -1 for the left.</summary>
    public T Hand;

    /// <summary>Hand times the farthest x of a turning point or of the start; its place and time.</summary>
    public T Reach, BreakY, BreakTime;

    /// <summary>Flag: the farthest point so far is a turning point, not the start.</summary>
    public T Turned;

    /// <summary>Place and time of the first start of roll; not set before.</summary>
    public T RollX, RollY, RollTime;

    /// <summary>Flag; number.</summary>
    public T Rolled, SlippedAgain;

    public Tally(T hand, T x)
    {
        Hand = hand;
        Reach = hand * x;
    }

    public void Took(Phase phase, in Step<State<T>> step, T h, Quat<T> start) => Took(step, h, 1.0);

    /// <summary>Counts a step in the lanes whose flag is set.</summary>
    public void Took(in Step<State<T>> step, T h, T taken)
    {
        T zero = 0.0, half = 0.5, one = 1.0;
        Dense<State<T>, T>.Coefficients(step.Interpolant, h, step.Start.X, step.End.X, step.K1.X, step.K3.X, step.K4.X, step.K5.X, step.K6.X, step.K7.X, out var x1, out var x2, out var x3, out var x4);
        var (first, middle, last) = (Hand * x1, Hand * Slope(half, x1, x2, x3, x4), Hand * Slope(one, x1, x2, x3, x4));
        // Outward and then inward. Halves, because an offset ball's velocity swings.
        var inFirst = T.IfLess(zero, first, T.IfLess(zero, middle, zero, taken), zero);
        var inSecond = T.IfLess(zero, middle, T.IfLess(zero, last, zero, taken), zero);
        if (T.Any(T.Max(inFirst, inSecond)))
        {
            Turns(step, h, inFirst, inSecond, x1, x2, x3, x4);
        }
    }

    // Where in a step it turns, in the lanes in whose first or second half it does. Apart, since most steps do not come here.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Turns(in Step<State<T>> step, T h, T inFirst, T inSecond, T x1, T x2, T x3, T x4)
    {
        T zero = 0.0, half = 0.5, one = 1.0;
        Dense<State<T>, T>.Coefficients(step.Interpolant, h, step.Start.Y, step.End.Y, step.K1.Y, step.K3.Y, step.K4.Y, step.K5.Y, step.K6.Y, step.K7.Y, out var y1, out var y2, out var y3, out var y4);
        Dense<State<T>, T>.Coefficients(step.Interpolant, h, step.Start.Time, step.End.Time, step.K1.Time, step.K3.Time, step.K4.Time, step.K5.Time, step.K6.Time, step.K7.Time, out var t1, out var t2, out var t3, out var t4);
        T u1 = Hand * x1, u2 = Hand * x2, u3 = Hand * x3, u4 = Hand * x4;
        // Outward and then inward it turns in one of the halves at most.
        T turns = T.Max(inFirst, inSecond), low = T.IfLess(zero, inFirst, zero, half), rest = half;
        for (var i = 0; i < Halvings; i++)
        {
            rest = half * rest;
            var θ = low + rest;
            low = T.IfLess(zero, Slope(θ, u1, u2, u3, u4), θ, low);
        }
        var (least, high) = (low, low + rest);
        for (var i = 0; i < Steps; i++)
        {
            var more = Slope(high, u1, u2, u3, u4) / Bend(high, u2, u3, u4);
            high = T.Max(T.Min(high - more, least + rest), least);
        }
        var reach = Hand * Value(high, step.Start.X, x1, x2, x3, x4);
        var better = T.IfLess(Reach, reach, turns, zero);
        Reach = T.IfLess(zero, better, reach, Reach);
        BreakY = T.IfLess(zero, better, Value(high, step.Start.Y, y1, y2, y3, y4), BreakY);
        BreakTime = T.IfLess(zero, better, Value(high, step.Start.Time, t1, t2, t3, t4), BreakTime);
        Turned = T.IfLess(zero, better, one, Turned);
    }

    public void Changed(Phase from, Phase to, in State<T> at, Quat<T> start)
    {
        T zero = 0.0, one = 1.0;
        if (to == Phase.Roll)
        {
            RollX = T.IfLess(zero, Rolled, RollX, at.X);
            RollY = T.IfLess(zero, Rolled, RollY, at.Y);
            RollTime = T.IfLess(zero, Rolled, RollTime, at.Time);
            Rolled = one;
        }
        else if (from == Phase.Roll)
        {
            SlippedAgain = SlippedAgain + one;
        }
    }

    private static T Slope(T θ, T c1, T c2, T c3, T c4) => T.Fma(T.Fma(T.Fma(4.0 * c4, θ, 3.0 * c3), θ, 2.0 * c2), θ, c1);

    private static T Bend(T θ, T c2, T c3, T c4) => T.Fma(T.Fma(12.0 * c4, θ, 6.0 * c3), θ, 2.0 * c2);

    private static T Value(T θ, T c0, T c1, T c2, T c3, T c4) => T.Fma(T.Fma(T.Fma(T.Fma(c4, θ, c3), θ, c2), θ, c1), θ, c0);
}
