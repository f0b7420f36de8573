using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

// Changes of phase: the end of slip and its beginning.
internal partial struct Run<T, TSurface, TRecorder>
{
    // Slip acceleration per unit of tangential force, for a ball with all its inertia in the smallest moment.
    private readonly double Compliance()
    {
        var body = slide.Body;
        return (double)body.InverseMass + (double)(body.Radius * body.Radius / T.Min(body.Moments.X, T.Min(body.Moments.Y, body.Moments.Z)));
    }

    // The last bit of sliding, in one go at the present rates.
    private void Drift(T h)
    {
        slide.ByDistance = false;
        step.Start = y;
        slide.Rates(y, out step.K1);
        step.K2 = step.K3 = step.K4 = step.K5 = step.K6 = step.K7 = step.K1;
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
        Phase = Phase.Roll;
        stiff = false;
        if (!EnterRoll(vx, vy, y.Y))
        {
            return Slip(jump: true, rolled: false);
        }
        Transitions++;
        recorder.Changed(Phase.Slide, Phase.Roll, before, q);
        dt = T.Max(dt, control.FirstStep);
        return Ending.None;
    }

    // Rolls on past the limit for a moment and gives the ball the slip that it would have by then.
    private Ending Slip(bool jump, bool rolled = true)
    {
        if (++Transitions > bounds.MaxTransitions)
        {
            return Ending.TransitionLimit;
        }
        if (rolled)
        {
            recorder.Changed(Phase.Roll, Phase.Slide, y, q);
        }
        var time = jump ? 1e-3 * control.SlipStart : control.SlipStart;
        roll.Start = q;
        roll.ByDistance = false;
        roll.Surface.Roam();
        step.Start = y;
        roll.Rates(y, out step.K1);
        held = grip;
        TakeRoll(time);
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

        roll.Start = slide.Start = q;
        roll.Contact(y, out var pressed, out _);
        T share = jump ? 1.0 : 0.5;
        var a_held = pressed.α.Cross(new(pressed.rx, pressed.ry, pressed.arm)) + pressed.ω.Cross(new(pressed.ωrx, pressed.ωry, pressed.ωrz));

        // The sliding state at rest slip: same velocities, other variables.
        y.Momentum = pressed.I_L * pressed.ω;
        (y.VelocityX, y.VelocityY) = (pressed.vx + pressed.ωrx, pressed.vy + pressed.ωry);
        slide.Surface.Roam();
        Unsafe.SkipInit(out SlideContact<T> c);
        c.At(slide.Body, q, y);
        // At zero slip pivoting would take the whole grip: push as at a slip where it takes none.
        c.s = 1.0;
        PushAlongSlip(ref c, -pressed.fx / pressed.Demand, -pressed.fy / pressed.Demand);
        var kick = share * time;
        var Δω = kick * (c.α - pressed.α);
        y.Momentum = y.Momentum + pressed.I_L * Δω;
        y.VelocityX = T.Fma(kick, c.ax - a_held.X, y.VelocityX);
        y.VelocityY = T.Fma(kick, c.ay - a_held.Y, y.VelocityY);
        Phase = Phase.Slide;
        stiff = true;
        dt = T.Min(dt, time);
        (slide.Seen.VelocityX, slide.Seen.VelocityY) = (c.vx, c.vy);
        return Ending.None;
    }

    // Pushes along the unit vector to which the slip acceleration that friction against it leaves is parallel: Newton on the angle, the derivative known but for small terms.
    private void PushAlongSlip(ref SlideContact<T> c, T ex, T ey)
    {
        for (var i = 0; i < 20; i++)
        {
            slide.Push(ref c, y, ex, ey, 0.0, out var cover);
            var μ = cover.Friction;
            var (ax, ay) = c.SlipRate(slide.Body);
            var across = (double)T.Fma(ex, ay, -(ey * ax));
            var along = Math.Max((double)T.Fma(ex, ax, ey * ay), 0);
            var turn = across / ((double)(μ * c.N) * Compliance() + along);
            (ex, ey) = (ex - turn * ey, ey + turn * ex);
            var norm = T.Sqrt(T.Fma(ex, ex, ey * ey));
            (ex, ey) = (ex / norm, ey / norm);
            if (Math.Abs(turn) < 1e-12)
            {
                break;
            }
        }
        slide.Push(ref c, y, ex, ey, 0.0, out _);
    }
}
