using BallSim.Friction;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>
/// Plain steps of one shot, as many as it can take: by distance, explicit, with nothing near. As <see cref="Pack{T,TSurface,TOne}"/> does for lanes; what else a shot meets is left to <see cref="Run{T,TSurface,TRecorder}"/>,
/// which starts again from the state before that step. The ends that a step may reach and the steps themselves are planned and judged by <see cref="Pace{T}"/>.
/// </summary>
internal static class PlainSteps<T, TSurface>
    where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    // No shot takes as many steps in one stretch; a kernel must end whatever happens.
    private const int Most = 100_000;

    /// <summary>Slides on; why no further.</summary>
    public static Why Slide(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control)
    {
        T zero = 0.0;
        var slide = new Slide<T, TSurface> { Body = body, Surface = surface, ByDistance = true, Seen = shot.Seen, Dip = shot.Dip };
        slide.Surface.Enter(Pace<T>.Within(shot.y.Y, shot.rowEnd));
        Step<State<T>> step = default;
        step.K1 = shot.K1;
        var (y, q, dt, lastNorm, rowEnd, tally) = (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally);
        var why = Why.Rare;
        for (var n = 0; n < Most; n++)
        {
            slide.Start = q;
            step.Start = y;
            var seen = slide.Seen;
            var vy = slide.VelocityY;
            var h = Pace<T>.ByDistance(Pace<T>.CapTurn(dt, slide.ω, slide.MaxTurn(control)), vy, Pace<T>.NextLine(y.X, y.Y, step.K1.X, rowEnd, bounds) - y.Y, out var atEnd);
            if (Pace<T>.MayStick(slide.Slip, h / vy) > zero)
            {
                slide.Fading(control, out var fade);
                if (T.Max(fade.Creeps, fade.Ends) > zero)
                {
                    why = Why.Sticks;
                    break;
                }
                var cap = T.Min(fade.Cap, fade.Stable) * vy;
                if (cap < h)
                {
                    (h, atEnd) = (cap, zero);
                }
            }

            slide.Take(ref step, h, out var error);
            var norm = control.Norm(error);
            var next = Pace<T>.Next(norm, lastNorm, dt, h / vy, out var rejected);
            if (TooMany(shot, next, bounds))
            {
                (slide.Seen, slide.Dip) = (seen, slide.Dips.Start);
                break;
            }
            if (rejected > zero)
            {
                dt = next;
                (slide.Seen, slide.Dip) = (seen, slide.Dips.Start);
                shot.Steps++;
                shot.Rejected++;
                continue;
            }
            if (Pace<T>.MayEnd(step, bounds) > zero || !(slide.N > zero) || !GoesByDistance(slide.VelocityX, slide.VelocityY))
            {
                why = slide.N > zero && GoesByDistance(slide.VelocityX, slide.VelocityY) ? Why.MayEnd : Why.Rare;
                (slide.Seen, slide.Dip) = (seen, slide.Dips.Start);
                break;
            }
            tally.Took(step, h, 1.0);
            Advance(ref step, ref y, ref q, slide.ω);
            (dt, lastNorm) = (next, norm);
            shot.Steps++;
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
        (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally) = (y, q, dt, lastNorm, rowEnd, tally);
        (shot.K1, shot.Seen, shot.Dip) = (step.K1, slide.Seen, slide.Dip);
        return why;
    }

    /// <summary>Rolls on; why no further.</summary>
    public static Why Roll(ref Moving<T> shot, in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control)
    {
        T zero = 0.0;
        var roll = new Roll<T, TSurface> { Body = body, Surface = surface, ByDistance = true };
        roll.Surface.Enter(Pace<T>.Within(shot.y.Y, shot.rowEnd));
        Step<State<T>> step = default;
        step.K1 = shot.K1;
        var (y, q, dt, lastNorm, rowEnd, tally, grip) = (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally, shot.Grip);
        var why = Why.Rare;
        for (var n = 0; n < Most && why == Why.Rare; n++)
        {
            roll.Start = q;
            step.Start = y;
            var vy = grip.VelocityY;
            var h = Pace<T>.ByDistance(Pace<T>.CapTurn(dt, grip.ω, Pace<T>.MaxTurnWhileRolling), vy, Pace<T>.NextLine(y.X, y.Y, step.K1.X, rowEnd, bounds) - y.Y, out var atEnd);
            roll.Take(ref step, h, out var error);
            var norm = control.Norm(error);
            var next = Pace<T>.Next(norm, lastNorm, dt, h / vy, out var rejected);
            if (TooMany(shot, next, bounds))
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
            var ω = roll.ω;
            roll.Arrive(ref step, h, grip, out var after);
            var maySlip = roll.MaySlip(ref step, h, grip, after, 1.0) > zero;
            if (Pace<T>.MayEnd(step, bounds) > zero || maySlip || !(after.N > zero) || !GoesByDistance(after.VelocityX, after.VelocityY))
            {
                why = !(after.N > zero) || !GoesByDistance(after.VelocityX, after.VelocityY) ? Why.Rare : maySlip ? Why.MaySlip : Why.MayEnd;
                break;
            }
            tally.Took(step, h, 1.0);
            Advance(ref step, ref y, ref q, ω);
            (dt, lastNorm, grip) = (next, norm, after);
            shot.Steps++;
            if (atEnd > zero)
            {
                rowEnd = roll.Surface.Enter(Pace<T>.EntersAt(y.Y, rowEnd));
                if (!roll.Surface.Joins)
                {
                    roll.Start = q;
                    roll.GripAt(y, out grip);
                    why = grip.Excess > zero ? Why.SlipsAtRow : Why.Rare;
                    roll.Rates(y, out step.K1);
                }
            }
        }
        (shot.y, shot.q, shot.dt, shot.lastNorm, shot.rowEnd, shot.Tally, shot.Grip) = (y, q, dt, lastNorm, rowEnd, tally, grip);
        shot.K1 = step.K1;
        return why;
    }

    internal static bool TooMany(in Moving<T> shot, T next, in Bounds<T> bounds) => shot.Steps >= bounds.MaxSteps - 1 || !(next > 1e-14);

    internal static bool GoesByDistance(T vx, T vy) => vy > 0.5 && vy > T.Abs(vx);

    internal static void Advance(ref Step<State<T>> step, ref State<T> y, ref Quat<T> q, Vec3<T> ω)
    {
        T zero = 0.0;
        q = (Quat<T>.Exp(step.End.Turn) * q).Normalised();
        y = step.End;
        y.Turn = new(zero, zero, zero);
        step.K1 = step.K7;
        step.K1.Turn = step.K7.Time * ω;
    }
}
