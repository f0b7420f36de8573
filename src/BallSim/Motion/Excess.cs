using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Where inside a step of rolling the contact is asked for more than it can hold, for every driver. Each look at the contact stands in as few places as can be: a card's kernel holds a copy of it for each.</summary>
internal static class Excess<T, TSurface>
    where T : struct, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    /// <summary>A rest, m, so short that it is gone along the last slope, which leaves out its square (of floats one that they can tell); the part of a step of which a rest is none; and how often a step is taken.</summary>
    public const double Rest = 1e-6, MostRest = 0.1;
    public const int MostTries = 4;

    /// <summary>Where in a step just taken the demand passes the limit first, as <see cref="Passage"/> finds it.</summary>
    public static bool First(ref Roll<T, TSurface> roll, in Step<State<T>> step, T h, in Grip<T> start, in Grip<T> end, out Between between)
    {
        between = default;
        if (!(roll.MaySlip(start, end) > 0.0))
        {
            return false;
        }
        var swing = new Swing<Real> { Third = (double)roll.Swing.Third, Fourth = (double)roll.Swing.Fourth, Fifth = (double)roll.Swing.Fifth };
        var passage = new Passage((double)start.Excess, swing, (double)end.Excess, (double)end.Limit);
        while (!passage.IsOver)
        {
            passage.Tell(Inside(ref roll, step, h, passage.Place));
        }
        between = passage.Between;
        return between.Exists;
    }

    /// <summary>Shortens a step just taken so that it ends where the demand reaches the limit between two fractions of it.</summary>
    public static void Land(ref Roll<T, TSurface> roll, ref Step<State<T>> step, ref T h, in Grip<T> start, ref Grip<T> end, in Between between, in Control<T> control)
    {
        // The step that ends there is another one: a first guess, then the slope at its own end.
        h = h * Root.Crossing(between, (double)control.Guess, new Along(step, h), ref roll);
        for (var i = 0; ; i++)
        {
            roll.Take(ref step, h, out _);
            roll.Arrive(ref step, h, start, out end);
            var g = (double)end.Excess;
            // By the length, not by a constant part of it: what a card's compiler makes of one it rounds otherwise.
            var back = 1e-3 * (double)h;
            var slope = (g - Inside(ref roll, step, h, 1 - back / (double)h)) / back;
            T rest = slope > 0 ? -(g / slope) : 0;
            if (!(Math.Abs((double)rest) <= MostRest * Math.Abs((double)h)))
            {
                return;
            }
            if (Math.Abs((double)rest) < Math.Max(Rest, (double)T.Sliver))
            {
                step.End.Add(rest, step.K7);
                h = h + rest;
                step.Interpolant = Interpolant.Mended;
                roll.GripAt(step.End, out end);
                return;
            }
            if (i == MostTries - 1)
            {
                return;
            }
            h = h + rest;
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
