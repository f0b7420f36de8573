using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

// Changes of phase: the end of slip and its beginning.
internal partial struct Run<T, TSurface, TRecorder>
{
    // The last bit of sliding, in one go at the present rates.
    private void Drift(T h)
    {
        slide.ByDistance = false;
        slide.Rates(y, out step.K1);
        step.K3 = step.K4 = step.K5 = step.K6 = step.K7 = step.K1;
        // Whatever the step before was: it may have been a lane's.
        step.Interpolant = Interpolant.Slopes;
        step.End = y;
        step.End.Add(h, step.K1);
        recorder.Took(Phase.Slide, step, h, q);
        Advance();
    }

    // Slip has come to nothing: roll if the contact can hold it, else slide on at once.
    private Ending Stick()
    {
        var before = y;
        Impulse<T>.Stick(slide.Body, q, ref y, out var vx, out var vy);
        roll.Start = q;
        if (!EnterRoll(vx, vy, y.Y))
        {
            Phase = Phase.Roll;
            stiff = false;
            return SlipOn();
        }
        Rolls();
        recorder.Changed(Phase.Slide, Phase.Roll, before, q);
        dt = T.Max(dt, control.FirstStep);
        return Ending.None;
    }

    /// <summary>Slip has come to its end.</summary>
    internal void Rolls()
    {
        (Phase, stiff) = (Phase.Roll, false);
        Transitions++;
    }

    /// <summary>Whether it may still begin to slip.</summary>
    internal readonly bool MayChange => Transitions < bounds.MaxTransitions;

    /// <summary>Slip has begun.</summary>
    internal void Slips()
    {
        (Phase, stiff) = (Phase.Slide, true);
        Transitions++;
    }

    // Rolls on past the limit for a moment and gives the ball the slip that it would have by then.
    private Ending Slip(bool jump, bool rolled = true)
    {
        if (!MayChange)
        {
            return Ending.TransitionLimit;
        }
        if (rolled)
        {
            recorder.Changed(Phase.Roll, Phase.Slide, y, q);
        }
        var time = StartOfSlip<T, TSurface>.Seconds(control, jump);
        held = grip;
        StartOfSlip<T, TSurface>.RollPast(ref roll, ref step, y, q, time, ref grip);
        if (Lost())
        {
            return Ending.StepLimit;
        }
        var end = LandIfEnding(ref roll, ref time);
        recorder.Took(Phase.Roll, step, time, q);
        Advance();
        if (end != Ending.None)
        {
            return end;
        }

        StartOfSlip<T, TSurface>.Push(ref roll, ref slide, ref y, q, time, jump);
        Slips();
        dt = T.Min(dt, time);
        return Ending.None;
    }
}
