using System.Reflection;
using BallSim.Friction;
using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;
using ILGPU.Backends.PTX;
using ILGPU.Runtime;
using ILGPU.Runtime.Cuda;

namespace BallSim.Gpu;

/// <summary>The kernels for one kind of shots (numbers of the plain steps, lane, one setup or many, effects) on one device, and the rounds they go.</summary>
internal abstract class KernelSet
{
    /// <summary>Brings the shots of a chunk from the foul line to their ends; the outcomes lie in the chunk's memory then. Answers which shots of the group are left over.</summary>
    /// <param name="chunk">Memory and stream.</param>
    /// <param name="group">The shots.</param>
    /// <param name="most">So few may be left over of those that slip again and again, whom the rest would wait for, and so few of those that wait for a rare event, whose kernel takes seconds to compile.</param>
    /// <param name="times">Null: not measured.</param>
    /// <param name="cancellation">Stops between two rounds.</param>
    /// <exception cref="OperationCanceledException">Between two rounds.</exception>
    public abstract int[] Run(ChunkMemory chunk, Group group, int most, KernelTimes? times, CancellationToken cancellation);

    /// <summary>The kernels for what a group needs.</summary>
    public static KernelSet For(Accelerator accelerator, GroupKind kind) => (KernelSet)Activator.CreateInstance(TypeFor(kind), accelerator)!;

    /// <summary>The same kernels as PTX, by name; needs no card.</summary>
    /// <param name="kind">Of shots.</param>
    /// <param name="architecture">Of the card.</param>
    /// <param name="instructions">That its driver knows.</param>
    /// <param name="wanted">Which; null: all. Each takes seconds.</param>
    public static IEnumerable<(string Name, string Text)> Ptx(GroupKind kind, CudaArchitecture architecture, CudaInstructionSet instructions, Predicate<string>? wanted = null)
    {
        var types = TypeFor(kind).GetGenericArguments();
        return Names.Where(name => wanted is null || wanted(name)).Select(name => (name, Compiled(name, types, architecture, instructions).PTXAssembly));
    }

    /// <summary>The kernels.</summary>
    protected static IReadOnlyList<string> Names { get; } =
    [
        nameof(ShotKernels.Slide), nameof(ShotKernels.Roll), nameof(ShotKernels.StartSlip), nameof(ShotKernels.Relax), nameof(ShotKernels.Stick), nameof(ShotKernels.EndSliding), nameof(ShotKernels.ReachEnd), nameof(ShotKernels.EndRolling), nameof(ShotKernels.BeginSliding), nameof(ShotKernels.Wait),
        nameof(ShotKernels.Begin), nameof(ShotKernels.Event), nameof(ShotKernels.Finish),
    ];

    /// <summary>Those of them that are compiled when they are first asked for.</summary>
    protected static IReadOnlyList<string> Seldom { get; } = [nameof(ShotKernels.Begin), nameof(ShotKernels.Event)];

    /// <summary>Whether a kernel works in the numbers of the plain steps, as these and the ends of runs do; the others work in doubles.</summary>
    public static bool IsInNumbersOfSteps(string name) => name is nameof(ShotKernels.Slide) or nameof(ShotKernels.Roll) or nameof(ShotKernels.EndSliding) or nameof(ShotKernels.ReachEnd) or nameof(ShotKernels.EndRolling);

    /// <summary>The method of a kernel, for the type arguments of a set.</summary>
    protected static MethodInfo Method(string name, Type[] types)
    {
        var method = typeof(ShotKernels).GetMethod(name)!;
        return name switch
        {
            nameof(ShotKernels.Wait) => method,
            _ when IsInNumbersOfSteps(name) => method.MakeGenericMethod(types[0], types[1], types[2], types[3], types[7]),
            _ => method.MakeGenericMethod(types[4], types[5], types[6], types[7]),
        };
    }

    /// <summary>A kernel for a card.</summary>
    protected static PTXCompiledKernel Compiled(string name, Type[] types, CudaArchitecture architecture, CudaInstructionSet instructions)
    {
        var whole = name is not (nameof(ShotKernels.Begin) or nameof(ShotKernels.Event));
        return KernelCompiler.Compile(architecture, instructions, Method(name, types), whole, Fill(name, types[0]));
    }

    /// <summary>
    /// Threads of a block of plain steps, and how many blocks together fill a multiprocessor; null: a kernel of others. Sliding in floats does with two thirds of the registers, and half as many threads more hide what it waits for; rolling
    /// is no faster so, and doubles have too few registers as it is.
    /// </summary>
    protected static (int Threads, int Blocks)? Fill(string name, Type number) => name switch
    {
        nameof(ShotKernels.Slide) => (number == typeof(DeviceSingle) ? 384 : 256, 1),
        nameof(ShotKernels.Roll) => (128, 2),
        _ => null,
    };

    private static Type TypeFor(GroupKind kind)
    {
        Type plain = kind.Single ? typeof(DeviceSingle) : typeof(DeviceDouble);
        static Type Bit(Effects effects, Effects one) => (effects & one) != 0 ? typeof(On) : typeof(Off);
        var effects = typeof(EffectSet<,,,,,>).MakeGenericType(Bit(kind.Effects, Effects.Lift), Bit(kind.Effects, Effects.SmallMoments), Bit(kind.Effects, Effects.CoverOil), Bit(kind.Effects, Effects.FreshCover), Bit(kind.Effects, Effects.Dips), Bit(kind.Effects, Effects.FineDips));
        var types = new List<Type> { plain };
        foreach (var (number, mapOf) in new[] { (plain, typeof(RowMap<>)), (typeof(DeviceDouble), typeof(DeviceMap<>)) })
        {
            var map = mapOf.MakeGenericType(number);
            var surface = (kind.Given ? typeof(GivenSurface<,>) : typeof(FilmSurface<,>)).MakeGenericType(number, map);
            var ground = (kind.Given ? typeof(GivenGround<,>) : typeof(FilmGround<,>)).MakeGenericType(number, map);
            if (kind.Sloped)
            {
                ground = typeof(SlopedGround<,,>).MakeGenericType(number, ground, surface);
                surface = typeof(SlopedSurface<,,>).MakeGenericType(number, surface, typeof(DeviceSlopes<>).MakeGenericType(number));
            }
            types.AddRange([surface, ground, (kind.OneSetup ? typeof(OneSetup<>) : typeof(SetupTable<>)).MakeGenericType(number)]);
        }
        types.Add(effects);
        return typeof(KernelSet<,,,,,,,>).MakeGenericType([.. types]);
    }
}

/// <summary>What decides which kernels a group of shots needs.</summary>
internal readonly record struct GroupKind(bool Single, bool Given, bool Sloped, bool OneSetup, Effects Effects);

internal sealed class KernelSet<T, TSurface, TGround, TSetups, TSurfaceInEvents, TGroundInEvents, TSetupsInEvents, TEffects> : KernelSet
    where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
    where TGround : struct, IGround<T, TSurface>, IGroundOn<TGround, T>
    where TSetups : struct, ISetups<T>, ISetupsFrom<TSetups, T>
    where TSurfaceInEvents : struct, ISurface<DeviceDouble>
    where TGroundInEvents : struct, IGround<DeviceDouble, TSurfaceInEvents>, IGroundOn<TGroundInEvents, DeviceDouble>
    where TSetupsInEvents : struct, ISetups<DeviceDouble>, ISetupsFrom<TSetupsInEvents, DeviceDouble>
    where TEffects : struct, IEffects
{
    // Threads of a block: more blocks than the device runs at a time; one warp, where few are slow: they spread over the card; twice as many for ends, which nearly all shots meet together.
    private readonly int blockSize, smallBlock, endBlock;

    // Of plain steps, and how many multiprocessors there are.
    private readonly (int Threads, int Blocks) slideFill, rollFill;
    private readonly int multiprocessors;

    private const int WarpSize = Shots.Tile;

    private readonly Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, ArrayView<int>, ArrayView<int>, TSetups, TGround> slide;
    private readonly Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetups, TGround> roll;
    private readonly Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, double, ArrayView<int>, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents> startSlip;
    private readonly Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, double, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents> relax;
    private readonly Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, ArrayView<int>, ArrayView<int>> wait;
    private readonly Action<AcceleratorStream, KernelConfig, ArrayView<Start>, Shots, int, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents> beginSliding;

    // These two take longest to compile, and many ensembles never meet what they are for.
    private readonly Lazy<Action<AcceleratorStream, KernelConfig, ArrayView<Start>, Shots, ArrayView<int>, int, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents>> begin;
    private readonly Lazy<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, double, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents>> events;

    private readonly Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents> stick;
    private readonly Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, double, ArrayView<int>, ArrayView<int>, TSetups, TGround> endSliding;
    private readonly Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, ArrayView<int>, ArrayView<int>, TSetups, TGround> reachEnd;
    private readonly Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, double, ArrayView<int>, ArrayView<int>, TSetups, TGround> endRolling;
    private readonly Action<AcceleratorStream, KernelConfig, Shots, int, ArrayView<Finished>, TSetupsInEvents, TGroundInEvents> finish;

    // A step too short for the numbers of plain steps would be undone there.
    private static readonly double Shortest = 2 * (double)T.Sliver;

    // So little slip, m/s, floats would lose among the velocities that it is the difference of: a ball handed over with less sticks at once, slips on and sticks again.
    private static readonly double LeastSlip = typeof(T) == typeof(DeviceSingle) ? 1e-3 : 0;

    public KernelSet(Accelerator accelerator)
    {
        blockSize = Math.Min(64, accelerator.MaxGroupSize.X);
        smallBlock = Math.Min(WarpSize, blockSize);
        endBlock = Math.Min(2 * blockSize, accelerator.MaxGroupSize.X);
        (int, int) Filling(string name) => Fill(name, typeof(T)) is var (threads, blocks) ? (Math.Min(threads, accelerator.MaxNumThreadsPerGroup), blocks) : default;
        (slideFill, rollFill) = (Filling(nameof(ShotKernels.Slide)), Filling(nameof(ShotKernels.Roll)));
        multiprocessors = accelerator.NumMultiprocessors;
        var kernels = Loaded(accelerator, Names.Except(Seldom));
        slide = kernels[nameof(ShotKernels.Slide)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, ArrayView<int>, ArrayView<int>, TSetups, TGround>>();
        roll = kernels[nameof(ShotKernels.Roll)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetups, TGround>>();
        startSlip = kernels[nameof(ShotKernels.StartSlip)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, double, ArrayView<int>, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents>>();
        relax = kernels[nameof(ShotKernels.Relax)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, double, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents>>();
        wait = kernels[nameof(ShotKernels.Wait)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, ArrayView<int>, ArrayView<int>>>();
        beginSliding = kernels[nameof(ShotKernels.BeginSliding)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, ArrayView<Start>, Shots, int, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents>>();
        begin = new(() => Loaded(accelerator, [nameof(ShotKernels.Begin)]).Single().Value.CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, ArrayView<Start>, Shots, ArrayView<int>, int, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents>>());
        events = new(() => Loaded(accelerator, [nameof(ShotKernels.Event)]).Single().Value.CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, double, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents>>());
        stick = kernels[nameof(ShotKernels.Stick)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, ArrayView<int>, ArrayView<int>, ArrayView<int>, TSetupsInEvents, TGroundInEvents>>();
        endSliding = kernels[nameof(ShotKernels.EndSliding)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, double, ArrayView<int>, ArrayView<int>, TSetups, TGround>>();
        reachEnd = kernels[nameof(ShotKernels.ReachEnd)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, int, ArrayView<int>, ArrayView<int>, TSetups, TGround>>();
        endRolling = kernels[nameof(ShotKernels.EndRolling)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, ArrayView<int>, double, ArrayView<int>, ArrayView<int>, TSetups, TGround>>();
        finish = kernels[nameof(ShotKernels.Finish)].CreateLauncherDelegate<Action<AcceleratorStream, KernelConfig, Shots, int, ArrayView<Finished>, TSetupsInEvents, TGroundInEvents>>();
    }

    public override int[] Run(ChunkMemory chunk, Group group, int most, KernelTimes? times, CancellationToken cancellation)
    {
        var (stream, count) = (chunk.Stream, group.Count);
        chunk.Upload(group.Starts);
        // One setup is an argument; a table must lie on the device.
        var setups = TSetups.From(group.Setups<T>(), chunk.Upload(group.Setups<T>()));
        var setupsInEvents = TSetupsInEvents.From(group.Setups<DeviceDouble>(), chunk.Upload(group.Setups<DeviceDouble>()));
        var (lane, laneInEvents) = (chunk.Lane<T>(group.Lane), chunk.Lane<DeviceDouble>(group.Lane));
        var ground = TGround.On(lane.Map, lane.Heights);
        var groundInEvents = TGroundInEvents.On(laneInEvents.Map, laneInEvents.Heights);

        chunk.Clear(0, ShotKernels.Lists);
        KernelTimes.Run(times, stream, () => beginSliding(stream, Blocks(count), chunk.Starts, chunk.Shots, count, chunk.Sliding, chunk.Rare, chunk.Counts, setupsInEvents, groundInEvents), (t, s) => t.Begin += s);
        if (chunk.ReadCounts()[ShotKernels.Rare] is var others and > 0)
        {
            KernelTimes.Run(times, stream, () => begin.Value(stream, Blocks(others, smallBlock), chunk.Starts, chunk.Shots, chunk.Rare, others, chunk.Sliding, chunk.Rolling, chunk.Counts, setupsInEvents, groundInEvents), (t, s) => t.Begin += s);
            chunk.Clear(ShotKernels.Rare, 1);
        }
        int[] left;
        while (true)
        {
            var lengths = chunk.ReadCounts();
            var (sliding, rolling, near, rare) = (lengths[ShotKernels.Sliding], lengths[ShotKernels.Rolling], lengths[ShotKernels.Near], lengths[ShotKernels.Rare]);
            var plain = sliding + rolling + near;
            if (plain <= most && rare <= most)
            {
                left = chunk.ReadLists(sliding, rolling, near, rare);
                break;
            }
            cancellation.ThrowIfCancellationRequested();
            // Their kernel takes long, however few they are: they wait for each other.
            if (plain <= most)
            {
                KernelTimes.Run(times, stream, () => events.Value(stream, Blocks(rare, smallBlock), chunk.Shots, chunk.Rare, rare, Shortest, chunk.Sliding, chunk.Rolling, chunk.Counts, setupsInEvents, groundInEvents), (t, s) => t.Events += s);
                chunk.Clear(ShotKernels.Rare, 1);
                times?.Waited(rare);
                continue;
            }
            chunk.Clear(ShotKernels.Sliding, 1);
            chunk.Clear(ShotKernels.Rolled, ShotKernels.Near - ShotKernels.Rolled);
            // The events: of sliding, what must slip on, of rolling.
            var first = sliding + near;
            if (sliding > 0)
            {
                KernelTimes.Run(times, stream, () => slide(stream, Lasting(sliding, slideFill), chunk.Shots, chunk.Sliding, sliding, chunk.Events, chunk.Counts, setups, ground), (t, s) => t.Slide += s);
                KernelTimes.Run(times, stream, () => stick(stream, Blocks(sliding), chunk.Shots, chunk.Events, sliding, chunk.Rolling, chunk.Near, chunk.Counts, setupsInEvents, groundInEvents), (t, s) => t.Stick += s);
            }
            if (near > 0)
            {
                chunk.Near.SubView(0, near).CopyTo(stream, chunk.Events.SubView(sliding, near));
            }
            // How many roll, come near the limit, slip, only the card knows; those who find nothing to do are gone at once.
            var mayRoll = sliding + rolling;
            var all = first + mayRoll;
            if (mayRoll > 0)
            {
                KernelTimes.Run(times, stream, () => roll(stream, Lasting(mayRoll, rollFill), chunk.Shots, chunk.Rolling, chunk.Events.SubView(first, mayRoll), chunk.Near, chunk.Counts, setups, ground), (t, s) => t.Roll += s);
            }
            chunk.Move(ShotKernels.Rolling, ShotKernels.Rolled);
            KernelTimes.Run(times, stream, () => startSlip(stream, Blocks(near + mayRoll, smallBlock), chunk.Shots, chunk.Near, Shortest, chunk.Rolling, chunk.Stiff, chunk.Rare, chunk.Counts, setupsInEvents, groundInEvents), (t, s) => t.StartSlip += s);
            times?.Round(first, chunk.ReadCounts());
            chunk.Clear(ShotKernels.Near, 1);
            KernelTimes.Run(times, stream, () => relax(stream, Blocks(near + mayRoll, smallBlock), chunk.Shots, chunk.Stiff, LeastSlip, chunk.Sliding, chunk.Sticking, chunk.Counts, setupsInEvents, groundInEvents), (t, s) => t.Relax += s);
            // Slip that has hardly begun may have come to its end.
            KernelTimes.Run(times, stream, () => stick(stream, Blocks(near + mayRoll, smallBlock), chunk.Shots, chunk.Sticking, 0, chunk.Rolling, chunk.Near, chunk.Counts, setupsInEvents, groundInEvents), (t, s) => t.Stick += s);
            KernelTimes.Run(times, stream, () => endSliding(stream, Blocks(all, endBlock), chunk.Shots, chunk.Events, first, Shortest, chunk.Sliding, chunk.Counts, setups, ground), (t, s) => t.End += s);
            KernelTimes.Run(times, stream, () => reachEnd(stream, Blocks(all, endBlock), chunk.Shots, chunk.Events, first, chunk.Ends, chunk.Counts, setups, ground), (t, s) => t.End += s);
            KernelTimes.Run(times, stream, () => endRolling(stream, Blocks(near + mayRoll, smallBlock), chunk.Shots, chunk.Ends, Shortest, chunk.Rolling, chunk.Counts, setups, ground), (t, s) => t.End += s);
            KernelTimes.Run(times, stream, () => wait(stream, Blocks(all), chunk.Shots, chunk.Events, first, chunk.Rare, chunk.Counts), (t, s) => t.End += s);
        }
        KernelTimes.Run(times, stream, () => finish(stream, Blocks(count), chunk.Shots, count, chunk.Finished, setupsInEvents, groundInEvents), (t, s) => t.Finish += s);
        chunk.Download(count);
        return left;
    }

    private KernelConfig Blocks(int count) => Blocks(count, blockSize);

    // For plain steps: few blocks that stay; of few shots one warp here, one there.
    private KernelConfig Lasting(int count, (int Threads, int Blocks) fill)
    {
        var most = fill.Blocks * multiprocessors;
        var size = Math.Clamp((count / most + WarpSize - 1) / WarpSize * WarpSize, Math.Min(WarpSize, fill.Threads), fill.Threads);
        return new(Math.Min((count + size - 1) / size, most), size);
    }

    private static KernelConfig Blocks(int count, int size) => new((count + size - 1) / size, size);

    // Compiled side by side, here and by the driver: some take many seconds.
    private static Dictionary<string, Kernel> Loaded(Accelerator accelerator, IEnumerable<string> names)
    {
        var types = typeof(KernelSet<T, TSurface, TGround, TSetups, TSurfaceInEvents, TGroundInEvents, TSetupsInEvents, TEffects>).GetGenericArguments();
        if (accelerator is not CudaAccelerator card)
        {
            return names.ToDictionary(name => name, name => accelerator.LoadKernel(Method(name, types)));
        }
        try
        {
            return names.AsParallel().Select(name =>
            {
                card.Bind();
                return (Name: name, Kernel: card.LoadKernel(Compiled(name, types, card.Architecture, card.InstructionSet)));
            }).ToDictionary(k => k.Name, k => k.Kernel);
        }
        catch (AggregateException several)
        {
            // What a card failed at is told by its own exception.
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
            throw;
        }
    }
}
