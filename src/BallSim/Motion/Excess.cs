using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Where inside a step of rolling the contact is asked for more than it can hold, for every driver. Each look at the contact stands in as few places as can be: a card's kernel holds a copy of it for each.</summary>
internal static class Excess<T, TSurface>
    where T : struct, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    /// <summary>The first quarter of a step in which the demand passes the limit; where it only comes near, the top of the parabola through its neighbours is tried as well.</summary>
    public static bool First(ref Roll<T, TSurface> roll, in Step<State<T>> step, T h, in Grip<T> start, in Grip<T> end, out double low, out double high)
    {
        (low, high) = (0, 1);
        if (!(Pace<T>.MaySlip(start.Excess, end.Excess, end.Limit) > 0.0))
        {
            return false;
        }
        double first = 0, middle = 0, third = 0;
        for (var i = 0; i < 3; i++)
        {
            var excess = Inside(ref roll, step, h, i == 0 ? 0.5 : i == 1 ? 0.25 : 0.75);
            (first, middle, third) = (i == 1 ? excess : first, i == 0 ? excess : middle, i == 2 ? excess : third);
            if (i == 0 && !(Pace<T>.MaySlip(start.Excess, middle, end.Excess, end.Limit) > 0.0))
            {
                return false;
            }
        }
        double older = 0, before = (double)start.Excess;
        for (var i = 1; i <= 4; i++)
        {
            var now = i == 1 ? first : i == 2 ? middle : i == 3 ? third : (double)end.Excess;
            if (now > 0)
            {
                (low, high) = ((i - 1) / 4.0, i / 4.0);
                return true;
            }
            if (i > 1 && before > older && before >= now)
            {
                var slope = now - older;
                var curvature = now - 2 * before + older;
                var top = (i - 1 - slope / (2 * curvature)) / 4;
                if (before - slope * slope / (8 * curvature) > -0.02 * (double)end.Limit && Inside(ref roll, step, h, top) > 0)
                {
                    (low, high) = ((i - 2) / 4.0, top);
                    return true;
                }
            }
            (older, before) = (before, now);
        }
        return false;
    }

    /// <summary>Shortens a step just taken so that it ends where the demand reaches the limit between two fractions of it.</summary>
    public static void Land(ref Roll<T, TSurface> roll, ref Step<State<T>> step, ref T h, in Grip<T> start, ref Grip<T> end, double low, double high)
    {
        h = h * Root.Crossing(low, high, new Along(step, h), ref roll);
        for (var i = 0; ; i++)
        {
            roll.Take(ref step, h, out _);
            roll.Arrive(ref step, start, out end);
            if (i == 3)
            {
                return;
            }
            var g = (double)end.Excess;
            var slope = (g - Inside(ref roll, step, h, 1 - 1e-3)) / (1e-3 * (double)h);
            var correction = slope > 0 ? g / slope : 0;
            if (Math.Abs(correction) < 1e-13 || Math.Abs(correction) > 0.1 * Math.Abs((double)h))
            {
                return;
            }
            h = (double)h - correction;
        }
    }

    // Force that rolling asks beyond the limit of grip, N.
    private static double Inside(ref Roll<T, TSurface> roll, in Step<State<T>> step, T h, double θ)
    {
        roll.Look(Dense<State<T>, T>.Between(step, h, θ), out var g);
        return (double)g.Excess;
    }

    private readonly struct Along(Step<State<T>> step, T h) : IAlong<Roll<T, TSurface>>
    {
        private readonly Step<State<T>> step = step;

        public double At(double θ, ref Roll<T, TSurface> roll)
        {
            roll.Look(θ >= 1 ? step.End : Dense<State<T>, T>.Between(step, h, θ), out var g);
            return (double)g.Excess;
        }
    }
}
