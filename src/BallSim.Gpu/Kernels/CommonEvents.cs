using BallSim.Friction;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>
/// The two events that nearly every shot meets, slip coming to its end and the end of the run, without the rare paths beside them: so they fit in registers. As <see cref="Run{T,TSurface,TRecorder}"/> does them; where one of
/// these meets something else it changes nothing and says so, and the run does it all.
/// </summary>
internal static class CommonEvents<T, TSurface>
    where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    // From the first step that comes near the head pin to the pins.
    private const int LastSteps = 6;

    /// <summary>From sliding to rolling; false if it is not as simple as that.</summary>
    public static bool Stick(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control)
    {
        T zero = 0.0;
        var slide = new Slide<T, TSurface> { Body = body, Surface = surface, Start = shot.q, Seen = shot.Seen };
        var (y, q, tally) = (shot.y, shot.q, shot.Tally);
        if (shot.Stiff > zero)
        {
            slide.Surface.Roam();
        }
        else
        {
            slide.Surface.Enter(Pace<T>.Within(y.Y, shot.rowEnd));
        }
        slide.Fading(control, out var fade);
        if (!(fade.Creeps > zero))
        {
            if (!(fade.Ends > zero))
            {
                return false;
            }
            // The last bit, in one go at the present rates.
            var h = T.Min(slide.Slip / T.Abs(slide.Seen.Fall), control.StickSlip * Slide<T, TSurface>.DriftSeconds);
            if (Pace<T>.MayEnd(slide.Seen.After(h, y), slide.VelocityX, slide.VelocityX, bounds) > zero)
            {
                return false;
            }
            Step<State<T>> step = default;
            step.Start = y;
            slide.Rates(y, out step.K1);
            step.K2 = step.K3 = step.K4 = step.K5 = step.K6 = step.K7 = step.K1;
            step.End = y;
            step.End.Add(h, step.K1);
            tally.Took(step, h, 1.0);
            q = (Quat<T>.Exp(step.End.Turn) * q).Normalised();
            y = step.End;
            y.Turn = new(zero, zero, zero);
        }
        var before = y;
        Impulse<T>.Stick(body, q, ref y, out var vx, out var vy);
        if (!PlainSteps<T, TSurface>.GoesByDistance(vx, vy))
        {
            return false;
        }
        var roll = new Roll<T, TSurface> { Body = body, Surface = surface, Start = q, ByDistance = true };
        var rowEnd = roll.Surface.Enter(y.Y);
        roll.GripAt(y, out var grip);
        if (grip.Excess > zero)
        {
            return false;
        }
        roll.Rates(y, out shot.K1);
        tally.Changed(Phase.Slide, Phase.Roll, before, q);
        (shot.y, shot.q, shot.Tally, shot.Grip, shot.rowEnd) = (y, q, tally, grip, rowEnd);
        shot.dt = T.Max(shot.dt, control.FirstStep);
        (shot.Phase, shot.Stiff) = (Phase.Roll, zero);
        shot.Transitions++;
        return true;
    }

    /// <summary>
    /// The last steps of a shot that slides: near the pins a step is flagged before the one that reaches them. False if none of a few does, or if it is not as simple as that.
    /// </summary>
    public static bool EndSliding(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control)
    {
        T zero = 0.0;
        var slide = new Slide<T, TSurface> { Body = body, Surface = surface, ByDistance = true, Seen = shot.Seen, Dip = shot.Dip };
        slide.Surface.Enter(Pace<T>.Within(shot.y.Y, shot.rowEnd));
        Step<State<T>> step = default;
        step.K1 = shot.K1;
        var (y, q, dt, lastNorm, rowEnd, tally) = (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally);
        for (var n = 1; n <= LastSteps; n++)
        {
            slide.Start = q;
            step.Start = y;
            var vy = slide.VelocityY;
            var h = Pace<T>.ByDistance(Pace<T>.CapTurn(dt, slide.ω), vy, Pace<T>.NextLine(y.Y, rowEnd, bounds) - y.Y, out var atEnd);
            if (Pace<T>.MayStick(slide.Slip, h / vy) > zero)
            {
                return false;
            }
            slide.Take(ref step, h, out var error);
            var norm = control.Norm(error);
            var next = Pace<T>.Next(norm, lastNorm, dt, h / vy, out var rejected);
            if (rejected > zero || !(slide.N > zero) || !PlainSteps<T, TSurface>.GoesByDistance(slide.VelocityX, slide.VelocityY) || shot.Steps + n >= bounds.MaxSteps)
            {
                return false;
            }
            var ω = slide.ω;
            var end = Landing<T>.First(ref step, h, bounds, out var θ);
            if (end != Ending.None && θ < 1)
            {
                h = h * θ;
                var tries = 0;
                do
                {
                    slide.TakeAgain(ref step, h, out _);
                }
                while (!Landing<T>.IsAt(end, ref step, ref h, bounds, ++tries));
            }
            tally.Took(step, h, 1.0);
            PlainSteps<T, TSurface>.Advance(ref step, ref y, ref q, ω);
            if (end != Ending.None)
            {
                End(ref shot, y, q, tally, n, end);
                return true;
            }
            (dt, lastNorm) = (next, norm);
            if (atEnd > zero)
            {
                rowEnd = slide.Surface.Enter(Pace<T>.EntersAt(y.Y, rowEnd));
                slide.Start = q;
                slide.Rates(y, out step.K1);
            }
        }
        return false;
    }

    /// <summary>The same for one that rolls.</summary>
    public static bool EndRolling(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control)
    {
        T zero = 0.0;
        var roll = new Roll<T, TSurface> { Body = body, Surface = surface, ByDistance = true };
        roll.Surface.Enter(Pace<T>.Within(shot.y.Y, shot.rowEnd));
        Step<State<T>> step = default;
        step.K1 = shot.K1;
        var (y, q, dt, lastNorm, rowEnd, tally, grip) = (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally, shot.Grip);
        for (var n = 1; n <= LastSteps; n++)
        {
            roll.Start = q;
            step.Start = y;
            var vy = grip.VelocityY;
            var h = Pace<T>.ByDistance(Pace<T>.CapTurn(dt, grip.ω), vy, Pace<T>.NextLine(y.Y, rowEnd, bounds) - y.Y, out var atEnd);
            roll.Take(ref step, h, out var error);
            var norm = control.Norm(error);
            var next = Pace<T>.Next(norm, lastNorm, dt, h / vy, out var rejected);
            if (rejected > zero || shot.Steps + n >= bounds.MaxSteps)
            {
                return false;
            }
            var ω = roll.ω;
            roll.Arrive(ref step, grip, out var after);
            if (!(after.N > zero) || !PlainSteps<T, TSurface>.GoesByDistance(after.VelocityX, after.VelocityY) || roll.MaySlip(step, h, grip, after, 1.0) > zero)
            {
                return false;
            }
            var end = Landing<T>.First(ref step, h, bounds, out var θ);
            if (end != Ending.None && θ < 1)
            {
                h = h * θ;
                var tries = 0;
                do
                {
                    roll.Take(ref step, h, out _);
                    roll.Arrive(ref step, grip, out _);
                }
                while (!Landing<T>.IsAt(end, ref step, ref h, bounds, ++tries));
            }
            tally.Took(step, h, 1.0);
            PlainSteps<T, TSurface>.Advance(ref step, ref y, ref q, ω);
            if (end != Ending.None)
            {
                End(ref shot, y, q, tally, n, end);
                return true;
            }
            (dt, lastNorm, grip) = (next, norm, after);
            if (atEnd > zero)
            {
                rowEnd = roll.Surface.Enter(Pace<T>.EntersAt(y.Y, rowEnd));
                roll.Start = q;
                roll.GripAt(y, out grip);
                if (grip.Excess > zero)
                {
                    return false;
                }
                roll.Rates(y, out step.K1);
            }
        }
        return false;
    }

    private static void End(ref Moving<T> shot, in State<T> y, in Quat<T> q, in Tally<T> tally, int steps, Ending end)
    {
        (shot.y, shot.q, shot.Tally) = (y, q, tally);
        shot.Steps += steps;
        shot.Ended = end;
    }
}
