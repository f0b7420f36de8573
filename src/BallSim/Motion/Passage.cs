namespace BallSim.Motion;

/// <summary>
/// Whether a quantity known at the ends and in the middle of a step passes zero in it, look by look: at the other quarters, for the first one at whose end it is above, then at a top between three of them that may come near zero. Who asks looks at
/// <see cref="Place"/> and tells what he found, until it is over.
/// </summary>
internal struct Passage
{
    private const int MostTries = 2;

    private readonly double start, middle, end, limit;
    private double first, third;
    private int known, quarter = 1, tries;

    // Three looks around a top, in quarters, and where the next look is due.
    private double left, place, right, atLeft, at, atRight, top = 1;

    /// <param name="start">At the start of the step.</param>
    /// <param name="middle">In the middle.</param>
    /// <param name="end">At the end.</param>
    /// <param name="limit">A fiftieth of it below zero is near.</param>
    public Passage(double start, double middle, double end, double limit) => (this.start, this.middle, this.end, this.limit) = (start, middle, end, limit);

    /// <summary>Where to look next, as a part of the step.</summary>
    public readonly double Place => top / 4;

    public bool IsOver { get; private set; }

    /// <summary>When it is over: two places, and the quantity there, below zero and above; else all zero.</summary>
    public Between Between { get; private set; }

    /// <summary>The quantity at <see cref="Place"/>.</summary>
    public void Tell(double there)
    {
        if (known < 2)
        {
            (first, third) = (known == 0 ? there : first, there);
            known++;
            top = 3;
            if (known == 2)
            {
                Go();
            }
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
