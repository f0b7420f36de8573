using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// Drives many shots on one lane, several side by side. The lanes take plain steps: by distance, explicit, with nothing near. What a single shot meets (an event, the start of slip, a step in time) is left to its own
/// <see cref="Run{T,TSurface,TRecorder}"/>, which starts again from the state before that step; then the shot comes back to a lane, of sliding or of rolling, as it may be. Lanes repeat the operations of one shot in their
/// order, so that in doubles a lane's numbers are those of the shot alone, whatever its neighbours are.
/// </summary>
internal sealed class Pack<T, TSurface, TOne>
    where T : struct, ILanes<T>, IReal<T>
    where TSurface : struct, ISurfaceOfLanes<T, TOne>
    where TOne : struct, ISurface<Real>
{
    private readonly double shortest = 2 * T.Lane(T.Sliver, 0);

    private readonly int[] shotOf = new int[T.Count];
    private readonly Stack<int> sliding = new(), rolling = new();
    private Run<Real, TOne, Tally<Real>>[] runs = [];

    private Slide<T, TSurface> slide;
    private Roll<T, TSurface> roll;
    private Bounds<T> bounds;
    private Control<T> control;
    private Grip<T> grip;
    private State<T> y;
    private Quat<T> q;
    private T dt, lastNorm, rowEnd, steps, mostSteps;
    private Tally<T> tally;
    private Step<State<T>> step;

    // One bit for each lane that holds a shot.
    private uint active;

    /// <param name="surface">The surface under the lanes, still without a law.</param>
    /// <param name="body">A body of the pack: only its switches are read, the same for all.</param>
    /// <param name="mostSteps">Steps after which a run is ended.</param>
    public Pack(TSurface surface, in Body<Real> body, int mostSteps)
    {
        slide.Surface = roll.Surface = surface;
        slide.ByDistance = roll.ByDistance = true;
        slide.Body.Effects = body.Effects;
        roll.Body = slide.Body;
        this.mostSteps = mostSteps - 1;
    }

    /// <summary>Brings runs that have begun to their end.</summary>
    public void Finish(Run<Real, TOne, Tally<Real>>[] begun, int count)
    {
        runs = begun;
        for (var i = count - 1; i >= 0; i--)
        {
            Queue(i);
        }
        while (sliding.Count + rolling.Count > 0)
        {
            Fill(sliding);
            while (active != 0)
            {
                SlideOn();
            }
            Fill(rolling);
            while (active != 0)
            {
                RollOn();
            }
        }
    }

    // Where a run goes on that has not ended; one that can take no plain step now is brought to where it can.
    private void Queue(int i)
    {
        ref var run = ref runs[i];
        if (run.Ended == Ending.None && !run.IsPlain)
        {
            run.Ended = run.Continue();
        }
        if (run.Ended == Ending.None)
        {
            (run.Phase == Phase.Slide ? sliding : rolling).Push(i);
        }
    }

    private void Fill(Stack<int> waiting)
    {
        for (var lane = 0; lane < T.Count; lane++)
        {
            Fill(lane, waiting);
        }
    }

    private void Fill(int lane, Stack<int> waiting)
    {
        if (!waiting.TryPop(out var i))
        {
            active &= ~(1u << lane);
            return;
        }
        ref var run = ref runs[i];
        active |= 1u << lane;
        shotOf[lane] = i;
        LaneCopy<T>.Set(ref slide.Body, lane, run.slide.Body, Body<Real>.Numbers);
        LaneCopy<T>.Set(ref bounds, lane, run.bounds, Bounds<Real>.Numbers);
        LaneCopy<T>.Set(ref control, lane, run.control);
        slide.Surface.SetLane(lane, run.slide.Surface);
        if (run.Phase == Phase.Roll)
        {
            LaneCopy<T>.Set(ref roll.Body, lane, run.slide.Body, Body<Real>.Numbers);
            roll.Surface.SetLane(lane, run.slide.Surface);
        }
        Load(lane, ref run);
    }

    // The moving part of a run, to its lane.
    private void Load(int lane, ref Run<Real, TOne, Tally<Real>> run)
    {
        LaneCopy<T>.Set(ref y, lane, run.y);
        LaneCopy<T>.Set(ref q, lane, run.q);
        LaneCopy<T>.Set(ref step.K1, lane, run.step.K1);
        T.SetLane(ref dt, lane, run.dt);
        T.SetLane(ref lastNorm, lane, run.lastNorm);
        T.SetLane(ref rowEnd, lane, run.rowEnd);
        T.SetLane(ref steps, lane, run.Steps);
        LaneCopy<T>.Set(ref tally, lane, run.recorder);
        double within = Pace<Real>.Within(run.y.Y, run.rowEnd);
        if (run.Phase == Phase.Slide)
        {
            LaneCopy<T>.Set(ref slide.Seen, lane, run.slide.Seen);
            if (slide.Body.HasDips)
            {
                LaneCopy<T>.Set(ref slide.Dip, lane, run.slide.Dip);
            }
            slide.Surface.Enter(lane, within);
            return;
        }
        LaneCopy<T>.Set(ref grip, lane, run.grip);
        roll.Surface.Enter(lane, within);
    }

    // And back.
    private void Store(int lane, ref Run<Real, TOne, Tally<Real>> run)
    {
        LaneCopy<T>.Get(y, lane, out run.y);
        LaneCopy<T>.Get(q, lane, out run.q);
        LaneCopy<T>.Get(step.K1, lane, out run.step.K1);
        run.dt = T.Lane(dt, lane);
        run.lastNorm = T.Lane(lastNorm, lane);
        run.rowEnd = T.Lane(rowEnd, lane);
        run.Steps = (int)T.Lane(steps, lane);
        LaneCopy<T>.Get(tally, lane, out run.recorder);
        if (run.Phase == Phase.Slide)
        {
            LaneCopy<T>.Get(slide.Seen, lane, out run.slide.Seen);
            if (slide.Body.HasDips)
            {
                LaneCopy<T>.Get(slide.Dip, lane, out run.slide.Dip);
            }
            run.slide.ByDistance = true;
            run.slide.Surface.Enter(Pace<Real>.Within(run.y.Y, run.rowEnd));
            return;
        }
        LaneCopy<T>.Get(grip, lane, out run.grip);
        run.roll.ByDistance = true;
        run.roll.Surface.Enter(Pace<Real>.Within(run.y.Y, run.rowEnd));
    }

    // The run takes the step itself, from the state before it, and comes back to the lane if it goes on as before.
    private void Alone(int lane, Phase phase, Stack<int> waiting)
    {
        var i = shotOf[lane];
        ref var run = ref runs[i];
        Store(lane, ref run);
        // A step too short for the lane's numbers would be undone there: the run takes the next one too.
        var from = (double)run.y.Y;
        do
        {
            run.Ended = run.Continue();
        }
        while (run.Ended == Ending.None && run.Phase == phase && run.y.Y - from < shortest);
        if (run.Ended == Ending.None && run.Phase == phase)
        {
            Load(lane, ref run);
            return;
        }
        Queue(i);
        Fill(lane, waiting);
    }

    private void SlideOn()
    {
        T zero = 0.0, one = 1.0;
        slide.Start = q;
        step.Start = y;
        var seen = slide.Seen;
        var vy = slide.VelocityY;
        var h = Pace<T>.ByDistance(Pace<T>.CapTurn(dt, slide.ω), vy, Pace<T>.NextLine(y.Y, rowEnd, bounds) - y.Y, out var atEnd);
        var special = zero;
        var near = Pace<T>.MayStick(slide.Slip, h / vy);
        if ((T.Mask(near) & active) != 0)
        {
            slide.Fading(control, out var fade);
            special = T.IfLess(zero, near, T.Max(fade.Creeps, fade.Ends), zero);
            var cap = T.Min(fade.Cap, fade.Stable) * vy;
            var capped = T.IfLess(cap, h, near, zero);
            h = T.IfLess(zero, capped, cap, h);
            atEnd = T.IfLess(zero, capped, zero, atEnd);
        }

        slide.Take(ref step, h, out var error);
        var norm = control.Norm(error);
        var next = Pace<T>.Next(norm, lastNorm, dt, h / vy, out var rejected);
        special = T.Max(special, T.Max(TooMany(next), T.IfLess(zero, rejected, zero, T.Max(Pace<T>.MayEnd(step, bounds), T.IfLess(zero, slide.N, GoesByTime(slide.VelocityX, slide.VelocityY), one)))));
        var taken = T.IfLess(zero, T.Max(special, rejected), zero, one);
        tally.Took(step, h, taken);
        var alone = T.Mask(special) & active;

        // A step that is taken again starts from what was seen before it.
        Commit(taken, special, next, norm, slide.ω, out var all);
        if (!all)
        {
            LaneCopy<T>.Take(ref seen, slide.Seen, taken);
            slide.Seen = seen;
            if (slide.Body.HasDips)
            {
                LaneCopy<T>.Take(ref slide.Dips.Start, slide.Dip, taken);
                slide.Dip = slide.Dips.Start;
            }
        }
        var rowsEnd = T.Mask(T.IfLess(zero, taken, atEnd, zero)) & active;
        if (rowsEnd != 0)
        {
            EnterRows(rowsEnd, ref slide.Surface);
            slide.Start = q;
            seen = slide.Seen;
            slide.Dips.Start = slide.Dip;
            slide.Rates(y, out step.K2);
            var entered = T.IfLess(zero, taken, atEnd, zero);
            LaneCopy<T>.Take(ref step.K1, step.K2, entered);
            LaneCopy<T>.Take(ref seen, slide.Seen, entered);
            slide.Seen = seen;
            if (slide.Body.HasDips)
            {
                LaneCopy<T>.Take(ref slide.Dips.Start, slide.Dip, entered);
                slide.Dip = slide.Dips.Start;
            }
        }
        for (; alone != 0; alone &= alone - 1)
        {
            Alone(System.Numerics.BitOperations.TrailingZeroCount(alone), Phase.Slide, sliding);
        }
    }

    private void RollOn()
    {
        T zero = 0.0, one = 1.0;
        roll.Start = q;
        step.Start = y;
        var vy = grip.VelocityY;
        var h = Pace<T>.ByDistance(Pace<T>.CapTurn(dt, grip.ω), vy, Pace<T>.NextLine(y.Y, rowEnd, bounds) - y.Y, out var atEnd);
        roll.Take(ref step, h, out var error);
        var norm = control.Norm(error);
        var next = Pace<T>.Next(norm, lastNorm, dt, h / vy, out var rejected);
        var ω = roll.ω;
        roll.Arrive(ref step, grip, out var after);
        var special = T.Max(Pace<T>.MayEnd(step, bounds), T.IfLess(zero, after.N, GoesByTime(after.VelocityX, after.VelocityY), one));
        special = T.Max(special, roll.MaySlip(step, h, grip, after, T.IfLess(zero, T.Max(rejected, special), zero, one)));
        special = T.Max(TooMany(next), T.IfLess(zero, rejected, zero, special));
        var taken = T.IfLess(zero, T.Max(special, rejected), zero, one);
        tally.Took(step, h, taken);
        var alone = T.Mask(special) & active;
        Commit(taken, special, next, norm, ω, out _);
        LaneCopy<T>.Take(ref grip, after, taken);

        var entered = T.IfLess(zero, taken, atEnd, zero);
        var rowsEnd = T.Mask(entered) & active;
        if (rowsEnd != 0)
        {
            // A new row may bring another friction: is there still grip? If not, the run itself must know it before it goes on.
            EnterRows(rowsEnd, ref roll.Surface);
            roll.Start = q;
            roll.GripAt(y, out after);
            roll.Rates(y, out step.K2);
            LaneCopy<T>.Take(ref step.K1, step.K2, entered);
            LaneCopy<T>.Take(ref grip, after, entered);
            for (var slips = T.Mask(T.IfLess(zero, after.Excess, entered, zero)) & active; slips != 0; slips &= slips - 1)
            {
                var lane = System.Numerics.BitOperations.TrailingZeroCount(slips);
                Store(lane, ref runs[shotOf[lane]]);
                runs[shotOf[lane]].Ended = runs[shotOf[lane]].SlipAtRow();
                Queue(shotOf[lane]);
                Fill(lane, rolling);
            }
        }
        for (; alone != 0; alone &= alone - 1)
        {
            Alone(System.Numerics.BitOperations.TrailingZeroCount(alone), Phase.Roll, rolling);
        }
    }

    private T TooMany(T next)
    {
        T one = 1.0, zero = 0.0;
        return T.IfLess(steps, mostSteps, T.IfLess(1e-14, next, zero, one), one);
    }

    private static T GoesByTime(T vx, T vy)
    {
        T one = 1.0, zero = 0.0;
        return T.IfLess(T.Max(T.Abs(vx), 0.5), vy, zero, one);
    }

    // Takes the step over in the lanes that took it; a rejected step leaves only a shorter one to try.
    private void Commit(T taken, T special, T next, T norm, Vec3<T> ω, out bool all)
    {
        T zero = 0.0, one = 1.0;
        var whole = T.Count == 32 ? uint.MaxValue : (1u << T.Count) - 1;
        all = T.Mask(taken) == whole;
        var turned = (Quat<T>.Exp(step.End.Turn) * q).Normalised();
        step.End.Turn = new(zero, zero, zero);
        step.K7.Turn = step.K7.Time * ω;
        if (all)
        {
            (y, q, step.K1, lastNorm, dt) = (step.End, turned, step.K7, norm, next);
            steps = steps + one;
            return;
        }
        LaneCopy<T>.Take(ref y, step.End, taken);
        LaneCopy<T>.Take(ref q, turned, taken);
        LaneCopy<T>.Take(ref step.K1, step.K7, taken);
        lastNorm = T.IfLess(zero, taken, norm, lastNorm);
        dt = T.IfLess(zero, special, dt, next);
        steps = T.IfLess(zero, special, steps, steps + one);
    }

    private void EnterRows(uint lanes, ref TSurface surface)
    {
        var at = Pace<T>.EntersAt(y.Y, rowEnd);
        for (; lanes != 0; lanes &= lanes - 1)
        {
            var lane = System.Numerics.BitOperations.TrailingZeroCount(lanes);
            T.SetLane(ref rowEnd, lane, surface.Enter(lane, T.Lane(at, lane)));
        }
    }
}
