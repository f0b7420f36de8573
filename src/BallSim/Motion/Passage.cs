using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// Whether a quantity known at the ends of a step, and between them by a curve that is nearly it, passes zero in the step, look by look: where the curve comes to a top near zero, one after the other; where that shows the curve to be off, at the
/// quarters as well, for the first one at whose end it is above, and at a top between three of them that may come near zero. Who asks looks at <see cref="Place"/> and tells what he found, until it is over.
/// </summary>
internal struct Passage
{
    private const int MostTries = 2;

    // Tops of the curve are looked for between so many equal parts of the step; so far below zero, as a part of the limit, they are left, and a curve that is off by more is not good enough.
    private const int Parts = 16;
    private const double Near = 0.03, Off = 0.003;

    // Where the curve passes zero is halved so often.
    private const int Halvings = 12;

    private readonly Quartic<Real> curve;
    private readonly double start, end, limit;
    private double first, middle, third;
    private int part, quarter = 1, tries;

    // Quarters looked at; none yet where the curve's tops are.
    private int known = -1;
    private bool off;

    // Three looks around a top, in quarters, and where the next look is due.
    private double left, place, right, atLeft, at, atRight, top = 1;

    /// <param name="start">At the start of the step.</param>
    /// <param name="swing">At the stages.</param>
    /// <param name="end">At the end.</param>
    /// <param name="limit">A fiftieth of it below zero is near.</param>
    public Passage(double start, in Swing<Real> swing, double end, double limit)
    {
        (this.start, this.end, this.limit, atLeft) = (start, end, limit, start);
        swing.Along(start, end, out curve);
        NextTop();
    }

    /// <summary>Where to look next, as a part of the step.</summary>
    public readonly double Place => top / 4;

    public bool IsOver { get; private set; }

    /// <summary>When it is over: two places, and the quantity there, below zero and above; else all zero.</summary>
    public Between Between { get; private set; }

    /// <summary>The quantity at <see cref="Place"/>.</summary>
    public void Tell(double there)
    {
        if (known < 0)
        {
            if (there > 0)
            {
                Pass(Place, there);
                return;
            }
            off |= !(Math.Abs(there - (double)curve.At(Place)) < Off * limit);
            (left, atLeft) = (Place, there);
            NextTop();
            return;
        }
        if (known < 3)
        {
            switch (known++)
            {
                case 0:
                    first = there;
                    break;
                case 1:
                    middle = there;
                    break;
                default:
                    third = there;
                    Go();
                    return;
            }
            top = known + 1;
            return;
        }
        if (there > 0)
        {
            (Between, IsOver) = (new((quarter - 2) / 4.0, At(quarter - 2), Place, there), true);
            return;
        }
        // Next, the top of the parabola through this look and its neighbours.
        if (top > place)
        {
            (left, atLeft) = (place, at);
        }
        else
        {
            (right, atRight) = (place, at);
        }
        (place, at) = (top, there);
        var rise = (at - atLeft) / (place - left);
        var bend = ((atRight - at) / (right - place) - rise) / (right - left);
        top = 0.5 * (left + place) - rise / (2 * bend);
        tries++;
        if (!Looks())
        {
            quarter++;
            Go();
        }
    }

    // The curve's next top; after the last, the end, or the first quarter.
    private void NextTop()
    {
        while (part < Parts)
        {
            double rise = (double)curve.SlopeAt(part / (double)Parts), next = (double)curve.SlopeAt(++part / (double)Parts);
            if (rise > 0 && !(next > 0))
            {
                var there = (part - 1 + rise / (rise - next)) / Parts;
                if ((double)curve.At(there) > -Near * limit)
                {
                    top = 4 * there;
                    return;
                }
            }
        }
        known = 0;
        if (!off)
        {
            IsOver = true;
            if (end > 0)
            {
                Pass(1, end);
            }
        }
        top = 1;
    }

    // Above zero there, below at the last place: likely where the curve, brought to what it should be there, passes it.
    private void Pass(double high, double atHigh)
    {
        double shift = atHigh - (double)curve.At(high), low = left, rest = high - left;
        for (var i = 0; i < Halvings; i++)
        {
            rest *= 0.5;
            low += (double)curve.At(low + rest) + shift > 0 ? 0 : rest;
        }
        (Between, IsOver) = (new(left, atLeft, high, atHigh, low + 0.5 * rest), true);
    }

    private void Go()
    {
        for (; quarter <= 4; quarter++)
        {
            var (before, now) = (At(quarter - 1), At(quarter));
            if (now > 0)
            {
                Between = new((quarter - 1) / 4.0, before, quarter / 4.0, now);
                break;
            }
            if (quarter > 1 && HasTop(At(quarter - 2), before, now) && Looks())
            {
                return;
            }
        }
        IsOver = true;
    }

    // Whether it may come near zero between three quarters: the top of the parabola through them, which may lie a little beyond them.
    private bool HasTop(double older, double before, double now)
    {
        var slope = now - older;
        var curvature = now - 2 * before + older;
        if (!(curvature < 0 && Math.Abs(slope) <= -2.6 * curvature && before - slope * slope / (8 * curvature) > -0.02 * limit))
        {
            return false;
        }
        (left, place, right, atLeft, at, atRight) = (quarter - 2, quarter - 1, quarter, older, before, now);
        top = Math.Max(quarter - 1.9, Math.Min(quarter - 0.1, quarter - 1 - slope / (2 * curvature)));
        tries = 0;
        return true;
    }

    private readonly bool Looks() => tries < MostTries && top > left && top < right;

    private readonly double At(int quarter) => quarter switch
    {
        0 => start,
        1 => first,
        2 => middle,
        3 => third,
        _ => end,
    };
}
