namespace BallSim.Motion;

// Handed from driver to driver.
internal partial struct Run<T, TSurface, TRecorder>
{
    /// <summary>Goes on from where another driver, or this one, left a shot; the recorder is the caller's matter.</summary>
    public void Resume(in Moving<T> from)
    {
        (y, q, step.K1, dt, lastNorm, rowEnd) = (from.y, from.q, from.K1, from.dt, from.lastNorm, from.rowEnd);
        (slide.Seen, slide.Dip, grip) = (from.Seen, from.Dip, from.Grip);
        (Steps, Rejected, Transitions) = (from.Steps, from.Rejected, from.Transitions);
        (Phase, stiff, Ended) = (from.Phase, from.Stiff > 0.0, from.Ended);
        slide.ByDistance = roll.ByDistance = true;
        var within = Pace<T>.Within(y.Y, rowEnd);
        slide.Surface.Enter(within);
        roll.Surface.Enter(within);
    }

    /// <summary>What <see cref="Resume"/> goes on from.</summary>
    public readonly void Leave(ref Moving<T> to)
    {
        (to.y, to.q, to.K1, to.dt, to.lastNorm, to.rowEnd) = (step.Start, q, step.K1, dt, lastNorm, rowEnd);
        (to.Seen, to.Dip, to.Grip) = (slide.Seen, slide.Dip, grip);
        (to.Steps, to.Rejected, to.Transitions) = (Steps, Rejected, Transitions);
        (to.Phase, to.Stiff, to.Ended) = (Phase, stiff ? 1.0 : 0.0, Ended);
    }
}
