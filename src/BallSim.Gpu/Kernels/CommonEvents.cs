using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>
/// The events that nearly every shot meets, the start of the run, slip coming to its end and the end of the run, without the rare paths beside them: so they fit in registers. As <see cref="Run{T,TSurface,TRecorder}"/> does them; where one of
/// these meets something else it changes nothing and says so, and the run does it all.
/// </summary>
internal static class CommonEvents<T, TSurface>
    where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    // From the first step that comes near the head pin to the pins; a shot that needs more comes again.
    private const int LastSteps = 6;

    /// <summary>From the foul line to sliding; false if it is not as simple as that.</summary>
    public static bool Begin(in Start start, ref Moving<T> shot, in Body<T> body, TSurface surface, in Control<T> control)
    {
        static T Of(DeviceDouble a) => (double)a;
        if (start.Loft > 0)
        {
            return false;
        }
        var q = start.Orientation;
        var ω = start.AngularVelocity;
        FoulLine<T>.Leave(body, Of(start.X), 0.0, Of(start.VelocityX), Of(start.VelocityY), new(Of(q.W), Of(q.X), Of(q.Y), Of(q.Z)), new(Of(ω.X), Of(ω.Y), Of(ω.Z)), out shot.y, out shot.q);
        FoulLine<T>.Land(body, shot.q, ref shot.y);
        Unsafe.SkipInit(out SlideContact<T> c);
        c.At(body, shot.q, shot.y);
        if (c.s <= Slide<T, TSurface>.NoSlip || !PlainSteps<T, TSurface>.GoesByDistance(c.vx, c.vy))
        {
            return false;
        }
        var slide = new Slide<T, TSurface> { Body = body, Surface = surface, Start = shot.q, ByDistance = true };
        shot.rowEnd = slide.Surface.Enter(shot.y.Y);
        slide.Rates(shot.y, out shot.K1);
        (shot.dt, shot.lastNorm, shot.Seen, shot.Dip) = (control.FirstStep, 1.0, slide.Seen, slide.Dip);
        shot.Phase = Phase.Slide;
        shot.Tally = new(Of(start.Hand), Of(start.X));
        return true;
    }

    /// <summary>From sliding to rolling (Why.Nothing), or so far that it must slip on (Why.CannotRoll). Why.MayEnd: an end of the run lies in between, or it does not end yet; Why.Rare: it is not as simple as that.</summary>
    public static Why Stick(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control)
    {
        T zero = 0.0;
        var slide = new Slide<T, TSurface> { Body = body, Surface = surface, Start = shot.q, Seen = shot.Seen };
        var (y, q, tally) = (shot.y, shot.q, shot.Tally);
        // Stiff steps go from row to row; here one place is asked for.
        slide.Surface.Enter(shot.Stiff > zero ? y.Y : Pace<T>.Within(y.Y, shot.rowEnd));
        slide.Fading(control, out var fade);
        if (!(fade.Creeps > zero))
        {
            // The last bit, in one go at the present rates.
            var h = slide.Rest(control);
            if (!(fade.Ends > zero) || Pace<T>.MayEnd(slide.Seen, h, y, bounds) > zero)
            {
                return shot.Stiff > zero ? Why.Rare : Why.MayEnd;
            }
            Step<State<T>> step = default;
            step.Start = y;
            slide.Rates(y, out step.K1);
            step.K3 = step.K4 = step.K5 = step.K6 = step.K7 = step.K1;
            step.End = y;
            step.End.Add(h, step.K1);
            tally.Took(step, h, 1.0);
            q = q.Turned(step.End.Turn).Normalised();
            y = step.End;
            y.Turn = new(zero, zero, zero);
        }
        var before = y;
        Impulse<T>.Stick(body, q, ref y, out var vx, out var vy);
        if (!PlainSteps<T, TSurface>.GoesByDistance(vx, vy))
        {
            return Why.Rare;
        }
        var roll = new Roll<T, TSurface> { Body = body, Surface = surface, Start = q, ByDistance = true };
        var rowEnd = roll.Surface.Enter(y.Y);
        roll.GripAt(y, out var grip);
        var holds = !(grip.Excess > zero);
        if (holds)
        {
            roll.Rates(y, out shot.K1);
            tally.Changed(Phase.Slide, Phase.Roll, before, q);
            shot.dt = T.Max(shot.dt, control.FirstStep);
            shot.Transitions++;
        }
        (shot.y, shot.q, shot.Tally, shot.Grip, shot.rowEnd) = (y, q, tally, grip, rowEnd);
        (shot.Phase, shot.Stiff) = (Phase.Roll, zero);
        return holds ? Why.Nothing : Why.CannotRoll;
    }

    /// <summary>
    /// The last steps of a shot that slides: near the pins a step is flagged before the one that reaches them. Why.Nothing: the run has ended, or it slides on from the last step, as far as it came. Why.Rare: nothing was done.
    /// </summary>
    public static Why EndSliding(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control, T shortest)
    {
        T zero = 0.0;
        var slide = new Slide<T, TSurface> { Body = body, Surface = surface, ByDistance = true, Seen = shot.Seen, Dip = shot.Dip };
        slide.Surface.Enter(Pace<T>.Within(shot.y.Y, shot.rowEnd));
        Step<State<T>> step = default;
        step.K1 = shot.K1;
        var (y, q, dt, lastNorm, rowEnd, tally) = (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally);
        int steps = 0, rejects = 0;
        for (var n = 0; n < LastSteps; n++)
        {
            slide.Start = q;
            step.Start = y;
            var seen = slide.Seen;
            var vy = slide.VelocityY;
            var h = Pace<T>.ByDistance(Pace<T>.CapTurn(dt, slide.ω, slide.MaxTurn(control)), vy, Pace<T>.NextLine(y.X, y.Y, step.K1.X, rowEnd, bounds) - y.Y, out var atEnd);
            if (Pace<T>.MayStick(slide.Slip, h / vy) > zero)
            {
                slide.Fading(control, out var fade);
                // Not over an end of the run: a step can stop there.
                if (fade.Creeps > zero || fade.Ends > zero
                    && (slide.Slip <= Slide<T, TSurface>.NoSlip || !(Pace<T>.MayEnd(slide.Seen, slide.Rest(control), y, bounds) > zero)))
                {
                    break;
                }
                var cap = T.Min(fade.Cap, fade.Stable) * vy;
                if (cap < h)
                {
                    (h, atEnd) = (cap, zero);
                }
            }
            slide.Take(ref step, h, out var error);
            var norm = control.Norm(error, step.End);
            var next = Pace<T>.Next(norm, lastNorm, dt, h / vy, out var rejected);
            var tooMany = shot.Steps + n + 1 >= bounds.MaxSteps || !(next > 1e-14);
            if (tooMany || rejected > zero || !(slide.N > zero) || !PlainSteps<T, TSurface>.GoesByDistance(slide.VelocityX, slide.VelocityY))
            {
                (slide.Seen, slide.Dip) = (seen, slide.Dips.Start);
                if (tooMany || !(rejected > zero))
                {
                    break;
                }
                dt = next;
                steps++;
                rejects++;
                continue;
            }
            var ω = slide.ω;
            var end = Landing<T>.First(ref step, ref h, bounds, out var θ);
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
            steps++;
            if (end != Ending.None)
            {
                End(ref shot, y, q, tally, steps, rejects, end);
                return Why.Nothing;
            }
            (dt, lastNorm) = (next, norm);
            if (atEnd > zero)
            {
                rowEnd = slide.Surface.Enter(Pace<T>.EntersAt(y.Y, rowEnd));
                if (!slide.Surface.Joins)
                {
                    slide.Start = q;
                    slide.Rates(y, out step.K1);
                }
            }
        }
        if (!(y.Y > shot.y.Y + shortest))
        {
            return Why.Rare;
        }
        (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally) = (y, q, dt, lastNorm, rowEnd, tally);
        (shot.K1, shot.Seen, shot.Dip) = (step.K1, slide.Seen, slide.Dip);
        (shot.Steps, shot.Rejected) = (shot.Steps + steps, shot.Rejected + rejects);
        return Why.Nothing;
    }

    /// <summary>The last step of a shot that rolls, where it ends as it was meant to, with nothing else near. False: nothing was done.</summary>
    public static bool ReachEnd(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control)
    {
        T zero = 0.0;
        var roll = new Roll<T, TSurface> { Body = body, Surface = surface, Start = shot.q, ByDistance = true };
        roll.Surface.Enter(Pace<T>.Within(shot.y.Y, shot.rowEnd));
        Step<State<T>> step = default;
        (step.Start, step.K1) = (shot.y, shot.K1);
        var vy = shot.Grip.VelocityY;
        var h = Pace<T>.ByDistance(Pace<T>.CapTurn(shot.dt, shot.Grip.ω, Pace<T>.MaxTurnWhileRolling), vy, Pace<T>.NextLine(shot.y.X, shot.y.Y, step.K1.X, shot.rowEnd, bounds) - shot.y.Y, out _);
        roll.Take(ref step, h, out var error);
        var next = Pace<T>.Next(control.Norm(error, step.End), shot.lastNorm, shot.dt, h / vy, out var rejected);
        var ω = roll.ω;
        roll.Arrive(ref step, h, shot.Grip, out var after);
        if (PlainSteps<T, TSurface>.TooMany(shot, next, bounds) || T.Max(rejected, roll.MaySlip(shot.Grip, after)) > zero || !(after.N > zero) || !PlainSteps<T, TSurface>.GoesByDistance(after.VelocityX, after.VelocityY))
        {
            return false;
        }
        var end = Landing<T>.AtOnce(ref step, ref h, bounds);
        if (end == Ending.None)
        {
            return false;
        }
        var (y, q, tally) = (shot.y, shot.q, shot.Tally);
        tally.Took(step, h, 1.0);
        PlainSteps<T, TSurface>.Advance(ref step, ref y, ref q, ω);
        End(ref shot, y, q, tally, 1, 0, end);
        return true;
    }

    /// <summary>As <see cref="EndSliding"/>, for one that rolls: where its end takes a closer look.</summary>
    public static Why EndRolling(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control, T shortest)
    {
        T zero = 0.0;
        var roll = new Roll<T, TSurface> { Body = body, Surface = surface, ByDistance = true };
        roll.Surface.Enter(Pace<T>.Within(shot.y.Y, shot.rowEnd));
        Step<State<T>> step = default;
        step.K1 = shot.K1;
        var (y, q, dt, lastNorm, rowEnd, tally, grip) = (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally, shot.Grip);
        int steps = 0, rejects = 0;
        for (var n = 0; n < LastSteps; n++)
        {
            roll.Start = q;
            step.Start = y;
            var vy = grip.VelocityY;
            var h = Pace<T>.ByDistance(Pace<T>.CapTurn(dt, grip.ω, Pace<T>.MaxTurnWhileRolling), vy, Pace<T>.NextLine(y.X, y.Y, step.K1.X, rowEnd, bounds) - y.Y, out var atEnd);
            roll.Take(ref step, h, out var error);
            var norm = control.Norm(error, step.End);
            var next = Pace<T>.Next(norm, lastNorm, dt, h / vy, out var rejected);
            if (shot.Steps + n + 1 >= bounds.MaxSteps || !(next > 1e-14))
            {
                break;
            }
            if (rejected > zero)
            {
                dt = next;
                steps++;
                rejects++;
                continue;
            }
            var ω = roll.ω;
            roll.Arrive(ref step, h, grip, out var after);
            if (!(after.N > zero) || !PlainSteps<T, TSurface>.GoesByDistance(after.VelocityX, after.VelocityY) || Excess<T, TSurface>.First(ref roll, step, h, grip, after, out _))
            {
                break;
            }
            var end = Landing<T>.First(ref step, ref h, bounds, out var θ);
            if (end != Ending.None && θ < 1)
            {
                h = h * θ;
                var tries = 0;
                do
                {
                    roll.Take(ref step, h, out _);
                    roll.Arrive(ref step, h, grip, out _);
                }
                while (!Landing<T>.IsAt(end, ref step, ref h, bounds, ++tries));
            }
            tally.Took(step, h, 1.0);
            PlainSteps<T, TSurface>.Advance(ref step, ref y, ref q, ω);
            steps++;
            if (end != Ending.None)
            {
                End(ref shot, y, q, tally, steps, rejects, end);
                return Why.Nothing;
            }
            (dt, lastNorm, grip) = (next, norm, after);
            if (atEnd > zero)
            {
                rowEnd = roll.Surface.Enter(Pace<T>.EntersAt(y.Y, rowEnd));
                if (!roll.Surface.Joins)
                {
                    roll.Start = q;
                    roll.GripAt(y, out grip);
                    if (grip.Excess > zero)
                    {
                        return Why.Rare;
                    }
                    roll.Rates(y, out step.K1);
                }
            }
        }
        if (!(y.Y > shot.y.Y + shortest))
        {
            return Why.Rare;
        }
        (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally, shot.Grip) = (y, q, dt, lastNorm, rowEnd, tally, grip);
        shot.K1 = step.K1;
        (shot.Steps, shot.Rejected) = (shot.Steps + steps, shot.Rejected + rejects);
        return Why.Nothing;
    }

    private static void End(ref Moving<T> shot, in State<T> y, in Quat<T> q, in Tally<T> tally, int steps, int rejects, Ending end)
    {
        (shot.y, shot.q, shot.Tally) = (y, q, tally);
        shot.Steps += steps;
        shot.Rejected += rejects;
        shot.Ended = end;
    }
}
