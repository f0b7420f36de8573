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
    /// <param name="most">How many may be left over.</param>
    /// <param name="times">Null: not measured.</param>
    /// <param name="cancellation">Stops between two rounds.</param>
    /// <exception cref="OperationCanceledException">Between two rounds.</exception>
    public abstract int[] Run(ChunkMemory chunk, Group group, LeftOver most, KernelTimes? times, CancellationToken cancellation);

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
        nameof(ShotKernels.Slide), nameof(ShotKernels.Roll), nameof(ShotKernels.Look), nameof(ShotKernels.StartSlip), nameof(ShotKernels.Stick), nameof(ShotKernels.EndSliding), nameof(ShotKernels.ReachEnd), nameof(ShotKernels.EndRolling), nameof(ShotKernels.BeginSliding),
        nameof(ShotKernels.Begin), nameof(ShotKernels.Event), nameof(ShotKernels.Finish),
    ];

    /// <summary>Those of them that are compiled when they are first asked for.</summary>
    protected static IReadOnlyList<string> Seldom { get; } = [nameof(ShotKernels.Begin), nameof(ShotKernels.Event)];

    /// <summary>Whether a kernel works in the numbers of the plain steps, as these, the end of slip, the look for it and the ends of runs do; the others work in doubles.</summary>
    public static bool IsInNumbersOfSteps(string name) => name is nameof(ShotKernels.Slide) or nameof(ShotKernels.Roll) or nameof(ShotKernels.Stick) or nameof(ShotKernels.Look) or nameof(ShotKernels.EndSliding) or nameof(ShotKernels.ReachEnd) or nameof(ShotKernels.EndRolling);

    /// <summary>The method of a kernel, for the type arguments of a set.</summary>
    protected static MethodInfo Method(string name, Type[] types)
    {
        var method = typeof(ShotKernels).GetMethod(name)!;
        return name switch
        {
            _ when IsInNumbersOfSteps(name) => method.MakeGenericMethod(types[0], types[7], types[1], types[2], types[3], types[8]),
            _ => method.MakeGenericMethod(types[7], types[4], types[5], types[6], types[8]),
        };
    }

    /// <summary>A kernel for a card.</summary>
    protected static PTXCompiledKernel Compiled(string name, Type[] types, CudaArchitecture architecture, CudaInstructionSet instructions)
    {
        var whole = name is not (nameof(ShotKernels.Begin) or nameof(ShotKernels.Event));
        return KernelCompiler.Compile(architecture, instructions, Method(name, types), whole, FillOf(name, types[0], types[1]) is { } fill ? (fill.Threads, fill.Blocks) : null);
    }

    /// <summary>How plain steps fill a card: threads of a block; how many blocks together fill a multiprocessor; and after how many steps threads without a shot take the next.</summary>
    protected readonly record struct Fill(int Threads, int Blocks, int Steps);

    /// <summary>
    /// That of a kernel; null: it is not one of plain steps. Steps with given friction in floats do with two thirds of the registers, and half as many threads more hide what they wait for; with a film of oil they do not, and doubles have too few
    /// registers as it is. What taking the next shot costs, and how long one lasts, tells how often it is worth it; measured.
    /// </summary>
    protected static Fill? FillOf(string name, Type number, Type surface)
    {
        var (single, given) = (number == typeof(DeviceSingle), surface.GetGenericTypeDefinition() == typeof(GivenSurface<,>));
        return name switch
        {
            nameof(ShotKernels.Slide) => new(single && given ? 384 : 256, 1, given && !single ? 4 : 10),
            nameof(ShotKernels.Roll) => new(128, single && given ? 3 : 2, 3),
            _ => null,
        };
    }

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
        types.AddRange([kind.Single ? typeof(Singles) : typeof(Doubles), effects]);
        return typeof(KernelSet<,,,,,,,,>).MakeGenericType([.. types]);
    }
}

/// <summary>Shots of a chunk that are left over: of those that go on, slipping again and again, whom a chunk would wait for; and of those that wait for a rare event, whose kernel takes seconds to compile.</summary>
internal readonly record struct LeftOver(int Going, int Rare);

/// <summary>What decides which kernels a group of shots needs.</summary>
internal readonly record struct GroupKind(bool Single, bool Given, bool Sloped, bool OneSetup, Effects Effects);

internal sealed class KernelSet<T, TSurface, TGround, TSetups, TSurfaceInEvents, TGroundInEvents, TSetupsInEvents, TUnit, TEffects> : KernelSet
    where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
    where TGround : struct, IGround<T, TSurface>, IGroundOn<TGround, T>
    where TSetups : struct, ISetups<T>, ISetupsFrom<TSetups, T>
    where TSurfaceInEvents : struct, ISurface<DeviceDouble>
    where TGroundInEvents : struct, IGround<DeviceDouble, TSurfaceInEvents>, IGroundOn<TGroundInEvents, DeviceDouble>
    where TSetupsInEvents : struct, ISetups<DeviceDouble>, ISetupsFrom<TSetupsInEvents, DeviceDouble>
    where TUnit : unmanaged, IUnit<TUnit>
    where TEffects : struct, IEffects
{
    // Threads of a block: more blocks than the device runs at a time; one warp, where few are slow: they spread over the card; twice as many for ends, which nearly all shots meet together; what a block that finishes shots has room for.
    private readonly int blockSize, smallBlock, endBlock, finishBlock;

    // Of plain steps, and how many multiprocessors there are.
    private readonly Fill slideFill, rollFill;
    private readonly int multiprocessors;

    private const int WarpSize = 32;

    private readonly Action<AcceleratorStream, KernelConfig, Shots<TUnit>, Lists, int, TSetups, TGround> slide, roll;
    private readonly Action<AcceleratorStream, KernelConfig, Shots<TUnit>, Lists, TSetups, TGround> reachEnd;
    private readonly Action<AcceleratorStream, KernelConfig, Shots<TUnit>, Lists, double, TSetups, TGround> look, endSliding, endRolling;
    private readonly Action<AcceleratorStream, KernelConfig, Shots<TUnit>, Lists, double, TSetupsInEvents, TGroundInEvents> startSlip;
    private readonly Action<AcceleratorStream, KernelConfig, Shots<TUnit>, Lists, int, TSetups, TGround> stick;
    private readonly Action<AcceleratorStream, KernelConfig, ArrayView<Start>, Shots<TUnit>, int, Lists, TSetupsInEvents, TGroundInEvents> beginSliding;
    private readonly Action<AcceleratorStream, KernelConfig, Shots<TUnit>, int, ArrayView<double>, TSetupsInEvents, TGroundInEvents> finish;

    // These two take longest to compile, and many ensembles never meet what they are for.
    private readonly Lazy<Action<AcceleratorStream, KernelConfig, ArrayView<Start>, Shots<TUnit>, Lists, TSetupsInEvents, TGroundInEvents>> begin;
    private readonly Lazy<Action<AcceleratorStream, KernelConfig, Shots<TUnit>, Lists, double, TSetupsInEvents, TGroundInEvents>> events;

    // A step too short for the numbers of plain steps would be undone there.
    private static readonly double Shortest = 2 * (double)T.Sliver;

    // So little slip, m/s, floats would lose among the velocities that it is the difference of: a ball handed over with less sticks at once, slips on and sticks again.
    private static readonly double LeastSlip = typeof(T) == typeof(DeviceSingle) ? 1e-3 : 0;

    public KernelSet(Accelerator accelerator)
    {
        blockSize = Math.Min(64, accelerator.MaxGroupSize.X);
        smallBlock = Math.Min(WarpSize, blockSize);
        finishBlock = Math.Min(ShotKernels.FinishBlock, blockSize);
        endBlock = Math.Min(2 * blockSize, accelerator.MaxGroupSize.X);
        Fill Filling(string name) => FillOf(name, typeof(T), typeof(TSurface)) is { } fill ? fill with { Threads = Math.Min(fill.Threads, accelerator.MaxNumThreadsPerGroup) } : default;
        (slideFill, rollFill) = (Filling(nameof(ShotKernels.Slide)), Filling(nameof(ShotKernels.Roll)));
        multiprocessors = accelerator.NumMultiprocessors;
        var kernels = Loaded(accelerator, Names.Except(Seldom));
        void Launcher<TLauncher>(out TLauncher launcher, string name)
            where TLauncher : Delegate => launcher = kernels[name].CreateLauncherDelegate<TLauncher>();
        void OnDemand<TLauncher>(out Lazy<TLauncher> launcher, string name)
            where TLauncher : Delegate => launcher = new(() => Loaded(accelerator, [name]).Single().Value.CreateLauncherDelegate<TLauncher>());
        Launcher(out slide, nameof(ShotKernels.Slide));
        Launcher(out roll, nameof(ShotKernels.Roll));
        Launcher(out reachEnd, nameof(ShotKernels.ReachEnd));
        Launcher(out endSliding, nameof(ShotKernels.EndSliding));
        Launcher(out endRolling, nameof(ShotKernels.EndRolling));
        Launcher(out startSlip, nameof(ShotKernels.StartSlip));
        Launcher(out look, nameof(ShotKernels.Look));
        Launcher(out stick, nameof(ShotKernels.Stick));
        Launcher(out beginSliding, nameof(ShotKernels.BeginSliding));
        Launcher(out finish, nameof(ShotKernels.Finish));
        OnDemand(out begin, nameof(ShotKernels.Begin));
        OnDemand(out events, nameof(ShotKernels.Event));
    }

    public override int[] Run(ChunkMemory chunk, Group group, LeftOver most, KernelTimes? times, CancellationToken cancellation)
    {
        var (stream, count, shots) = (chunk.Stream, group.Count, chunk.Shots<TUnit>());
        chunk.Upload(group.Starts);
        // One setup is an argument; a table must lie on the device.
        var setups = TSetups.From(group.Setups<T>(), chunk.Upload(group.Setups<T>()));
        var setupsInEvents = TSetupsInEvents.From(group.Setups<DeviceDouble>(), chunk.Upload(group.Setups<DeviceDouble>()));
        var (lane, laneInEvents) = (chunk.Lane<T>(group.Lane), chunk.Lane<DeviceDouble>(group.Lane));
        var ground = TGround.On(lane.Map, lane.Heights);
        var groundInEvents = TGroundInEvents.On(laneInEvents.Map, laneInEvents.Heights);

        // A kernel for so many threads, those of a list; what a thread finds nothing to do for is gone at once.
        void On(int threads, int size, Action<KernelConfig> kernel, Action<KernelTimes, double> add)
        {
            if (threads > 0)
            {
                KernelTimes.Run(times, stream, () => kernel(Blocks(threads, size)), add);
            }
        }

        chunk.Clear(0, Lists.Lengths);
        On(count, blockSize, blocks => beginSliding(stream, blocks, chunk.Starts, shots, count, chunk.Lists, setupsInEvents, groundInEvents), (t, s) => t.Begin += s);
        On(chunk.ReadLengths()[Lists.Rare], smallBlock, blocks => begin.Value(stream, blocks, chunk.Starts, shots, chunk.Lists, setupsInEvents, groundInEvents), (t, s) => t.Begin += s);
        chunk.Clear(Lists.Rare);
        int[] left;
        while (true)
        {
            var lengths = chunk.ReadLengths();
            var (sliding, rolling, near, rare) = (lengths[Lists.Sliding], lengths[Lists.Rolling], lengths[Lists.Near], lengths[Lists.Rare]);
            times?.Slipping += lengths[Lists.Slipping];
            var plain = sliding + rolling + near;
            if (plain <= most.Going && rare <= most.Rare)
            {
                left = chunk.ReadLists(Lists.Sliding, Lists.Rolling, Lists.Near, Lists.Rare);
                break;
            }
            cancellation.ThrowIfCancellationRequested();
            chunk.Clear(Lists.Slid, Lists.Lengths - Lists.Slid);
            // Their kernel takes long, however few they are: they wait for each other.
            if (plain <= most.Going)
            {
                On(rare, smallBlock, blocks => events.Value(stream, blocks, shots, chunk.Lists, Shortest, setupsInEvents, groundInEvents), (t, s) => t.Events += s);
                chunk.Clear(Lists.Rare);
                times?.Waited(rare);
                continue;
            }
            if (sliding > 0)
            {
                KernelTimes.Run(times, stream, () => slide(stream, Lasting(sliding, slideFill), shots, chunk.Lists, slideFill.Steps, setups, ground), (t, s) => t.Slide += s);
                chunk.Move(Lists.Sliding, Lists.Slid);
            }
            On(sliding, blockSize, blocks => stick(stream, blocks, shots, chunk.Lists, Lists.Slid, setups, ground), (t, s) => t.Stick += s);
            // How many of them roll now only the card knows.
            var mayRoll = sliding + rolling;
            if (mayRoll > 0)
            {
                KernelTimes.Run(times, stream, () => roll(stream, Lasting(mayRoll, rollFill), shots, chunk.Lists, rollFill.Steps, setups, ground), (t, s) => t.Roll += s);
                chunk.Move(Lists.Rolling, Lists.Rolled);
            }
            On(mayRoll, endBlock, blocks => reachEnd(stream, blocks, shots, chunk.Lists, setups, ground), (t, s) => t.Reach += s);
            // Of the others there are few.
            lengths = chunk.ReadLengths();
            (near, var slideEnds, var rollEnds) = (lengths[Lists.Near], lengths[Lists.SlideEnds], lengths[Lists.RollEnds]);
            times?.Round(sliding + lengths[Lists.Rolled], near);
            On(near, blockSize, blocks => look(stream, blocks, shots, chunk.Lists, Shortest, setups, ground), (t, s) => t.Look += s);
            chunk.Clear(Lists.Near);
            On(near, smallBlock, blocks => startSlip(stream, blocks, shots, chunk.Lists, LeastSlip, setupsInEvents, groundInEvents), (t, s) => t.StartSlip += s);
            // Slip that has hardly begun may have come to its end.
            On(near, smallBlock, blocks => stick(stream, blocks, shots, chunk.Lists, Lists.Sticking, setups, ground), (t, s) => t.Stick += s);
            On(slideEnds + near, endBlock, blocks => endSliding(stream, blocks, shots, chunk.Lists, Shortest, setups, ground), (t, s) => t.End += s);
            On(rollEnds + near, smallBlock, blocks => endRolling(stream, blocks, shots, chunk.Lists, Shortest, setups, ground), (t, s) => t.End += s);
        }
        On(count, finishBlock, blocks => finish(stream, blocks, shots, count, chunk.Finished, setupsInEvents, groundInEvents), (t, s) => t.Finish += s);
        chunk.Download(count);
        return left;
    }

    // For plain steps: few blocks that stay; of few shots one warp here, one there.
    private KernelConfig Lasting(int count, Fill fill)
    {
        var most = fill.Blocks * multiprocessors;
        var size = Math.Clamp((count / most + WarpSize - 1) / WarpSize * WarpSize, Math.Min(WarpSize, fill.Threads), fill.Threads);
        return new(Math.Min((count + size - 1) / size, most), size);
    }

    private static KernelConfig Blocks(int count, int size) => new((count + size - 1) / size, size);

    // Compiled side by side, here and by the driver: some take many seconds.
    private static Dictionary<string, Kernel> Loaded(Accelerator accelerator, IEnumerable<string> names)
    {
        var types = typeof(KernelSet<T, TSurface, TGround, TSetups, TSurfaceInEvents, TGroundInEvents, TSetupsInEvents, TUnit, TEffects>).GetGenericArguments();
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
