using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

// Events: found on the dense output of a step that has been taken, then stepped to.
internal partial struct Run<T, TSurface, TRecorder>
{
    private void TakeRoll(T h)
    {
        roll.Take(ref step, h, out _);
        roll.Arrive(ref step, h, held, out grip);
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
        slide.Push(ref c, at, c.s, out _);
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
        var lift = new LiftAlong(h);
        h = h * Root.Crossing(new(0, lift.At(0, ref this), 1, lift.At(1, ref this)), Root.Rounding, lift, ref this);
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
            RungeKutta5<TOde, State<T>, T>.Take(ref ode, ref step, h, out _);
        }
    }

    // If the step just taken reaches an end of the run, shortens it to the first such place.
    private Ending LandIfEnding<TOde>(ref TOde ode, ref T h)
        where TOde : struct, IOde<State<T>>
    {
        var first = Landing<T>.First(ref step, ref h, bounds, out var θ);
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
