using BallSim.Friction;
using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>
/// The kernels, one thread a shot. A chunk of shots goes round and round: plain steps of those that slide and of those that roll, then one event of each, until all have ended. Which shots are where stands in
/// lists of indices, and their lengths in counts.
/// </summary>
internal static class ShotKernels
{
    /// <summary>Where the lengths of the lists stand: shots that slide, that roll, that slip, stiffly at first; those that come near the limit of grip; those that wait for a rare event.</summary>
    public const int Sliding = 0, Rolling = 1, Stiff = 2, Near = 3, Rare = 4, Lists = 5;

    /// <summary>Plain steps of sliding, for the shots of a list; they go on to the list of events.</summary>
    public static void Slide<T, TSurface, TGround, TSetups, TEffects>(ArrayView<Shot> shots, ArrayView<int> list, int count, ArrayView<int> events, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        var at = Grid.GlobalIndex.X;
        if (at >= count)
        {
            return;
        }
        var i = list[at];
        events[at] = i;
        var setup = setups.Of(shots[i].Setup);
        var moving = Converted<DeviceDouble, T>.Of(shots[i].Moving);
        var why = PlainSteps<T, TSurface>.Slide(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control);
        shots[i].Moving = Converted<T, DeviceDouble>.Of(moving);
        shots[i].Why = why;
    }

    /// <summary>Plain steps of rolling; those that come near the limit of grip go on to a list of their own as well.</summary>
    public static void Roll<T, TSurface, TGround, TSetups, TEffects>(ArrayView<Shot> shots, ArrayView<int> list, int count, ArrayView<int> events, ArrayView<int> near, ArrayView<int> counts, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        var at = Grid.GlobalIndex.X;
        if (at >= count)
        {
            return;
        }
        var i = list[at];
        events[at] = i;
        var setup = setups.Of(shots[i].Setup);
        var moving = Converted<DeviceDouble, T>.Of(shots[i].Moving);
        var why = PlainSteps<T, TSurface>.Roll(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control);
        shots[i].Moving = Converted<T, DeviceDouble>.Of(moving);
        shots[i].Why = why;
        if (why is Why.MaySlip or Why.SlipsAtRow)
        {
            near[Atomic.Add(ref counts[Near], 1)] = i;
        }
    }

    /// <summary>Of the shots of a list, as many as there are, those that slip go on to the list of those whose slip is stiff.</summary>
    public static void StartSlip<TSurface, TGround, TSetups, TEffects>(ArrayView<Shot> shots, ArrayView<int> near, double shortest, ArrayView<int> rolling, ArrayView<int> stiff, ArrayView<int> rare, ArrayView<int> counts, TSetups setups, TGround ground)
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
        var setup = setups.Of(shots[i].Setup);
        var moving = shots[i].Moving;
        var why = SlipAgain<DeviceDouble, TSurface>.Start(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, shots[i].Why, shortest);
        // A rare event stays what it was: the run begins there.
        if (why != Why.Rare)
        {
            shots[i].Why = why;
        }
        else if (shots[i].Why == Why.CannotRoll)
        {
            rare[Atomic.Add(ref counts[Rare], 1)] = i;
        }
        if (why != Why.Nothing)
        {
            return;
        }
        shots[i].Moving = moving;
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
    public static void Relax<TSurface, TGround, TSetups, TEffects>(ArrayView<Shot> shots, ArrayView<int> stiff, double least, ArrayView<int> sliding, ArrayView<int> counts, TSetups setups, TGround ground)
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
        var setup = setups.Of(shots[i].Setup);
        var moving = shots[i].Moving;
        var why = SlipAgain<DeviceDouble, TSurface>.Relax(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, least);
        shots[i].Moving = moving;
        shots[i].Why = why;
        if (why == Why.Nothing)
        {
            sliding[Atomic.Add(ref counts[Sliding], 1)] = i;
        }
    }

    /// <summary>Of the events of a list those that nothing has seen to wait, with those of earlier rounds. Those that must slip on come in the next round.</summary>
    public static void Wait(ArrayView<Shot> shots, ArrayView<int> events, int count, ArrayView<int> rare, ArrayView<int> counts)
    {
        var at = Grid.GlobalIndex.X;
        if (at < count && shots[events[at]].Why is not (Why.Nothing or Why.CannotRoll))
        {
            rare[Atomic.Add(ref counts[Rare], 1)] = events[at];
        }
    }

    /// <summary>Of the events of a list those that are the end of slip; those that must slip on are near the limit of grip in the next round.</summary>
    public static void Stick<TSurface, TGround, TSetups, TEffects>(ArrayView<Shot> shots, ArrayView<int> events, int count, ArrayView<int> rolling, ArrayView<int> near, ArrayView<int> counts, TSetups setups, TGround ground)
        where TSurface : struct, ISurface<DeviceDouble>
        where TGround : struct, IGround<DeviceDouble, TSurface>
        where TSetups : struct, ISetups<DeviceDouble>
        where TEffects : struct, IEffects
    {
        var at = Grid.GlobalIndex.X;
        if (at >= count || shots[events[at]].Why != Why.Sticks)
        {
            return;
        }
        var i = events[at];
        var setup = setups.Of(shots[i].Setup);
        var moving = shots[i].Moving;
        var why = CommonEvents<DeviceDouble, TSurface>.Stick(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control);
        shots[i].Why = why;
        if (why is not (Why.Nothing or Why.CannotRoll))
        {
            return;
        }
        shots[i].Moving = moving;
        if (why == Why.Nothing)
        {
            rolling[Atomic.Add(ref counts[Rolling], 1)] = i;
        }
        else
        {
            near[Atomic.Add(ref counts[Near], 1)] = i;
        }
    }

    /// <summary>Of the events of a list those that are the end of a run that slides.</summary>
    public static void EndSliding<T, TSurface, TGround, TSetups, TEffects>(ArrayView<Shot> shots, ArrayView<int> events, int count, double shortest, ArrayView<int> sliding, ArrayView<int> counts, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        var at = Grid.GlobalIndex.X;
        if (at >= count || shots[events[at]].Why != Why.MayEnd || shots[events[at]].Moving.Phase != Phase.Slide)
        {
            return;
        }
        var i = events[at];
        var setup = setups.Of(shots[i].Setup);
        var moving = Converted<DeviceDouble, T>.Of(shots[i].Moving);
        var why = CommonEvents<T, TSurface>.EndSliding(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, shortest);
        shots[i].Why = why;
        if (why != Why.Nothing)
        {
            return;
        }
        shots[i].Moving = Converted<T, DeviceDouble>.Of(moving);
        if (moving.Ended == Ending.None)
        {
            sliding[Atomic.Add(ref counts[Sliding], 1)] = i;
        }
    }

    /// <summary>And of one that rolls.</summary>
    public static void EndRolling<T, TSurface, TGround, TSetups, TEffects>(ArrayView<Shot> shots, ArrayView<int> events, int count, double shortest, ArrayView<int> rolling, ArrayView<int> counts, TSetups setups, TGround ground)
        where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
        where TSurface : struct, ISurface<T>
        where TGround : struct, IGround<T, TSurface>
        where TSetups : struct, ISetups<T>
        where TEffects : struct, IEffects
    {
        var at = Grid.GlobalIndex.X;
        if (at >= count || shots[events[at]].Why != Why.MayEnd || shots[events[at]].Moving.Phase != Phase.Roll)
        {
            return;
        }
        var i = events[at];
        var setup = setups.Of(shots[i].Setup);
        var moving = Converted<DeviceDouble, T>.Of(shots[i].Moving);
        var why = CommonEvents<T, TSurface>.EndRolling(ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, shortest);
        shots[i].Why = why;
        if (why != Why.Nothing)
        {
            return;
        }
        shots[i].Moving = Converted<T, DeviceDouble>.Of(moving);
        if (moving.Ended == Ending.None)
        {
            rolling[Atomic.Add(ref counts[Rolling], 1)] = i;
        }
    }

    /// <summary>From the foul line to sliding; where that is not simple, to the list of rare events.</summary>
    public static void BeginSliding<TSurface, TGround, TSetups, TEffects>(ArrayView<Start> starts, ArrayView<Shot> shots, int count, ArrayView<int> sliding, ArrayView<int> rare, ArrayView<int> counts, TSetups setups, TGround ground)
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
        shots[i].Setup = start.Setup;
        if (CommonEvents<DeviceDouble, TSurface>.Begin(start, ref moving, setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Control))
        {
            shots[i].Moving = moving;
            sliding[Atomic.Add(ref counts[Sliding], 1)] = i;
        }
        else
        {
            rare[Atomic.Add(ref counts[Rare], 1)] = i;
        }
    }

    /// <summary>From the foul line to the first plain step, for the shots of a list.</summary>
    public static void Begin<TSurface, TGround, TSetups, TEffects>(ArrayView<Start> starts, ArrayView<Shot> shots, ArrayView<int> list, int count, ArrayView<int> sliding, ArrayView<int> rolling, ArrayView<int> counts, TSetups setups, TGround ground)
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
        Keep(i, ref run, shots, sliding, rolling, counts);
    }

    /// <summary>One event of each shot of a list, and on to its next plain step. A shot that moves less than the shortest length meanwhile, which the numbers of the plain steps could not tell, goes on.</summary>
    public static void Event<TSurface, TGround, TSetups, TEffects>(ArrayView<Shot> shots, ArrayView<int> rare, int count, double shortest, ArrayView<int> sliding, ArrayView<int> rolling, ArrayView<int> counts, TSetups setups, TGround ground)
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
        var setup = setups.Of(shots[i].Setup);
        var moving = shots[i].Moving;
        var run = new Run<DeviceDouble, TSurface, Tally<DeviceDouble>>(setup.Constants.Body<TEffects>(), ground.Under(setup.Law), setup.Bounds, setup.Control, moving.Tally);
        run.Resume(moving);
        if (shots[i].Why is Why.SlipsAtRow or Why.CannotRoll)
        {
            run.Ended = shots[i].Why == Why.SlipsAtRow ? run.SlipAtRow() : run.SlipOn();
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
        Keep(i, ref run, shots, sliding, rolling, counts);
    }

    /// <summary>The last instant of every shot.</summary>
    public static void Finish<TSurface, TGround, TSetups, TEffects>(ArrayView<Shot> shots, int count, ArrayView<Finished> finished, TSetups setups, TGround ground)
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
        var setup = setups.Of(shots[i].Setup);
        var moving = shots[i].Moving;
        Finished last = default;
        last.End = Moment<DeviceDouble>.Of(moving.Phase, moving.y, moving.q, setup.Constants.Body<TEffects>(), ground.Under(setup.Law));
        (last.Tally, last.OilTaken, last.Steps, last.Ended) = (moving.Tally, (double)moving.y.OilTaken, moving.Steps, moving.Ended);
        finished[i] = last;
    }

    private static void Keep<TSurface>(int i, ref Run<DeviceDouble, TSurface, Tally<DeviceDouble>> run, ArrayView<Shot> shots, ArrayView<int> sliding, ArrayView<int> rolling, ArrayView<int> counts)
        where TSurface : struct, ISurface<DeviceDouble>
    {
        var moving = shots[i].Moving;
        run.Leave(ref moving);
        moving.Tally = run.recorder;
        shots[i].Moving = moving;
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
