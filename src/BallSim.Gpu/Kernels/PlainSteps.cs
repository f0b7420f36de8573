using BallSim.Friction;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>
/// Plain steps of one shot: by distance, explicit, with nothing near. As <see cref="Pack{T,TSurface,TOne}"/> does for lanes; what else a shot meets is left to <see cref="Run{T,TSurface,TRecorder}"/>,
/// which starts again from the state before that step. The ends that a step may reach and the steps themselves are planned and judged by <see cref="Pace{T}"/>.
/// </summary>
internal static class PlainSteps<T, TSurface>
    where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    /// <summary>A step of sliding, taken or to be taken again (Why.Nothing); or why none was taken. The surface is in the shot's row.</summary>
    public static Why Slide(ref Moving<T> shot, in Body<T> body, ref TSurface surface, in Bounds<T> bounds, in Control<T> control)
    {
        T zero = 0.0;
        var slide = new Slide<T, TSurface> { Body = body, Surface = surface, Start = shot.q, ByDistance = true, Seen = shot.Seen, Dip = shot.Dip };
        Step<State<T>> step = default;
        (step.Start, step.K1) = (shot.y, shot.K1);
        var vy = slide.VelocityY;
        var h = Pace<T>.ByDistance(Pace<T>.CapTurn(shot.dt, slide.ω, slide.MaxTurn(control)), vy, Pace<T>.NextLine(shot.y.X, shot.y.Y, step.K1.X, shot.rowEnd, bounds) - shot.y.Y, out var atEnd);
        if (Pace<T>.MayStick(slide.Slip, h / vy) > zero)
        {
            slide.Fading(control, out var fade);
            if (T.Max(fade.Creeps, fade.Ends) > zero)
            {
                return Why.Sticks;
            }
            var cap = T.Min(fade.Cap, fade.Stable) * vy;
            if (cap < h)
            {
                (h, atEnd) = (cap, zero);
            }
        }

        slide.Take(ref step, h, out var error);
        if (!Stands(ref shot, step.End, error, h / vy, bounds, control, out var norm, out var next, out var why))
        {
            return why;
        }
        var rare = !(slide.N > zero) || !GoesByDistance(slide.VelocityX, slide.VelocityY);
        if (rare || Pace<T>.MayEnd(step, bounds) > zero)
        {
            return rare ? Why.Rare : Why.MayEnd;
        }
        shot.Tally.Took(step, h, 1.0);
        Advance(ref step, ref shot.y, ref shot.q, slide.ω);
        (shot.dt, shot.lastNorm) = (next, norm);
        shot.Steps++;
        if (atEnd > zero)
        {
            shot.rowEnd = surface.Enter(Pace<T>.EntersAt(shot.y.Y, shot.rowEnd));
            if (!surface.Joins)
            {
                (slide.Surface, slide.Start) = (surface, shot.q);
                slide.Rates(shot.y, out step.K1);
            }
        }
        (shot.K1, shot.Seen, shot.Dip) = (step.K1, slide.Seen, slide.Dip);
        return Why.Nothing;
    }

    /// <summary>The same of rolling.</summary>
    public static Why Roll(ref Moving<T> shot, in Body<T> body, ref TSurface surface, in Bounds<T> bounds, in Control<T> control)
    {
        T zero = 0.0;
        var roll = new Roll<T, TSurface> { Body = body, Surface = surface, Start = shot.q, ByDistance = true };
        Step<State<T>> step = default;
        (step.Start, step.K1) = (shot.y, shot.K1);
        var vy = shot.Grip.VelocityY;
        var h = Pace<T>.ByDistance(Pace<T>.CapTurn(shot.dt, shot.Grip.ω, Pace<T>.MaxTurnWhileRolling), vy, Pace<T>.NextLine(shot.y.X, shot.y.Y, step.K1.X, shot.rowEnd, bounds) - shot.y.Y, out var atEnd);
        roll.Take(ref step, h, out var error);
        if (!Stands(ref shot, step.End, error, h / vy, bounds, control, out var norm, out var next, out var why))
        {
            return why;
        }
        var ω = roll.ω;
        roll.Arrive(ref step, h, shot.Grip, out var after);
        var maySlip = roll.MaySlip(shot.Grip, after) > zero;
        var rare = !(after.N > zero) || !GoesByDistance(after.VelocityX, after.VelocityY);
        if (rare || maySlip || Pace<T>.MayEnd(step, bounds) > zero)
        {
            return rare ? Why.Rare : maySlip ? Why.MaySlip : Why.MayEnd;
        }
        shot.Tally.Took(step, h, 1.0);
        Advance(ref step, ref shot.y, ref shot.q, ω);
        (shot.dt, shot.lastNorm, shot.Grip) = (next, norm, after);
        shot.Steps++;
        if (atEnd > zero)
        {
            shot.rowEnd = surface.Enter(Pace<T>.EntersAt(shot.y.Y, shot.rowEnd));
            if (!surface.Joins)
            {
                (roll.Surface, roll.Start) = (surface, shot.q);
                roll.GripAt(shot.y, out shot.Grip);
                why = shot.Grip.Excess > zero ? Why.SlipsAtRow : Why.Nothing;
                roll.Rates(shot.y, out step.K1);
            }
        }
        shot.K1 = step.K1;
        return why;
    }

    // Whether a step of so many seconds is taken as it is. If not: it must be taken again, shorter (Why.Nothing), or there are too many.
    private static bool Stands(ref Moving<T> shot, in State<T> end, in State<T> error, T seconds, in Bounds<T> bounds, in Control<T> control, out T norm, out T next, out Why why)
    {
        T zero = 0.0;
        norm = control.Norm(error, end);
        next = Pace<T>.Next(norm, shot.lastNorm, shot.dt, seconds, out var rejected);
        var tooMany = TooMany(shot, next, bounds);
        why = tooMany ? Why.Rare : Why.Nothing;
        if (tooMany || !(rejected > zero))
        {
            return !tooMany;
        }
        shot.dt = next;
        shot.Steps++;
        shot.Rejected++;
        return false;
    }

    internal static bool TooMany(in Moving<T> shot, T next, in Bounds<T> bounds) => shot.Steps >= bounds.MaxSteps - 1 || !(next > 1e-14);

    internal static bool GoesByDistance(T vx, T vy) => vy > 0.5 && vy > T.Abs(vx);

    internal static void Advance(ref Step<State<T>> step, ref State<T> y, ref Quat<T> q, Vec3<T> ω)
    {
        T zero = 0.0;
        q = q.Turned(step.End.Turn).Normalised();
        y = step.End;
        y.Turn = new(zero, zero, zero);
        step.K1 = step.K7;
        step.K1.Turn = step.K7.Time * ω;
    }
}
