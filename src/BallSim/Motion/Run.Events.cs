using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

// Events: found on the dense output of a step that has been taken, then stepped to.
internal partial struct Run<T, TSurface, TRecorder>
{
    // Force that rolling asks beyond the limit of grip, N.
    private double ExcessBetween(T h, double θ)
    {
        Grip<T> g;
        if (θ >= 1)
        {
            roll.Look(step.End, out g);
        }
        else
        {
            roll.Look(Dense<State<T>, T>.Between(step, h, θ), out g);
        }
        return (double)g.Excess;
    }

    // The first quarter of a step in which the demand passes the limit; where it only comes near, the top of the parabola through its neighbours is tried as well.
    private bool FirstExcess(T h, in Grip<T> start, in Grip<T> end, out double low, out double high)
    {
        (low, high) = (0, 1);
        if (!(Pace<T>.MaySlip(start.Excess, end.Excess, end.Limit) > 0.0))
        {
            return false;
        }
        var middle = ExcessBetween(h, 0.5);
        if (!(Pace<T>.MaySlip(start.Excess, middle, end.Excess, end.Limit) > 0.0))
        {
            return false;
        }
        double older = 0, before = (double)start.Excess;
        for (var i = 1; i <= 4; i++)
        {
            var now = i == 2 ? middle : i < 4 ? ExcessBetween(h, i / 4.0) : (double)end.Excess;
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
                if (before - slope * slope / (8 * curvature) > -0.02 * (double)end.Limit && ExcessBetween(h, top) > 0)
                {
                    (low, high) = ((i - 2) / 4.0, top);
                    return true;
                }
            }
            (older, before) = (before, now);
        }
        return false;
    }

    // Shortens the step just taken so that it ends where the demand reaches the limit between two fractions of it.
    private void LandOnExcess(ref T h, double low, double high)
    {
        var θ = Root.Crossing(low, high, new ExcessAlong(h), ref this);
        h = h * θ;
        for (var i = 0; i < 3; i++)
        {
            TakeRoll(h);
            var g = ExcessBetween(h, 1);
            var slope = (g - ExcessBetween(h, 1 - 1e-3)) / (1e-3 * (double)h);
            var correction = slope > 0 ? g / slope : 0;
            if (Math.Abs(correction) < 1e-13 || Math.Abs(correction) > 0.1 * Math.Abs((double)h))
            {
                return;
            }
            h = (double)h - correction;
        }
        TakeRoll(h);
    }

    private void TakeRoll(T h)
    {
        roll.Take(ref step, h, out _);
        roll.Arrive(ref step, held, out grip);
    }

    private readonly struct ExcessAlong(T h) : IAlong<Run<T, TSurface, TRecorder>>
    {
        public double At(double θ, ref Run<T, TSurface, TRecorder> run) => run.ExcessBetween(h, θ);
    }

    private readonly struct LiftAlong(T h) : IAlong<Run<T, TSurface, TRecorder>>
    {
        public double At(double θ, ref Run<T, TSurface, TRecorder> run) => -run.NormalForce(θ >= 1 ? run.step.End : Dense<State<T>, T>.Between(run.step, h, θ));
    }

    private double NormalForce(in State<T> at)
    {
        if (Phase == Phase.Roll)
        {
            roll.Look(at, out var g);
            return (double)g.N;
        }
        Unsafe.SkipInit(out SlideContact<T> c);
        c.At(slide.Body, q, at);
        slide.Push(ref c, at, c.sx / c.s, c.sy / c.s, c.s, out _);
        return (double)c.N;
    }

    // If the normal force has gone by the end of the step just taken, shortens it to where it goes.
    private bool LandIfLifting<TOde>(ref TOde ode, ref T h, bool pressed)
        where TOde : struct, IOde<State<T>>
    {
        if (pressed)
        {
            return false;
        }
        h = h * Root.Crossing(0, 1, new LiftAlong(h), ref this);
        Retake(ref ode, h);
        return true;
    }

    // The step just taken, once more over another length.
    private void Retake<TOde>(ref TOde ode, T h)
        where TOde : struct, IOde<State<T>>
    {
        if (stiff)
        {
            TakeSlide(h, out _);
        }
        else if (Phase == Phase.Slide)
        {
            slide.TakeAgain(ref step, h, out _);
        }
        else if (Phase == Phase.Roll)
        {
            TakeRoll(h);
        }
        else
        {
            Tsitouras5<TOde, State<T>, T>.Take(ref ode, ref step, h, out _);
        }
    }

    // If the step just taken reaches an end of the run, shortens it to the first such place.
    private Ending LandIfEnding<TOde>(ref TOde ode, ref T h)
        where TOde : struct, IOde<State<T>>
    {
        var first = Landing<T>.First(ref step, h, bounds, out var θ);
        if (first == Ending.None || θ >= 1)
        {
            return first;
        }
        h = h * θ;
        var tries = 0;
        do
        {
            Retake(ref ode, h);
        }
        while (!Landing<T>.IsAt(first, ref step, ref h, bounds, ++tries));
        return first;
    }
}
