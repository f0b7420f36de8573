using BallSim.Friction;
using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>
/// The kernels, one thread a shot. A chunk of shots goes round and round, until all have ended: plain steps of those that slide, the end of their slip, plain steps of those that roll, then one event of each. Which shots are where stands
/// in lists. Every round has its slowest shots, for whom the card waits: the fewer rounds the better.
/// </summary>
internal static class ShotKernels
{
    /// <summary>Most threads of a block that finishes shots.</summary>
    public const int FinishBlock = 64;

    /// <summary>Plain steps of sliding; so many, and threads without a shot take the next.</summary>
    public static void Slide<T, TUnit, TSurface, TGround, TSetups, TEffects>(Shots<TUnit> shots, Lists lists, int steps, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
        => Through<T, TUnit, TSurface, TGround, TSetups, TEffects, Sliding<T, TSurface>>(shots, lists, steps, setups, ground);

    /// <summary>The same of rolling.</summary>
    public static void Roll<T, TUnit, TSurface, TGround, TSetups, TEffects>(Shots<TUnit> shots, Lists lists, int steps, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
        => Through<T, TUnit, TSurface, TGround, TSetups, TEffects, Rolling<T, TSurface>>(shots, lists, steps, setups, ground);

    // A thread that is through with a shot takes the next, all of a block at once: they keep together, so that they wait for the same instructions only once.
    private static void Through<T, TUnit, TSurface, TGround, TSetups, TEffects, TSteps>(Shots<TUnit> shots, Lists lists, int steps, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
        where TSteps : struct, IPlainSteps<T, TSurface>
    {
        Moving<T> moving = default;
        int i = 0, which = 0;
        var surface = ground.Under(setups.Of(which).Law);
        var why = Why.Waits;
        do
        {
            for (var left = steps; left > 0; left--)
            {
                if (why == Why.Nothing)
                {
                    var setup = setups.Of(which);
                    why = TSteps.Take(ref moving, setup.Constants.Body<TEffects>(), ref surface, setup.Bounds, setup.Control);
                }
            }
            if (why != Why.Nothing)
            {
                if (why != Why.Waits)
                {
                    shots.Keep<T, TEffects>(i, moving, sliding: TSteps.Slide, rolling: !TSteps.Slide, changed: false);
                    shots.Keep(i, why);
                }
                why = Why.Waits;
                if (TSteps.Slide ? lists.Takes(Lists.Sliding, Lists.SlideTaken, Lists.Slid, out var taken) : lists.Takes(Lists.Rolling, Lists.RollTaken, Lists.Rolled, out taken))
                {
                    i = taken;
                    which = shots.SetupOf(i);
                    moving = shots.Read<T, TEffects>(i);
                    surface = ground.Under(setups.Of(which).Law);
                    surface.Enter(Pace<T>.Within(moving.y.Y, moving.rowEnd));
                    why = Why.Nothing;
                }
            }
        }
        while (ILGPU.Group.BarrierOr(why == Why.Nothing));
    }

    /// <summary>A closer look at the next step of rolling of those near the limit of grip. Those that do not pass it have taken it; the others have come to it, and go on to the list of those that slip, as do those that came to it before.</summary>
    public static void Look<T, TUnit, TSurface, TGround, TSetups, TEffects>(Shots<TUnit> shots, Lists lists, double shortest, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        if (!lists.Has(Lists.Near, out var i))
        {
            return;
        }
        var why = shots.WhyOf(i);
        if (why == Why.MaySlip)
        {
            var setup = setups.Of(shots.SetupOf(i));
            var moving = shots.Read<T, TEffects>(i);
            why = SlipAgain<T, TSurface>.Look(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, shortest);
            // A rare event stays what it was: the run begins there.
            if (why is Why.Nothing or Why.SlipsAtRow or Why.AtLimit)
            {
                shots.Keep<T, TEffects>(i, moving, sliding: false, rolling: true, changed: false);
                shots.Keep(i, why);
            }
        }
        if (why == Why.Nothing)
        {
            lists.Add(Lists.Rolling, i);
        }
        else if (why == Why.MayEnd)
        {
            lists.Add(Lists.RollEnds, i);
        }
        else if (why == Why.Rare)
        {
            lists.Add(Lists.Rare, i);
        }
        else
        {
            lists.Add(Lists.Slipping, i);
        }
    }

    /// <summary>From rolling to sliding, of those at the limit of grip, and the stiff steps that the slip begins with: in one go, since floats would lose so little slip between two kernels.</summary>
    public static void StartSlip<TUnit, TSurface, TGround, TSetups, TEffects>(Shots<TUnit> shots, Lists lists, double least, TSetups setups, TGround ground)
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        if (!lists.Has(Lists.Slipping, out var i))
        {
            return;
        }
        var setup = setups.Of(shots.SetupOf(i));
        var body = setup.Constants.Body<TEffects>();
        var surface = ground.Under(setup.Law);
        var moving = shots.Read<DeviceDouble, TEffects>(i);
        var why = Why.Rare;
        if (SlipAgain<DeviceDouble, TSurface>.Start(ref moving, body, surface, setup.Bounds, setup.Control, shots.WhyOf(i)))
        {
            why = SlipAgain<DeviceDouble, TSurface>.Relax(ref moving, body, surface, setup.Bounds, setup.Control, least);
            shots.Keep<DeviceDouble, TEffects>(i, moving, sliding: true, rolling: false, changed: true);
            shots.Keep(i, why);
        }
        if (why == Why.Nothing)
        {
            lists.Add(Lists.Sliding, i);
        }
        else if (why == Why.Sticks)
        {
            lists.Add(Lists.Sticking, i);
        }
        else
        {
            lists.Add(Lists.Rare, i);
        }
    }

    /// <summary>The end of slip, of those of a list that have come to it; those that must slip on are near the limit of grip. Those that slide no further for another reason go on to the list of that.</summary>
    public static void Stick<T, TUnit, TSurface, TGround, TSetups, TEffects>(Shots<TUnit> shots, Lists lists, int list, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        if (!lists.Has(list, out var i))
        {
            return;
        }
        var why = shots.WhyOf(i);
        if (why == Why.Sticks)
        {
            var setup = setups.Of(shots.SetupOf(i));
            var moving = shots.Read<T, TEffects>(i);
            why = CommonEvents<T, TSurface>.Stick(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control);
            shots.Keep(i, why);
            if (why is Why.Nothing or Why.CannotRoll)
            {
                shots.Keep<T, TEffects>(i, moving, sliding: false, rolling: true, changed: true);
            }
        }
        if (why == Why.Nothing)
        {
            lists.Add(Lists.Rolling, i);
        }
        else if (why == Why.CannotRoll)
        {
            lists.Add(Lists.Near, i);
        }
        else if (why == Why.MayEnd)
        {
            lists.Add(Lists.SlideEnds, i);
        }
        else
        {
            lists.Add(Lists.Rare, i);
        }
    }

    /// <summary>The end of a run that slides.</summary>
    public static void EndSliding<T, TUnit, TSurface, TGround, TSetups, TEffects>(Shots<TUnit> shots, Lists lists, double shortest, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        if (!lists.Has(Lists.SlideEnds, out var i))
        {
            return;
        }
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<T, TEffects>(i);
        var why = CommonEvents<T, TSurface>.EndSliding(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, shortest);
        if (why != Why.Nothing)
        {
            lists.Add(Lists.Rare, i);
            return;
        }
        shots.Keep<T, TEffects>(i, moving, sliding: true, rolling: false, changed: false);
        if (moving.Ended == Ending.None)
        {
            lists.Add(Lists.Sliding, i);
        }
    }

    /// <summary>
    /// And of those that roll, where they end as they were meant to; the others, few, go on to a list: beside them the rest of their warp would wait. Those that roll no further for another reason go on to the list of that.
    /// </summary>
    public static void ReachEnd<T, TUnit, TSurface, TGround, TSetups, TEffects>(Shots<TUnit> shots, Lists lists, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        if (!lists.Has(Lists.Rolled, out var i))
        {
            return;
        }
        var why = shots.WhyOf(i);
        if (why is Why.MaySlip or Why.SlipsAtRow)
        {
            lists.Add(Lists.Near, i);
            return;
        }
        if (why != Why.MayEnd)
        {
            lists.Add(Lists.Rare, i);
            return;
        }
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<T, TEffects>(i);
        if (CommonEvents<T, TSurface>.ReachEnd(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control))
        {
            shots.Keep<T, TEffects>(i, moving, sliding: false, rolling: false, changed: false);
        }
        else
        {
            lists.Add(Lists.RollEnds, i);
        }
    }

    /// <summary>The end of a run that rolls, where it takes a closer look.</summary>
    public static void EndRolling<T, TUnit, TSurface, TGround, TSetups, TEffects>(Shots<TUnit> shots, Lists lists, double shortest, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        if (!lists.Has(Lists.RollEnds, out var i))
        {
            return;
        }
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<T, TEffects>(i);
        var why = CommonEvents<T, TSurface>.EndRolling(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, shortest);
        if (why != Why.Nothing)
        {
            lists.Add(Lists.Rare, i);
            return;
        }
        shots.Keep<T, TEffects>(i, moving, sliding: false, rolling: true, changed: false);
        if (moving.Ended == Ending.None)
        {
            lists.Add(Lists.Rolling, i);
        }
    }

    /// <summary>From the foul line to sliding; where that is not simple, to the list of rare events.</summary>
    public static void BeginSliding<TUnit, TSurface, TGround, TSetups, TEffects>(ArrayView<Start> starts, Shots<TUnit> shots, int count, Lists lists, TSetups setups, TGround ground)
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        var i = Grid.GlobalIndex.X;
        if (i >= count)
        {
            return;
        }
        var start = starts[i];
        var setup = setups.Of(start.Setup);
        Moving<DeviceDouble> moving = default;
        shots.KeepSetup(i, start.Setup);
        if (CommonEvents<DeviceDouble, TSurface>.Begin(start, ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Control))
        {
            shots.Keep<DeviceDouble, TEffects>(i, moving, sliding: true, rolling: false, changed: true);
            lists.Add(Lists.Sliding, i);
        }
        else
        {
            lists.Add(Lists.Rare, i);
        }
    }

    /// <summary>From the foul line to the first plain step, for those that wait for it.</summary>
    public static void Begin<TUnit, TSurface, TGround, TSetups, TEffects>(ArrayView<Start> starts, Shots<TUnit> shots, Lists lists, TSetups setups, TGround ground)
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        if (!lists.Has(Lists.Rare, out var i))
        {
            return;
        }
        var start = starts[i];
        var setup = setups.Of(start.Setup);
        var run = new Run<DeviceDouble, TSurface, Tally<DeviceDouble>>(setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, new(start.Hand, start.X));
        run.Ended = run.Begin(start.X, 0.0, start.VelocityX, start.VelocityY, start.Orientation, start.AngularVelocity, start.Loft);
        if (run.Ended == Ending.None && !run.IsPlain)
        {
            run.Ended = run.Continue();
        }
        Keep<TUnit, TSurface, TEffects>(i, ref run, shots, lists);
    }

    /// <summary>One rare event of each shot that waits for it, and on to its next plain step. A shot that moves less than the shortest length meanwhile, which the numbers of the plain steps could not tell, goes on.</summary>
    public static void Event<TUnit, TSurface, TGround, TSetups, TEffects>(Shots<TUnit> shots, Lists lists, double shortest, TSetups setups, TGround ground)
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        if (!lists.Has(Lists.Rare, out var i))
        {
            return;
        }
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<DeviceDouble, TEffects>(i);
        var run = new Run<DeviceDouble, TSurface, Tally<DeviceDouble>>(setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, moving.Tally);
        run.Resume(moving);
        var why = shots.WhyOf(i);
        if (why is Why.AtLimit or Why.SlipsAtRow or Why.CannotRoll)
        {
            run.Ended = why == Why.AtLimit ? run.SlipAtLimit() : why == Why.SlipsAtRow ? run.SlipAtRow() : run.SlipOn();
            if (run.Ended == Ending.None && !run.IsPlain)
            {
                run.Ended = run.Continue();
            }
        }
        else
        {
            var phase = run.Phase;
            var far = run.y.Y + shortest;
            do
            {
                run.Ended = run.Continue();
            }
            while (run.Ended == Ending.None && run.Phase == phase && run.y.Y < far);
        }
        Keep<TUnit, TSurface, TEffects>(i, ref run, shots, lists);
    }

    /// <summary>The last instant of every shot. A block gathers what its threads have found, and writes it side by side.</summary>
    public static void Finish<TUnit, TSurface, TGround, TSetups, TEffects>(Shots<TUnit> shots, int count, ArrayView<double> finished, TSetups setups, TGround ground)
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        var gathered = SharedMemory.Allocate<Finished>(FinishBlock);
        var i = Grid.GlobalIndex.X;
        if (i < count)
        {
            var setup = setups.Of(shots.SetupOf(i));
            var moving = shots.Read<DeviceDouble, TEffects>(i);
            Finished last = default;
            var end = Moment<DeviceDouble>.Of(moving.Phase, moving.y, moving.q, setup.Constants.Body<TEffects>(), ground.Under(setup.Law));
            (last.Time, last.X, last.Y, last.Revolutions) = (end.Time, end.X, end.Y, end.Revolutions);
            (last.VelocityX, last.VelocityY, last.SlipX, last.SlipY) = (end.VelocityX, end.VelocityY, end.SlipX, end.SlipY);
            (last.Orientation, last.AngularVelocity) = (end.Orientation, end.AngularVelocity);
            (last.Tally, last.OilTaken, last.Steps, last.Ended) = (moving.Tally, (double)moving.y.OilTaken, moving.Steps, moving.Ended);
            gathered[ILGPU.Group.IdxX] = last;
        }
        ILGPU.Group.Barrier();
        var numbers = gathered.Cast<double>();
        var first = (long)Grid.IdxX * ILGPU.Group.DimX * Finished.Doubles;
        var many = Math.Min((long)count * Finished.Doubles - first, ILGPU.Group.DimX * Finished.Doubles);
        for (var at = ILGPU.Group.IdxX; at < many; at += ILGPU.Group.DimX)
        {
            finished[first + at] = numbers[at];
        }
    }

    private static void Keep<TUnit, TSurface, TEffects>(int i, ref Run<DeviceDouble, TSurface, Tally<DeviceDouble>> run, Shots<TUnit> shots, Lists lists)
        where TUnit : unmanaged, IUnit<TUnit>
        where TSurface : struct, ISurface<DeviceDouble>
        where TEffects : struct, IEffects
    {
        Moving<DeviceDouble> moving = default;
        run.Leave(ref moving);
        moving.Tally = run.recorder;
        shots.Keep<DeviceDouble, TEffects>(i, moving, sliding: true, rolling: true, changed: true);
        if (run.Ended != Ending.None)
        {
            return;
        }
        if (run.Phase == Phase.Slide)
        {
            lists.Add(Lists.Sliding, i);
        }
        else
        {
            lists.Add(Lists.Rolling, i);
        }
    }
}
