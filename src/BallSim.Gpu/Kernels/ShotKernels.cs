using BallSim.Friction;
using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>
/// The kernels, one thread a shot. A chunk of shots goes round and round, until all have ended: plain steps of those that slide, the end of their slip, plain steps of those that roll, then one event of each. Which shots are where stands
/// in lists of indices, and their lengths in counts. Every round has its slowest shots, for whom the card waits: the fewer rounds the better.
/// </summary>
internal static class ShotKernels
{
    /// <summary>
    /// Where the lengths of the lists stand: shots that slide, that roll, that have rolled in this round, that slip, stiffly at first; of those that slide and that roll, how many have been taken from their list; those whose end takes a
    /// closer look; those whose slip ends when it has hardly begun; those that come near the limit of grip; those that wait for a rare event.
    /// </summary>
    public const int Sliding = 0, Rolling = 1, Rolled = 2, Stiff = 3, SlideTaken = 4, RollTaken = 5, Ends = 6, Sticking = 7, Near = 8, Rare = 9, Lists = 10;

    // In the list of events: seen to, the shot has another entry.
    private const int Gone = -1;

    // So many steps, and threads without a shot take the next: all of a block at once, which keeps it together.
    private const int StepsAtATime = 8;

    /// <summary>Plain steps of sliding, for the shots of a list; they go on to the list of events.</summary>
    public static void Slide<T, TSurface, TGround, TSetups, TEffects>(Shots shots, ArrayView<int> list, int count, ArrayView<int> events, ArrayView<int> counts, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
        => Through<T, TSurface, TGround, TSetups, TEffects, Sliding<T, TSurface>>(shots, list, count, events, events, counts, setups, ground);

    /// <summary>The same of rolling, of as many as there are; those that come near the limit of grip go on to a list of their own as well.</summary>
    public static void Roll<T, TSurface, TGround, TSetups, TEffects>(Shots shots, ArrayView<int> list, ArrayView<int> events, ArrayView<int> near, ArrayView<int> counts, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
        => Through<T, TSurface, TGround, TSetups, TEffects, Rolling<T, TSurface>>(shots, list, counts[Rolling], events, near, counts, setups, ground);

    // A thread that is through with a shot takes the next; the threads of a block keep together, so that they wait for the same instructions only once.
    private static void Through<T, TSurface, TGround, TSetups, TEffects, TSteps>(Shots shots, ArrayView<int> list, int count, ArrayView<int> events, ArrayView<int> near, ArrayView<int> counts, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
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
        for (var n = 0; ; n++)
        {
            if (n % StepsAtATime == 0)
            {
                if (why != Why.Nothing)
                {
                    if (why != Why.Waits)
                    {
                        shots.Keep<T, TEffects>(i, moving, TSteps.Slide, !TSteps.Slide);
                        shots.Keep(i, why);
                        if (!TSteps.Slide && why is (Why.MaySlip or Why.SlipsAtRow))
                        {
                            near[Atomic.Add(ref counts[Near], 1)] = i;
                        }
                    }
                    why = Why.Waits;
                    var at = Atomic.Add(ref counts[TSteps.Slide ? SlideTaken : RollTaken], 1);
                    if (at < count)
                    {
                        i = list[at];
                        events[at] = i;
                        which = shots.SetupOf(i);
                        moving = shots.Read<T, TEffects>(i);
                        surface = ground.Under(setups.Of(which).Law);
                        surface.Enter(Pace<T>.Within(moving.y.Y, moving.rowEnd));
                        why = Why.Nothing;
                    }
                }
                if (!ILGPU.Group.BarrierOr(why == Why.Nothing))
                {
                    return;
                }
            }
            if (why == Why.Nothing)
            {
                var setup = setups.Of(which);
                why = TSteps.Take(ref moving, setup.Constants.Body<TEffects>(), ref surface, setup.Bounds, setup.Control);
            }
        }
    }

    /// <summary>Of the shots of a list, as many as there are, those that slip go on to the list of those whose slip is stiff.</summary>
    public static void StartSlip<TSurface, TGround, TSetups, TEffects>(Shots shots, ArrayView<int> near, double shortest, ArrayView<int> rolling, ArrayView<int> stiff, ArrayView<int> rare, ArrayView<int> counts, TSetups setups, TGround ground)
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        var at = Grid.GlobalIndex.X;
        if (at >= counts[Near])
        {
            return;
        }
        var i = near[at];
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<DeviceDouble, TEffects>(i);
        var why = SlipAgain<DeviceDouble, TSurface>.Start(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, shots.WhyOf(i), shortest);
        // A rare event stays what it was: the run begins there.
        if (why != Why.Rare)
        {
            shots.Keep(i, why);
        }
        else if (shots.WhyOf(i) == Why.CannotRoll)
        {
            rare[Atomic.Add(ref counts[Rare], 1)] = i;
        }
        if (why != Why.Nothing)
        {
            return;
        }
        shots.Keep<DeviceDouble, TEffects>(i, moving, sliding: true, rolling: true);
        if (moving.Phase == Phase.Slide)
        {
            stiff[Atomic.Add(ref counts[Stiff], 1)] = i;
        }
        else
        {
            rolling[Atomic.Add(ref counts[Rolling], 1)] = i;
        }
    }

    /// <summary>Stiff steps of the shots of a list, as many as there are.</summary>
    public static void Relax<TSurface, TGround, TSetups, TEffects>(Shots shots, ArrayView<int> stiff, double least, ArrayView<int> sliding, ArrayView<int> sticking, ArrayView<int> counts, TSetups setups, TGround ground)
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        var at = Grid.GlobalIndex.X;
        if (at >= counts[Stiff])
        {
            return;
        }
        var i = stiff[at];
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<DeviceDouble, TEffects>(i);
        var why = SlipAgain<DeviceDouble, TSurface>.Relax(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, least);
        shots.Keep<DeviceDouble, TEffects>(i, moving, sliding: true, rolling: false);
        shots.Keep(i, why);
        if (why == Why.Nothing)
        {
            sliding[Atomic.Add(ref counts[Sliding], 1)] = i;
        }
        else if (why == Why.Sticks)
        {
            sticking[Atomic.Add(ref counts[Sticking], 1)] = i;
        }
    }

    // The shot whose event this thread may see to: the events of sliding come first, then those of rolling, of as many as have rolled; or a list of as many as it has.
    private static int EventOf(ArrayView<int> events, int first, int more)
    {
        var at = Grid.GlobalIndex.X;
        return at < first + more ? events[at] : Gone;
    }

    /// <summary>Of the events those that nothing has seen to wait, with those of earlier rounds. Those that must slip on are in a list of their own.</summary>
    public static void Wait(Shots shots, ArrayView<int> events, int first, ArrayView<int> rare, ArrayView<int> counts)
    {
        var i = EventOf(events, first, counts[Rolled]);
        if (i != Gone && shots.WhyOf(i) is not (Why.Nothing or Why.CannotRoll))
        {
            rare[Atomic.Add(ref counts[Rare], 1)] = i;
        }
    }

    /// <summary>Of events, so many and those whose slip ends when it has hardly begun, the ends of slip; those that must slip on are near the limit of grip.</summary>
    public static void Stick<TSurface, TGround, TSetups, TEffects>(Shots shots, ArrayView<int> events, int first, ArrayView<int> rolling, ArrayView<int> near, ArrayView<int> counts, TSetups setups, TGround ground)
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        var i = EventOf(events, first, counts[Sticking]);
        if (i == Gone || shots.WhyOf(i) != Why.Sticks)
        {
            return;
        }
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<DeviceDouble, TEffects>(i);
        var why = CommonEvents<DeviceDouble, TSurface>.Stick(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control);
        shots.Keep(i, why);
        if (why is not (Why.Nothing or Why.CannotRoll))
        {
            return;
        }
        shots.Keep<DeviceDouble, TEffects>(i, moving, sliding: false, rolling: true);
        if (why == Why.Nothing)
        {
            rolling[Atomic.Add(ref counts[Rolling], 1)] = i;
            // It may roll, and have another event, in the same round.
            events[Grid.GlobalIndex.X] = Gone;
        }
        else
        {
            near[Atomic.Add(ref counts[Near], 1)] = i;
        }
    }

    /// <summary>Of the events those that are the end of a run that slides.</summary>
    public static void EndSliding<T, TSurface, TGround, TSetups, TEffects>(Shots shots, ArrayView<int> events, int first, double shortest, ArrayView<int> sliding, ArrayView<int> counts, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        var i = EventOf(events, first, counts[Rolled]);
        if (i == Gone || shots.WhyOf(i) != Why.MayEnd || shots.PhaseOf(i) != Phase.Slide)
        {
            return;
        }
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<T, TEffects>(i);
        var why = CommonEvents<T, TSurface>.EndSliding(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, shortest);
        shots.Keep(i, why);
        if (why != Why.Nothing)
        {
            return;
        }
        shots.Keep<T, TEffects>(i, moving, sliding: true, rolling: false);
        if (moving.Ended == Ending.None)
        {
            sliding[Atomic.Add(ref counts[Sliding], 1)] = i;
        }
    }

    /// <summary>And of one that rolls, where it ends as it was meant to; the others, few, go on to a list: beside them the rest of their warp would wait.</summary>
    public static void ReachEnd<T, TSurface, TGround, TSetups, TEffects>(Shots shots, ArrayView<int> events, int first, ArrayView<int> ends, ArrayView<int> counts, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        var i = EventOf(events, first, counts[Rolled]);
        if (i == Gone || shots.WhyOf(i) != Why.MayEnd || shots.PhaseOf(i) != Phase.Roll)
        {
            return;
        }
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<T, TEffects>(i);
        var why = CommonEvents<T, TSurface>.ReachEnd(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control);
        if (why != Why.Nothing)
        {
            ends[Atomic.Add(ref counts[Ends], 1)] = i;
            return;
        }
        shots.Keep(i, why);
        shots.Keep<T, TEffects>(i, moving, sliding: false, rolling: true);
    }

    /// <summary>The end of a run that rolls, for the shots of a list, as many as there are.</summary>
    public static void EndRolling<T, TSurface, TGround, TSetups, TEffects>(Shots shots, ArrayView<int> ends, double shortest, ArrayView<int> rolling, ArrayView<int> counts, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        var at = Grid.GlobalIndex.X;
        if (at >= counts[Ends])
        {
            return;
        }
        var i = ends[at];
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<T, TEffects>(i);
        var why = CommonEvents<T, TSurface>.EndRolling(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, shortest);
        shots.Keep(i, why);
        if (why != Why.Nothing)
        {
            return;
        }
        shots.Keep<T, TEffects>(i, moving, sliding: false, rolling: true);
        if (moving.Ended == Ending.None)
        {
            rolling[Atomic.Add(ref counts[Rolling], 1)] = i;
        }
    }

    /// <summary>From the foul line to sliding; where that is not simple, to the list of rare events.</summary>
    public static void BeginSliding<TSurface, TGround, TSetups, TEffects>(ArrayView<Start> starts, Shots shots, int count, ArrayView<int> sliding, ArrayView<int> rare, ArrayView<int> counts, TSetups setups, TGround ground)
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
            shots.Keep<DeviceDouble, TEffects>(i, moving, sliding: true, rolling: false);
            sliding[Atomic.Add(ref counts[Sliding], 1)] = i;
        }
        else
        {
            rare[Atomic.Add(ref counts[Rare], 1)] = i;
        }
    }

    /// <summary>From the foul line to the first plain step, for the shots of a list.</summary>
    public static void Begin<TSurface, TGround, TSetups, TEffects>(ArrayView<Start> starts, Shots shots, ArrayView<int> list, int count, ArrayView<int> sliding, ArrayView<int> rolling, ArrayView<int> counts, TSetups setups, TGround ground)
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        var at = Grid.GlobalIndex.X;
        if (at >= count)
        {
            return;
        }
        var i = list[at];
        var start = starts[i];
        var setup = setups.Of(start.Setup);
        var run = new Run<DeviceDouble, TSurface, Tally<DeviceDouble>>(setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, new(start.Hand, start.X));
        run.Ended = run.Begin(start.X, 0.0, start.VelocityX, start.VelocityY, start.Orientation, start.AngularVelocity, start.Loft);
        if (run.Ended == Ending.None && !run.IsPlain)
        {
            run.Ended = run.Continue();
        }
        Keep<TSurface, TEffects>(i, ref run, shots, sliding, rolling, counts);
    }

    /// <summary>One event of each shot of a list, and on to its next plain step. A shot that moves less than the shortest length meanwhile, which the numbers of the plain steps could not tell, goes on.</summary>
    public static void Event<TSurface, TGround, TSetups, TEffects>(Shots shots, ArrayView<int> rare, int count, double shortest, ArrayView<int> sliding, ArrayView<int> rolling, ArrayView<int> counts, TSetups setups, TGround ground)
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        var at = Grid.GlobalIndex.X;
        if (at >= count)
        {
            return;
        }
        var i = rare[at];
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<DeviceDouble, TEffects>(i);
        var run = new Run<DeviceDouble, TSurface, Tally<DeviceDouble>>(setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, moving.Tally);
        run.Resume(moving);
        if (shots.WhyOf(i) is Why.SlipsAtRow or Why.CannotRoll)
        {
            run.Ended = shots.WhyOf(i) == Why.SlipsAtRow ? run.SlipAtRow() : run.SlipOn();
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
        Keep<TSurface, TEffects>(i, ref run, shots, sliding, rolling, counts);
    }

    /// <summary>The last instant of every shot.</summary>
    public static void Finish<TSurface, TGround, TSetups, TEffects>(Shots shots, int count, ArrayView<Finished> finished, TSetups setups, TGround ground)
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
        var setup = setups.Of(shots.SetupOf(i));
        var moving = shots.Read<DeviceDouble, TEffects>(i);
        Finished last = default;
        var end = Moment<DeviceDouble>.Of(moving.Phase, moving.y, moving.q, setup.Constants.Body<TEffects>(), ground.Under(setup.Law));
        (last.Time, last.X, last.Y, last.Revolutions) = (end.Time, end.X, end.Y, end.Revolutions);
        (last.VelocityX, last.VelocityY, last.SlipX, last.SlipY) = (end.VelocityX, end.VelocityY, end.SlipX, end.SlipY);
        (last.Orientation, last.AngularVelocity) = (end.Orientation, end.AngularVelocity);
        (last.Tally, last.OilTaken, last.Steps, last.Ended) = (moving.Tally, (double)moving.y.OilTaken, moving.Steps, moving.Ended);
        finished[i] = last;
    }

    private static void Keep<TSurface, TEffects>(int i, ref Run<DeviceDouble, TSurface, Tally<DeviceDouble>> run, Shots shots, ArrayView<int> sliding, ArrayView<int> rolling, ArrayView<int> counts)
        where TSurface : struct, ISurface<DeviceDouble>
        where TEffects : struct, IEffects
    {
        Moving<DeviceDouble> moving = default;
        run.Leave(ref moving);
        moving.Tally = run.recorder;
        shots.Keep<DeviceDouble, TEffects>(i, moving, sliding: true, rolling: true);
        if (run.Ended != Ending.None)
        {
            return;
        }
        if (run.Phase == Phase.Slide)
        {
            sliding[Atomic.Add(ref counts[Sliding], 1)] = i;
        }
        else
        {
            rolling[Atomic.Add(ref counts[Rolling], 1)] = i;
        }
    }
}
