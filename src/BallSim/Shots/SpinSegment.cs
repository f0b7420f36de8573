using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Shots;

/// <summary>One step of a spin test as a polynomial in the fraction of the step, kept for dense evaluation.</summary>
internal readonly struct SpinSegment
{
    private readonly SpinState<Real> start, p1, p2, p3, p4;
    private readonly Quat<Real> orientation;
    private readonly double duration;

    public SpinSegment(double time, double duration, in Step<SpinState<Real>> step, Quat<Real> orientation)
    {
        StartTime = time;
        this.duration = duration;
        this.orientation = orientation;
        start = step.Start;
        Dense<SpinState<Real>, Real>.Polynomial(step, duration, out p1, out p2, out p3, out p4);
    }

    public double StartTime { get; }

    public double EndTime => StartTime + duration;

    /// <summary>The state and the orientation at a time within the step.</summary>
    public (SpinState<Real> State, Quat<Real> Orientation) At(double time)
    {
        var θ = Math.Clamp((time - StartTime) / duration, 0, 1);
        var y = p4;
        Next(ref y, θ, p3);
        Next(ref y, θ, p2);
        Next(ref y, θ, p1);
        Next(ref y, θ, start);
        return (y, orientation.Turned(y.Turn).Normalised());
    }

    private static void Next(ref SpinState<Real> y, Real θ, in SpinState<Real> lower)
    {
        var next = lower;
        next.Add(θ, y);
        y = next;
    }
}
