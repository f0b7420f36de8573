using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Where inside a step of rolling the contact is asked for more than it can hold, for every driver. Each look at the contact stands in as few places as can be: a card's kernel holds a copy of it for each.</summary>
internal static class Excess<T, TSurface>
    where T : struct, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    /// <summary>The first quarter of a step in which the demand passes the limit; where it only comes near, tops between the looks are tried as well.</summary>
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
            var slope = now - older;
            var curvature = now - 2 * before + older;
            if (i > 1 && curvature < 0 && Math.Abs(slope) <= -2.6 * curvature && before - slope * slope / (8 * curvature) > -0.02 * (double)end.Limit)
            {
                // The top of the parabola through three looks, which may lie a little beyond them, then of the one through the look there and its neighbours.
                double left = i - 2, right = i, atLeft = older, atRight = now, place = i - 1, at = before, top = Math.Max(i - 1.9, Math.Min(i - 0.1, i - 1 - slope / (2 * curvature)));
                for (var tries = 0; tries < 2 && top > left && top < right; tries++)
                {
                    var there = Inside(ref roll, step, h, top / 4);
                    if (there > 0)
                    {
                        (low, high) = ((i - 2) / 4.0, top / 4);
                        return true;
                    }
                    (left, atLeft, right, atRight) = top > place ? (place, at, right, atRight) : (left, atLeft, place, at);
                    (place, at) = (top, there);
                    var rise = (at - atLeft) / (place - left);
                    var bend = ((atRight - at) / (right - place) - rise) / (right - left);
                    top = 0.5 * (left + place) - rise / (2 * bend);
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
