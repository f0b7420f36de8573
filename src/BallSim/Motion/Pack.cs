using System.Numerics;
using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// Drives many shots on one lane, several side by side. The lanes take plain steps, by distance, explicit, with nothing near; those of doubles also what most shots meet between them, see <see cref="IChanges{TOne}"/>. What else a single shot
/// meets (an end of the run, a step in time) is left to its own <see cref="Run{T,TSurface,TRecorder}"/>, which starts again from the state before that step; then the shot comes back to a lane, of sliding or of rolling, as it may be. Lanes
/// repeat the operations of one shot in their order, so that in doubles a lane's numbers are those of the shot alone, whatever its neighbours are.
/// </summary>
internal sealed partial class Pack<T, TSurface, TOne> : IChanges<TOne>, IDisposable
    where T : struct, ILanes<T>, IReal<T>
    where TSurface : struct, ISurfaceOfLanes<T, TOne>
    where TOne : struct, ISurface<Real>
{
    private readonly int[] shotOf = new int[T.Count];

    private readonly IChanges<TOne> changes;

    // The shots at hand.
    private Waiting waiting = new() { Shortest = 2 * T.Lane(T.Sliver, 0) };

    // Those that are taken from now.
    private Stack<int> next = new();
    private Run<Real, TOne, Tally<Real>>[] runs = [];

    // In one place, and by these names here.
    private LaneNumbers<T, TSurface>[] numbers = LaneNumbers<T, TSurface>.Rent();

    private ref Slide<T, TSurface> slide => ref numbers[0].Slide;
    private ref Roll<T, TSurface> roll => ref numbers[0].Roll;
    private ref Step<State<T>> step => ref numbers[0].Step;
    private ref State<T> error => ref numbers[0].Error;
    private ref Bounds<T> bounds => ref numbers[0].Bounds;
    private ref Control<T> control => ref numbers[0].Control;
    private ref Grip<T> grip => ref numbers[0].Grip;
    private ref Tally<T> tally => ref numbers[0].Tally;
    private ref Quat<T> q => ref numbers[0].Orientation;
    private ref T dt => ref numbers[0].Dt;
    private ref T lastNorm => ref numbers[0].LastNorm;
    private ref T rowEnd => ref numbers[0].RowEnd;
    private ref T steps => ref numbers[0].Steps;
    private ref T mostSteps => ref numbers[0].MostSteps;

    // One bit for each lane that holds a shot; one for each lane.
    private uint active;
    private static uint All => T.Count == 32 ? uint.MaxValue : (1u << T.Count) - 1;

    /// <param name="surface">The surface under the lanes, still without a law.</param>
    /// <param name="body">A body of the pack: only its switches are read, the same for all.</param>
    /// <param name="mostSteps">Steps after which a run is ended.</param>
    /// <param name="changes">What lies between plain steps; null if these lanes, of doubles, do it themselves.</param>
    public Pack(TSurface surface, in Body<Real> body, int mostSteps, IChanges<TOne>? changes = null)
    {
        this.changes = changes ?? this;
        slide.Surface = roll.Surface = surface;
        slide.ByDistance = roll.ByDistance = true;
        slide.Body.Effects = body.Effects;
        roll.Body = slide.Body;
        this.mostSteps = mostSteps - 1;
    }

    /// <summary>How far the numbers lie beyond the lines of the cache, bytes.</summary>
    internal int Askew => numbers[0].Askew;

    /// <summary>Gives the memory of its numbers to the next pack; it brings no more runs to their end.</summary>
    public void Dispose()
    {
        LaneNumbers<T, TSurface>.GiveBack(numbers);
        numbers = [];
        if (changes != this)
        {
            changes.Dispose();
        }
    }

    /// <summary>Takes a run that has begun.</summary>
    public void Take(Run<Real, TOne, Tally<Real>>[] begun, int i)
    {
        runs = begun;
        Queue(i);
    }

    /// <summary>
    /// Brings the runs that were taken on, those at which as many shots wait for the same as there are lanes: what is left waits for company. To the end: all, whatever waits for what.
    /// </summary>
    public void GoOn(bool toTheEnd)
    {
        while (Drive(waiting.Sliding, toTheEnd) | Drive(waiting.Late, toTheEnd) | Drive(waiting.Rolling, toTheEnd) | changes.Change(runs, waiting, toTheEnd))
        {
        }
    }

    // Brings on what waits for one thing, as long as there is work for all lanes, or for any. Whether there was.
    private bool Drive(Stack<int> from, bool toTheEnd)
    {
        if (from.Count < (toTheEnd ? 1 : T.Count))
        {
            return false;
        }
        Fill(from);
        while (toTheEnd ? active != 0 : active == All)
        {
            if (from == waiting.Sliding)
            {
                SlideOn();
                SetAside(T.Mask(slide.IsLate()) & active, waiting.Late);
            }
            else if (from == waiting.Late)
            {
                SlideOn();
            }
            else if (from == waiting.Rolling)
            {
                RollOn();
            }
            else if (from == waiting.Slipping)
            {
                SlipAgain();
            }
            else if (from == waiting.Stiff)
            {
                StepStiff();
            }
            else
            {
                Stick();
            }
        }
        for (; active != 0; active &= active - 1)
        {
            var i = shotOf[BitOperations.TrailingZeroCount(active)];
            Store(BitOperations.TrailingZeroCount(active), ref runs[i]);
            from.Push(i);
        }
        return true;
    }

    // Where a run goes on that has not ended; one that can take no plain step now is brought to where it can.
    private void Queue(int i)
    {
        ref var run = ref runs[i];
        if (run.Ended == Ending.None && !run.IsPlain && !run.IsStiff)
        {
            run.Ended = run.Continue();
        }
        if (run.Ended == Ending.None)
        {
            (run.IsStiff ? waiting.Stiff : run.Phase == Phase.Roll ? waiting.Rolling : run.slide.IsLate() > 0.0 ? waiting.Late : waiting.Sliding).Push(i);
        }
    }

    private void Fill(Stack<int> from)
    {
        next = from;
        for (var lane = 0; lane < T.Count; lane++)
        {
            Fill(lane);
        }
    }

    private void Fill(int lane)
    {
        if (!next.TryPop(out var i))
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
        if (run.Phase == Phase.Roll || next == waiting.Sticking)
        {
            LaneCopy<T>.Set(ref roll.Body, lane, run.slide.Body, Body<Real>.Numbers);
            roll.Surface.SetLane(lane, run.slide.Surface);
        }
        Load(lane, ref run);
    }

    // The moving part of a run, to its lane.
    private void Load(int lane, ref Run<Real, TOne, Tally<Real>> run)
    {
        LaneCopy<T>.Set(ref step.Start, lane, run.y);
        LaneCopy<T>.Set(ref q, lane, run.q);
        LaneCopy<T>.Set(ref step.K1, lane, run.step.K1);
        T.SetLane(ref dt, lane, run.dt);
        T.SetLane(ref lastNorm, lane, run.lastNorm);
        T.SetLane(ref rowEnd, lane, run.rowEnd);
        T.SetLane(ref steps, lane, run.Steps);
        LaneCopy<T>.Set(ref tally, lane, run.recorder);
        double within = Pace<Real>.Within(run.y.Y, run.rowEnd);
        if (run.Phase == Phase.Slide || next == waiting.Slipping)
        {
            LaneCopy<T>.Set(ref slide.Seen, lane, run.slide.Seen);
            if (slide.Body.HasDips)
            {
                LaneCopy<T>.Set(ref slide.Dip, lane, run.slide.Dip);
            }
        }
        if (run.Phase == Phase.Slide)
        {
            if (!run.IsStiff)
            {
                slide.Surface.Enter(lane, within);
            }
            return;
        }
        LaneCopy<T>.Set(ref grip, lane, run.grip);
        roll.Surface.Enter(lane, within);
    }

    // And back.
    private void Store(int lane, ref Run<Real, TOne, Tally<Real>> run)
    {
        LaneCopy<T>.Get(step.Start, lane, ref run.y);
        LaneCopy<T>.Get(q, lane, ref run.q);
        LaneCopy<T>.Get(step.K1, lane, ref run.step.K1);
        run.dt = T.Lane(dt, lane);
        run.lastNorm = T.Lane(lastNorm, lane);
        run.rowEnd = T.Lane(rowEnd, lane);
        run.Steps = (int)T.Lane(steps, lane);
        LaneCopy<T>.Get(tally, lane, ref run.recorder);
        if (run.Phase == Phase.Slide)
        {
            LaneCopy<T>.Get(slide.Seen, lane, ref run.slide.Seen);
            if (slide.Body.HasDips)
            {
                LaneCopy<T>.Get(slide.Dip, lane, ref run.slide.Dip);
            }
            run.slide.ByDistance = true;
            run.slide.Surface.Enter(Pace<Real>.Within(run.y.Y, run.rowEnd));
            return;
        }
        LaneCopy<T>.Get(grip, lane, ref run.grip);
        run.roll.ByDistance = true;
        run.roll.Surface.Enter(Pace<Real>.Within(run.y.Y, run.rowEnd));
    }

    // The run takes the step itself, from the state before it, and comes back to the lane if it goes on as before.
    private void Alone(int lane, Phase phase)
    {
        ref var run = ref runs[shotOf[lane]];
        Store(lane, ref run);
        var from = (double)run.y.Y;
        run.Ended = run.Continue();
        Return(lane, phase, from);
    }

    // A step of rolling that holds, as the lane has taken it, and in which it does not slip: the run takes it over, sees what it meets, and comes back.
    private void TakeOver(int lane, T h, T atEnd, T norm, T next, in Grip<T> after)
    {
        var from = T.Lane(step.Start.Y, lane);
        HandOver(lane, h, atEnd, norm, next, after);
        Return(lane, Phase.Roll, from);
    }

    private void HandOver(int lane, T h, T atEnd, T norm, T next, in Grip<T> after)
    {
        ref var run = ref runs[shotOf[lane]];
        Store(lane, ref run);
        LaneCopy<T>.Get(step, lane, ref run.step, Step<State<Real>>.Parts * Unsafe.SizeOf<State<Real>>() / sizeof(double));
        run.step.Interpolant = step.Interpolant;
        LaneCopy<T>.Get(roll.ω, lane, ref run.roll.ω);
        Grip<Real> there = default;
        LaneCopy<T>.Get(after, lane, ref there);
        run.Ended = run.RollOver(T.Lane(h, lane), T.Lane(atEnd, lane), T.Lane(norm, lane), T.Lane(next, lane), there);
        if (run.Ended == Ending.None && !run.IsPlain && !run.IsStiff)
        {
            run.Ended = run.Continue();
        }
    }

    private void Return(int lane, Phase phase, double from)
    {
        var i = shotOf[lane];
        ref var run = ref runs[i];
        // A step too short for the lane's numbers: the run takes the next one too.
        while (run.Ended == Ending.None && run.Phase == phase && run.y.Y - from < waiting.Shortest)
        {
            run.Ended = run.Continue();
        }
        if (run.Ended == Ending.None && run.Phase == phase)
        {
            Load(lane, ref run);
            return;
        }
        Queue(i);
        Fill(lane);
    }

    // Gives the lanes of shots that must wait for something else to others.
    private void SetAside(uint lanes, Stack<int> to)
    {
        for (; lanes != 0; lanes &= lanes - 1)
        {
            var lane = BitOperations.TrailingZeroCount(lanes);
            Store(lane, ref runs[shotOf[lane]]);
            to.Push(shotOf[lane]);
            Fill(lane);
        }
    }

    private void SlideOn()
    {
        T zero = 0.0, one = 1.0;
        slide.Start = q;
        var seen = slide.Seen;
        var vy = slide.VelocityY;
        var h = Plan(slide.ω, vy, slide.MaxTurn(control), out var atEnd);
        var special = zero;
        var near = Pace<T>.MayStick(slide.Slip, h / vy);
        var sticks = 0u;
        if ((T.Mask(near) & active) != 0)
        {
            slide.Fading(control, out var fade);
            special = T.IfLess(zero, near, T.Max(fade.Creeps, fade.Ends), zero);
            sticks = T.Mask(special) & active;
            var cap = T.Min(fade.Cap, fade.Stable) * vy;
            var capped = T.IfLess(cap, h, near, zero);
            h = T.IfLess(zero, capped, cap, h);
            atEnd = T.IfLess(zero, capped, zero, atEnd);
        }

        slide.Take(ref step, h, out error);
        var norm = control.Norm(error, step.End);
        var next = Pace<T>.Next(norm, lastNorm, dt, h / vy, out var rejected);
        special = T.Max(special, T.Max(TooMany(next), T.IfLess(zero, rejected, zero, T.Max(Pace<T>.MayEnd(step, bounds), T.IfLess(zero, slide.N, GoesByTime(slide.VelocityX, slide.VelocityY), one)))));
        var taken = T.IfLess(zero, T.Max(special, rejected), zero, one);
        tally.Took(step, h, taken);
        var alone = T.Mask(special) & active;

        // A step that is taken again starts from what was seen before it.
        Commit(taken, special, next, norm, slide.Seen.ω, out var all);
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
        if (rowsEnd != 0 && EnterRows(rowsEnd, ref slide.Surface))
        {
            slide.Start = q;
            seen = slide.Seen;
            slide.Dips.Start = slide.Dip;
            slide.Rates(step.Start, out step.K2);
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
        SetAside(sticks, waiting.Sticking);
        for (alone &= ~sticks; alone != 0; alone &= alone - 1)
        {
            Alone(BitOperations.TrailingZeroCount(alone), Phase.Slide);
        }
    }

    // The next step down-lane.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private T Plan(Vec3<T> ω, T vy, T maxTurn, out T atEnd) =>
        Pace<T>.ByDistance(Pace<T>.CapTurn(dt, ω, maxTurn), vy, Pace<T>.NextLine(step.Start.X, step.Start.Y, step.K1.X, rowEnd, bounds) - step.Start.Y, out atEnd);

    // A step of rolling: its length and whether it ends on a line, its error, what follows from it, and the grip at its end.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void TakeRoll(out T h, out T atEnd, out T norm, out T next, out T rejected, out Grip<T> after)
    {
        roll.Start = q;
        var vy = grip.VelocityY;
        h = Plan(grip.ω, vy, Pace<T>.MaxTurnWhileRolling, out atEnd);
        roll.Take(ref step, h, out error);
        norm = control.Norm(error, step.End);
        next = Pace<T>.Next(norm, lastNorm, dt, h / vy, out rejected);
        roll.Arrive(ref step, h, grip, out after);
    }

    private void RollOn()
    {
        T zero = 0.0, one = 1.0;
        TakeRoll(out var h, out var atEnd, out var norm, out var next, out var rejected, out var after);
        var ω = roll.ω;
        var special = T.Max(Pace<T>.MayEnd(step, bounds), T.IfLess(zero, after.N, GoesByTime(after.VelocityX, after.VelocityY), one));
        // Asked of what ends here as well: a run need not look at what the lanes have seen.
        var doubt = T.IfLess(zero, rejected, zero, roll.MaySlip(grip, after));
        special = T.Max(special, doubt);
        special = T.Max(TooMany(next), T.IfLess(zero, rejected, zero, special));
        var taken = T.IfLess(zero, T.Max(special, rejected), zero, one);
        tally.Took(step, h, taken);

        // What comes back to a lane here, or anew, has taken no step: what follows leaves it alone.
        var refused = T.Mask(rejected);
        for (var alone = T.Mask(special) & active; alone != 0; alone &= alone - 1)
        {
            var lane = BitOperations.TrailingZeroCount(alone);
            if ((refused & (1u << lane)) != 0)
            {
                Alone(lane, Phase.Roll);
            }
            else if (T.Lane(doubt, lane) > 0)
            {
                SetAside(1u << lane, waiting.Slipping);
            }
            else
            {
                TakeOver(lane, h, atEnd, norm, next, after);
            }
        }
        Commit(taken, special, next, norm, ω, out _);
        LaneCopy<T>.Take(ref grip, after, taken);

        var entered = T.IfLess(zero, taken, atEnd, zero);
        var rowsEnd = T.Mask(entered) & active;
        if (rowsEnd != 0 && EnterRows(rowsEnd, ref roll.Surface))
        {
            // A new row may bring another friction: is there still grip? If not, the run itself must know it before it goes on.
            roll.Start = q;
            roll.GripAt(step.Start, out after);
            roll.Rates(step.Start, out step.K2);
            LaneCopy<T>.Take(ref step.K1, step.K2, entered);
            LaneCopy<T>.Take(ref grip, after, entered);
            for (var slips = T.Mask(T.IfLess(zero, after.Excess, entered, zero)) & active; slips != 0; slips &= slips - 1)
            {
                var lane = BitOperations.TrailingZeroCount(slips);
                Store(lane, ref runs[shotOf[lane]]);
                runs[shotOf[lane]].Ended = runs[shotOf[lane]].SlipAtRow();
                Queue(shotOf[lane]);
                Fill(lane);
            }
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

    // Takes the step over in the lanes that took it; a rejected step leaves only a shorter one to try. Not inlined: with it the drivers exceed what the compiler is willing to inline.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Commit(T taken, T special, T next, T norm, in Vec3<T> ω, out bool all)
    {
        T zero = 0.0, one = 1.0;
        all = T.Mask(taken) == All;
        var turned = q.Turned(step.End.Turn).Normalised();
        step.End.Turn = new(zero, zero, zero);
        step.K7.Turn = step.K7.Time * ω;
        if (all)
        {
            step.Start = step.End;
            step.K1 = step.K7;
            (q, lastNorm, dt) = (turned, norm, next);
            steps = steps + one;
            return;
        }
        LaneCopy<T>.Take(ref step.Start, step.End, taken);
        LaneCopy<T>.Take(ref q, turned, taken);
        LaneCopy<T>.Take(ref step.K1, step.K7, taken);
        lastNorm = T.IfLess(zero, taken, norm, lastNorm);
        dt = T.IfLess(zero, special, dt, next);
        steps = T.IfLess(zero, special, steps, steps + one);
    }

    // Whether new slopes are due there.
    private bool EnterRows(uint lanes, ref TSurface surface)
    {
        var at = Pace<T>.EntersAt(step.Start.Y, rowEnd);
        for (; lanes != 0; lanes &= lanes - 1)
        {
            var lane = BitOperations.TrailingZeroCount(lanes);
            T.SetLane(ref rowEnd, lane, surface.Enter(lane, T.Lane(at, lane)));
        }
        return !surface.Joins;
    }
}
