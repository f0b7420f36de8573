using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Shots;

/// <summary>One step of a shot as a polynomial in the fraction of the step, kept for dense evaluation. A class: a table of such large values would be moved whole each time it grows.</summary>
internal sealed class PathSegment(Phase phase, in State<Real> start, in State<Real> p1, in State<Real> p2, in State<Real> p3, in State<Real> p4, Quat<Real> orientation)
{
    private readonly State<Real> start = start, p1 = p1, p2 = p2, p3 = p3, p4 = p4;

    public Phase Phase { get; } = phase;

    /// <summary>The orientation that the states' turns are relative to.</summary>
    public Quat<Real> Orientation { get; } = orientation;

    public double StartTime => start.Time;
    public double EndTime => Along(1, start.Time, p1.Time, p2.Time, p3.Time, p4.Time);
    public double EndRevolutions => Along(1, start.Revolutions, p1.Revolutions, p2.Revolutions, p3.Revolutions, p4.Revolutions);
    public double StartY => start.Y;
    public double EndY => Along(1, start.Y, p1.Y, p2.Y, p3.Y, p4.Y);

    /// <summary>The state at a fraction of the step.</summary>
    public State<Real> At(double θ)
    {
        var y = p4;
        Next(ref y, θ, p3);
        Next(ref y, θ, p2);
        Next(ref y, θ, p1);
        Next(ref y, θ, start);
        return y;
    }

    /// <summary>How fast the state changes with the fraction of the step.</summary>
    public State<Real> RateAt(double θ)
    {
        var rate = p1;
        rate.Add(2 * θ, p2, 3 * θ * θ, p3, 4 * θ * θ * θ, p4);
        return rate;
    }

    /// <summary>How far the ball turns between two fractions of the step, rad.</summary>
    public double TurnOver(double from, double to) => 2 * Math.PI * (At(to).Revolutions - At(from).Revolutions);

    /// <summary>The fraction of the step at which the time is t.</summary>
    public double AtTime(double t) => Invert(t, start.Time, p1.Time, p2.Time, p3.Time, p4.Time);

    /// <summary>The fraction of the step at which the centre is y down-lane; y must lie between the ends.</summary>
    public double AtDistance(double y) => Invert(y, start.Y, p1.Y, p2.Y, p3.Y, p4.Y);

    /// <summary>The fraction of the step at which the ball has turned so often since the release.</summary>
    public double AtRevolutions(double n) => Invert(n, start.Revolutions, p1.Revolutions, p2.Revolutions, p3.Revolutions, p4.Revolutions);

    private static void Next(ref State<Real> y, Real θ, in State<Real> lower)
    {
        var next = lower;
        next.Add(θ, y);
        y = next;
    }

    private static double Along(double θ, double c0, double c1, double c2, double c3, double c4) => c0 + θ * (c1 + θ * (c2 + θ * (c3 + θ * c4)));

    // Newton held inside a shrinking bracket; a step's time and distance are all but linear in its fraction.
    private static double Invert(double value, double c0, double c1, double c2, double c3, double c4)
    {
        double low = 0, high = 1;
        var falls = Along(1, c0, c1, c2, c3, c4) < c0;
        var whole = c1 + c2 + c3 + c4;
        var θ = whole == 0 ? 0 : Math.Clamp((value - c0) / whole, 0, 1);
        for (var i = 0; i < 60; i++)
        {
            var off = Along(θ, c0, c1, c2, c3, c4) - value;
            if (off > 0 != falls)
            {
                high = θ;
            }
            else
            {
                low = θ;
            }
            var next = θ - off / (c1 + θ * (2 * c2 + θ * (3 * c3 + θ * 4 * c4)));
            if (!(next >= low && next <= high))
            {
                next = 0.5 * (low + high);
            }
            if (Math.Abs(next - θ) < 1e-15)
            {
                return next;
            }
            θ = next;
        }
        return θ;
    }
}
