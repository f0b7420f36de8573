using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Where a step reaches an end of the run, for every driver.</summary>
internal static class Landing<T>
    where T : struct, IScalar<T>, IReal<T>
{
    /// <summary>Times a step is taken again, at most, until it ends where the run does.</summary>
    public const int MostTries = 4;

    // So short a rest, m, is gone along the last slope and its bend, which leaves out what goes with the cube of it.
    private const double Rest = 2e-4;

    // A step that comes so near an end, m, was meant to end there: the head pin is aimed at, and a step stops at the pins, see Pace.NextLine.
    private const double Aimed = 1e-3;

    // Where along a step an end is reached, as a part of it: a first guess, since the step that ends there is another one.
    private const double Guess = 1e-9;

    /// <summary>The first end that a step just taken reaches, and at which part of the step; the step itself ends there if that is 1 or more.</summary>
    public static Ending First(ref Step<State<T>> step, ref T h, in Bounds<T> bounds, out double firstθ)
    {
        var first = Ending.None;
        firstθ = 1.0;
        if (!(Pace<T>.MayEnd(step, bounds) > 0.0))
        {
            return first;
        }
        var meant = AtOnce(ref step, ref h, bounds);
        if (meant != Ending.None)
        {
            return meant;
        }
        var along = new Way(step, h);
        for (var ending = Ending.HeadPin; ending <= Ending.TimeLimit; ending++)
        {
            // What has not come where another end has does not come before it.
            var high = firstθ;
            var last = along.Beyond(ending, high, bounds);
            if (first == Ending.None && Math.Abs(last) < Aimed && (last >= 0 || ending == Ending.HeadPin || ending == Ending.PassedPins && last > -(double)T.Sliver) && Beyond(Ending.TimeLimit, step.End, bounds) < 0
                && ComesTo(ending, ref step, ref h, bounds, out _))
            {
                return ending;
            }
            if (!(last >= 0))
            {
                // The pin may be grazed, or the edge passed, between the ends of a step: not if the ball still comes nearer at its end.
                if (first != Ending.None || ending is not (Ending.Gutter or Ending.HeadPin) || !(last > -Pace<T>.Graze) || !(along.Beyond(ending, 1 - 1e-3, bounds) > last))
                {
                    continue;
                }
                high = Root.Peak(new EndingAlong(ending, bounds), ref along);
                last = along.Beyond(ending, high, bounds);
                if (!(last >= 0))
                {
                    continue;
                }
            }
            var start = Beyond(ending, step.Start, bounds);
            firstθ = start >= 0 ? 0 : Root.Crossing(new(0, start, high, last), Guess, new EndingAlong(ending, bounds), ref along);
            first = ending;
        }
        return first;
    }

    /// <summary>The end that a step was meant for and comes to, but for so short a rest that it is gone along the last slope, where no other is near: nearly every run ends so. Ending.None: that takes a closer look.</summary>
    public static Ending AtOnce(ref Step<State<T>> step, ref T h, in Bounds<T> bounds)
    {
        var pin = Beyond(Ending.HeadPin, step.End, bounds);
        var ending = Math.Abs(pin) < Aimed ? Ending.HeadPin : Ending.PassedPins;
        if (ending == Ending.PassedPins)
        {
            var passed = Beyond(ending, step.End, bounds);
            if (!((pin < -Pace<T>.Graze || KeepsClear(step, h, bounds)) && Beyond(Ending.Gutter, step.End, bounds) < -Pace<T>.Graze && Math.Abs(passed) < Aimed && passed > -(double)T.Sliver))
            {
                return Ending.None;
            }
        }
        return Beyond(Ending.TimeLimit, step.End, bounds) < 0 && ComesTo(ending, ref step, ref h, bounds, out _) ? ending : Ending.None;
    }

    // Whether a step passes the head pin: on one side at both ends, by more than all that its direction changes between them.
    private static bool KeepsClear(in Step<State<T>> step, T h, in Bounds<T> bounds)
    {
        double from = (double)step.Start.X, to = (double)step.End.X;
        var nearest = to > 0 ? Math.Min(from, to) : -Math.Max(from, to);
        return nearest - Math.Abs((double)h * ((double)step.K7.X - (double)step.K1.X)) > (double)bounds.TouchDistance;
    }

    /// <summary>Whether a step taken again is short enough of the end that it is meant for; if not, h is set to the length to try next. What is recorded is the step as it was taken last.</summary>
    public static bool IsAt(Ending ending, ref Step<State<T>> step, ref T h, in Bounds<T> bounds, int tries)
    {
        if (ComesTo(ending, ref step, ref h, bounds, out var rest))
        {
            return true;
        }
        if (tries >= MostTries || Math.Abs((double)rest) > 0.1 * (double)h)
        {
            return true;
        }
        h = h + rest;
        return false;
    }

    // Whether so little of a step is missing to an end, or too much, that it is gone, or taken back, along the last slope: then it has been.
    private static bool ComesTo(Ending ending, ref Step<State<T>> step, ref T h, in Bounds<T> bounds, out T rest)
    {
        rest = To(ending, step, h, bounds, out var bend);
        var little = Math.Abs((double)rest) * Math.Max(1, Math.Abs((double)step.K7.Y)) < Rest;
        if (little)
        {
            Extend(ref step, ref h, rest, bend);
        }
        return little;
    }

    // Moves the end of a step by what is missing, or too much: not to before its start, where a run that begins at an end may lie by a hair.
    private static void Extend(ref Step<State<T>> step, ref T h, T rest, in State<T> bend)
    {
        rest = T.Max(rest, -h);
        h = h + rest;
        step.End.Add(rest, step.K7, 0.5 * rest * rest, bend);
        step.End.Time = T.Max(step.End.Time, step.Start.Time);
        if (step.Interpolant == Interpolant.Slopes)
        {
            step.Interpolant = Interpolant.Mended;
        }
    }

    // How far beyond the end of a step an end of the run lies, along its last slope and the bend of it; infinite where it comes no nearer.
    private static double To(Ending ending, in Step<State<T>> step, T h, in Bounds<T> bounds, out State<T> bend)
    {
        Dense<State<T>, T>.Bend(step, h, out bend);
        double rest = 0;
        for (var i = 0; i < 4; i++)
        {
            var half = 0.5 * rest;
            double x1 = (double)step.K7.X + half * (double)bend.X, y1 = (double)step.K7.Y + half * (double)bend.Y, t1 = (double)step.K7.Time + half * (double)bend.Time;
            double x = (double)step.End.X + rest * x1, y = (double)step.End.Y + rest * y1, t = (double)step.End.Time + rest * t1;
            var rate = Rate(ending, x, y, x1 + half * (double)bend.X, y1 + half * (double)bend.Y, t1 + half * (double)bend.Time, bounds);
            if (!(rate > 0))
            {
                return double.PositiveInfinity;
            }
            rest -= Beyond(ending, x, y, t, bounds) / rate;
        }
        return rest;
    }

    // Positive once the ending has come.
    private static double Beyond(Ending ending, in State<T> at, in Bounds<T> bounds) => Beyond(ending, at.X, at.Y, at.Time, bounds);

    private static double Beyond(Ending ending, T x, T y, T time, in Bounds<T> bounds)
    {
        switch (ending)
        {
            case Ending.Gutter:
                return (double)(T.Abs(x) - bounds.HalfWidth);
            case Ending.HeadPin:
                var away = y - bounds.PinsAt;
                return (double)(bounds.TouchDistance - T.Sqrt(T.Fma(x, x, away * away)));
            case Ending.PassedPins:
                // A step that ends on the pins' line may end a rounding error short of it.
                return (double)(y - bounds.PinsAt) + 1e-12;
            case Ending.FoulLine:
                return (double)(bounds.BackAt - y);
            default:
                return (double)(time - bounds.MaxTime);
        }
    }

    // How fast that grows, along a way with these rates.
    private static double Rate(Ending ending, double x, double y, double dx, double dy, double dt, in Bounds<T> bounds)
    {
        switch (ending)
        {
            case Ending.Gutter:
                return x > 0 ? dx : -dx;
            case Ending.HeadPin:
                var away = y - (double)bounds.PinsAt;
                return -(x * dx + away * dy) / Math.Sqrt(x * x + away * away);
            case Ending.PassedPins:
                return dy;
            case Ending.FoulLine:
                return -dy;
            default:
                return dt;
        }
    }

    // Place and time along a step, by its dense output.
    private readonly struct Way
    {
        private readonly T x0, x1, x2, x3, x4, y0, y1, y2, y3, y4, t0, t1, t2, t3, t4, endX, endY, endTime;

        public Way(in Step<State<T>> s, T h)
        {
            (x0, y0, t0) = (s.Start.X, s.Start.Y, s.Start.Time);
            (endX, endY, endTime) = (s.End.X, s.End.Y, s.End.Time);
            Dense<State<T>, T>.Coefficients(s.Interpolant, h, x0, endX, s.K1.X, s.K3.X, s.K4.X, s.K5.X, s.K6.X, s.K7.X, out x1, out x2, out x3, out x4);
            Dense<State<T>, T>.Coefficients(s.Interpolant, h, y0, endY, s.K1.Y, s.K3.Y, s.K4.Y, s.K5.Y, s.K6.Y, s.K7.Y, out y1, out y2, out y3, out y4);
            Dense<State<T>, T>.Coefficients(s.Interpolant, h, t0, endTime, s.K1.Time, s.K3.Time, s.K4.Time, s.K5.Time, s.K6.Time, s.K7.Time, out t1, out t2, out t3, out t4);
        }

        public double Beyond(Ending ending, double θ, in Bounds<T> bounds) => θ >= 1
            ? Landing<T>.Beyond(ending, endX, endY, endTime, bounds)
            : Landing<T>.Beyond(ending, Value(θ, x0, x1, x2, x3, x4), Value(θ, y0, y1, y2, y3, y4), Value(θ, t0, t1, t2, t3, t4), bounds);

        private static T Value(T θ, T c0, T c1, T c2, T c3, T c4) => T.Fma(T.Fma(T.Fma(T.Fma(c4, θ, c3), θ, c2), θ, c1), θ, c0);
    }

    private readonly struct EndingAlong(Ending ending, Bounds<T> bounds) : IAlong<Way>
    {
        private readonly Bounds<T> bounds = bounds;

        public double At(double θ, ref Way along) => along.Beyond(ending, θ, bounds);
    }
}
