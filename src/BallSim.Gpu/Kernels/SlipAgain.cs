using BallSim.Friction;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>
/// What a shot in ten meets and nearly all rare events are made of: the demand of rolling comes near the limit of grip, slip begins there, and for a while its direction is stiff. As <see cref="Run{T,TSurface,TRecorder}"/> does
/// it, without the rare paths beside it; where one of these meets something else it changes nothing more and says so.
/// </summary>
internal static class SlipAgain<T, TSurface>
    where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    // A kernel must end whatever happens; no stretch of slip is stiff for so many steps, and no step of rolling taken again so often.
    private const int MostStiff = 1000, MostTries = 20;

    /// <summary>
    /// One step of rolling, looked at closely. Why.Nothing: taken, and a plain step can be taken next; Why.SlipsAtRow: taken, and slip begins at its end; Why.AtLimit: taken to where the demand passes the limit in it. Why.MayEnd,
    /// Why.Rare: nothing was done.
    /// </summary>
    /// <param name="shot">That rolls.</param>
    /// <param name="body">Ball.</param>
    /// <param name="surface">Under it.</param>
    /// <param name="bounds">Of the run.</param>
    /// <param name="control">Of the steps.</param>
    /// <param name="shortest">A step that brings it less far down-lane, m, is a rare event.</param>
    public static Why Look(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control, T shortest)
    {
        T zero = 0.0;
        var roll = OnTheSpot(shot, body, surface);
        Step<State<T>> step = default;
        var next = shot;
        if (!Steps(ref next, ref roll, ref step, bounds, control, out var h, out var atEnd))
        {
            return Why.Rare;
        }
        var ω = roll.ω;
        roll.Arrive(ref step, h, next.Grip, out var after);
        var passes = Excess<T, TSurface>.First(ref roll, step, h, next.Grip, after, out var between);
        if (passes)
        {
            Excess<T, TSurface>.Land(ref roll, ref step, ref h, next.Grip, ref after, between, control);
        }
        if (!(after.N > zero) || Pace<T>.IsLost(step) || !passes && (!(h > shortest) || !PlainSteps<T, TSurface>.GoesByDistance(after.VelocityX, after.VelocityY)))
        {
            return Why.Rare;
        }
        if (Pace<T>.MayEnd(step, bounds) > zero)
        {
            return passes ? Why.Rare : Why.MayEnd;
        }
        next.Tally.Took(step, h, 1.0);
        PlainSteps<T, TSurface>.Advance(ref step, ref next.y, ref next.q, ω);
        next.Grip = after;
        var why = passes ? Why.AtLimit : Why.Nothing;
        if (!passes && atEnd > zero)
        {
            next.rowEnd = roll.Surface.Enter(Pace<T>.EntersAt(next.y.Y, next.rowEnd));
            if (!roll.Surface.Joins)
            {
                roll.Start = next.q;
                roll.GripAt(next.y, out next.Grip);
                why = next.Grip.Excess > zero ? Why.SlipsAtRow : Why.Nothing;
                roll.Rates(next.y, out step.K1);
            }
        }
        next.K1 = step.K1;
        shot = next;
        return why;
    }

    private static Roll<T, TSurface> OnTheSpot(in Moving<T> shot, in Body<T> body, TSurface surface)
    {
        var roll = new Roll<T, TSurface> { Body = body, Surface = surface, Start = shot.q, ByDistance = true };
        roll.Surface.Enter(Pace<T>.Within(shot.y.Y, shot.rowEnd));
        return roll;
    }

    // The next step of rolling, taken until it stands; false: there are too many. The shot has counted them.
    private static bool Steps(ref Moving<T> shot, ref Roll<T, TSurface> roll, ref Step<State<T>> step, in Bounds<T> bounds, in Control<T> control, out T h, out T atEnd)
    {
        T zero = 0.0;
        (step.Start, step.K1) = (shot.y, shot.K1);
        var vy = shot.Grip.VelocityY;
        T norm;
        for (var tries = 0; ; tries++)
        {
            h = Pace<T>.ByDistance(Pace<T>.CapTurn(shot.dt, shot.Grip.ω, Pace<T>.MaxTurnWhileRolling), vy, Pace<T>.NextLine(shot.y.X, shot.y.Y, step.K1.X, shot.rowEnd, bounds) - shot.y.Y, out atEnd);
            roll.Take(ref step, h, out var error);
            norm = control.Norm(error, step.End);
            shot.dt = Pace<T>.Next(norm, shot.lastNorm, shot.dt, h / vy, out var rejected);
            shot.Steps++;
            if (shot.Steps >= bounds.MaxSteps || !(shot.dt > 1e-14) || tries == MostTries)
            {
                return false;
            }
            if (!(rejected > zero))
            {
                break;
            }
            shot.Rejected++;
        }
        shot.lastNorm = norm;
        return true;
    }

    /// <summary>The start of slip: where rolling has come to the limit of grip, on a new row, or at the end of slip. False: it is not as simple as that, and nothing was done.</summary>
    /// <param name="shot">That rolls, and slides then.</param>
    /// <param name="body">Ball.</param>
    /// <param name="surface">Under it.</param>
    /// <param name="bounds">Of the run.</param>
    /// <param name="control">Of the steps.</param>
    /// <param name="why">It slips: AtLimit, SlipsAtRow, CannotRoll.</param>
    public static bool Start(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control, Why why)
    {
        var roll = OnTheSpot(shot, body, surface);
        Step<State<T>> step = default;
        var next = shot;
        if (++next.Transitions > bounds.MaxTransitions)
        {
            return false;
        }
        if (why != Why.CannotRoll)
        {
            next.Tally.Changed(Phase.Roll, Phase.Slide, next.y, next.q);
        }
        var jumps = why != Why.AtLimit;
        var time = StartOfSlip<T, TSurface>.Seconds(control, jumps);
        StartOfSlip<T, TSurface>.RollPast(ref roll, ref step, next.y, next.q, time, ref next.Grip);
        if (Pace<T>.IsLost(step) || Pace<T>.MayEnd(step, bounds) > 0.0)
        {
            return false;
        }
        next.Tally.Took(step, time, 1.0);
        PlainSteps<T, TSurface>.Advance(ref step, ref next.y, ref next.q, roll.ω);
        var slide = new Slide<T, TSurface> { Body = roll.Body, Surface = roll.Surface, Seen = next.Seen };
        StartOfSlip<T, TSurface>.Push(ref roll, ref slide, ref next.y, next.q, time, jumps);
        next.dt = T.Min(next.dt, time);
        (next.Seen, next.Phase, next.Stiff) = (slide.Seen, Phase.Slide, 1.0);
        shot = next;
        return true;
    }

    /// <summary>Stiff steps of sliding: until a plain step can be taken with no less than the least slip, m/s (Why.Nothing), slip has come to its end (Why.Sticks), or something else is met (Why.Rare), from the state before that step.</summary>
    public static Why Relax(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control, T least)
    {
        T zero = 0.0;
        var slide = new Slide<T, TSurface> { Body = body, Surface = surface, Seen = shot.Seen, Dip = shot.Dip };
        slide.Surface.Roam();
        Step<State<T>> step = default;
        var (y, q, dt, lastNorm, rowEnd, tally) = (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally);
        var why = Why.Rare;
        for (var n = 0; n < MostStiff; n++)
        {
            slide.Start = q;
            step.Start = y;
            slide.Rates(y, out step.K1);
            slide.Fading(control, out var fade);
            if (T.Max(fade.Creeps, fade.Ends) > zero)
            {
                why = Why.Sticks;
                break;
            }
            if (!(fade.Stable < dt * 0.5) && !(slide.Slip < least))
            {
                shot.Stiff = zero;
                break;
            }
            slide.Linearise(y);
            var h = T.Min(Pace<T>.CapTurn(dt, slide.ω), fade.Cap);
            RosenbrockW3<Slide<T, TSurface>, State<T>, T>.Take(ref slide, ref step, h, out var error);
            var next = Control<T>.NextStiff(control.Norm(error, step.End), h, out var rejected);
            if (PlainSteps<T, TSurface>.TooMany(shot, next, bounds))
            {
                break;
            }
            if (rejected > zero)
            {
                dt = next;
                shot.Steps++;
                shot.Rejected++;
                continue;
            }
            if (!(slide.N > zero) || Pace<T>.MayEnd(step, bounds) > zero || Pace<T>.IsLost(step))
            {
                break;
            }
            tally.Took(step, h, 1.0);
            PlainSteps<T, TSurface>.Advance(ref step, ref y, ref q, slide.ω);
            (dt, lastNorm) = (next, 1.0);
            shot.Steps++;
        }
        if (!(shot.Stiff > zero))
        {
            // The slopes at the start of a stretch.
            slide.ByDistance = PlainSteps<T, TSurface>.GoesByDistance(slide.VelocityX, slide.VelocityY);
            if (slide.ByDistance)
            {
                rowEnd = slide.Surface.Enter(y.Y);
                slide.Rates(y, out step.K1);
                why = Why.Nothing;
            }
            else
            {
                shot.Stiff = 1.0;
            }
        }
        (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally) = (y, q, dt, lastNorm, rowEnd, tally);
        (shot.K1, shot.Seen, shot.Dip) = (step.K1, slide.Seen, slide.Dip);
        return why;
    }
}
