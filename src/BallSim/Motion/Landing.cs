using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Where a step reaches an end of the run, for every driver.</summary>
internal static class Landing<T>
    where T : struct, IScalar<T>, IReal<T>
{
    /// <summary>Times a step is taken again, at most, until it ends where the run does.</summary>
    public const int MostTries = 4;

    /// <summary>The first end that a step just taken reaches, and at which part of the step; the step itself ends there if that is 1 or more.</summary>
    public static Ending First(ref Step<State<T>> step, T h, in Bounds<T> bounds, out double firstθ)
    {
        var first = Ending.None;
        firstθ = 2.0;
        if (!(Pace<T>.MayEnd(step, bounds) > 0.0))
        {
            return first;
        }
        for (var ending = Ending.HeadPin; ending <= Ending.TimeLimit; ending++)
        {
            var high = 1.0;
            if (!(Beyond(ending, step.End, bounds) >= 0))
            {
                // The pin may be grazed, or the edge passed, between the ends of a step.
                if (ending is not (Ending.Gutter or Ending.HeadPin) || !(Beyond(ending, step.End, bounds) > -Pace<T>.Graze))
                {
                    continue;
                }
                high = Root.Peak(new EndingAlong(ending, h, bounds), ref step);
                if (!(Beyond(ending, Dense<State<T>, T>.Between(step, h, high), bounds) >= 0))
                {
                    continue;
                }
            }
            var θ = Beyond(ending, step.Start, bounds) >= 0 ? 0 : Root.Crossing(0, high, new EndingAlong(ending, h, bounds), ref step);
            if (θ < firstθ)
            {
                (first, firstθ) = (ending, θ);
            }
        }
        return first;
    }

    /// <summary>Whether a step taken again is short enough of the end that it is meant for; if not, h is set to the length to try next. What is recorded is the step as it was taken last.</summary>
    public static bool IsAt(Ending ending, ref Step<State<T>> step, ref T h, in Bounds<T> bounds, int tries)
    {
        var g = Beyond(ending, step.End, bounds);
        var slope = (g - Beyond(ending, Dense<State<T>, T>.Between(step, h, 1 - 1e-3), bounds)) / 1e-3;
        var correction = slope > 0 ? g / slope : 0;
        if (Math.Abs(g) < 1e-13 || Math.Abs(correction) > 0.1 || tries >= MostTries)
        {
            return true;
        }
        h = h * (1 - correction);
        return false;
    }

    // Positive once the ending has come.
    private static double Beyond(Ending ending, in State<T> at, in Bounds<T> bounds)
    {
        switch (ending)
        {
            case Ending.Gutter:
                return (double)(T.Abs(at.X) - bounds.HalfWidth);
            case Ending.HeadPin:
                var away = at.Y - bounds.PinsAt;
                return (double)(bounds.TouchDistance - T.Sqrt(T.Fma(at.X, at.X, away * away)));
            case Ending.PassedPins:
                // A step that ends on the pins' line may end a rounding error short of it.
                return (double)(at.Y - bounds.PinsAt) + 1e-12;
            case Ending.FoulLine:
                return (double)(bounds.BackAt - at.Y);
            default:
                return (double)(at.Time - bounds.MaxTime);
        }
    }

    private readonly struct EndingAlong(Ending ending, T h, Bounds<T> bounds) : IAlong<Step<State<T>>>
    {
        private readonly Bounds<T> bounds = bounds;

        public double At(double θ, ref Step<State<T>> step) => Beyond(ending, θ >= 1 ? step.End : Dense<State<T>, T>.Between(step, h, θ), bounds);
    }
}
