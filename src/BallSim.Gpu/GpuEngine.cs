using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using BallSim.Ensembles;
using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;
using ILGPU.Runtime;
using ILGPU.Runtime.CPU;
using ILGPU.Runtime.Cuda;

namespace BallSim.Gpu;

/// <summary>
/// Computes ensembles on NVIDIA graphics cards, by the same equations as the processor. Give it to <see cref="EnsembleOptions.Engine"/>; sweeps, repeatability and search take it from there. All cards of the
/// machine work; if one fails, its shots are computed again on the processor, and <see cref="Notice"/> says so. An engine keeps its kernels: make one and use it for all ensembles. Safe to use from several threads.
/// </summary>
/// <remarks>
/// With <see cref="Precision.Double"/> outcomes are those of the processor to the last bit (seen of the 512 releases of the benchmark and of 10 000 scenarios of all kinds, on one card). With <see cref="Precision.Single"/> all but what begins
/// a run or a slip is done in floats: 2e-5 m at most over the releases; of the scenarios, many of which slip again and again, four in a hundred end farther off than 1e-4 m (2 mm across and 2 cm along a gutter's edge at most), and a shot
/// that just touches the pin or an edge may take the other turn (none of them). The last few of a chunk, those that floats do not tell (see there), and those on a lane whose map has intervals thousands of times as wide as others are thrown on the processor. The first ensemble of a kind compiles its kernels, up to a minute; then chunks of shots go through the card while the processor prepares the next.
/// </remarks>
public sealed class GpuEngine : EnsembleEngine, IDisposable
{
    // Shots of a chunk: enough to fill a card many times over, so that its slowest shots do not count; a part of the ensemble, so that the processor has its share of the work from the first to the last; and no more than memory allows.
    private const int LeastChunk = 1 << 18, MostChunk = 1 << 20, PartOfEnsemble = 16;

    // The part of all memory that chunks may take.
    private const int PartOfCard = 4, PartOfProcessor = 8;

    // A round takes half a millisecond, however few its shots are, and the kernel of rare events more, and seconds to be compiled. What is left of a chunk when so few shots for each thread of the processor go on (those that slip again and
    // again), and so few wait for a rare event, is thrown there; of either no more than this part of a chunk.
    private const int GoingPerThread = 4, RarePerThread = 40, Part = 256;

    /// <summary>Per card: while one chunk waits for its slowest events, others compute, and the processor prepares the next and reads the last.</summary>
    internal const int ChunksAtATime = 6;

    // Shots left over that one thread throws side by side, at least: few fill no lanes for long, but many keep the others waiting.
    private const int Slice = 4;

    // Kernels of events need much local memory, those of plain steps none: without this flag of the driver (CU_CTX_LMEM_RESIZE_TO_MAX) it is given back and taken anew for every launch.
    private const CudaAcceleratorFlags LocalMemoryStays = (CudaAcceleratorFlags)0x10;

    private readonly Context context;
    private readonly Device[] devices;

    private GpuEngine(Context context, IEnumerable<Accelerator> accelerators, int mostShots)
    {
        this.context = context;
        MostShots = mostShots;
        devices = [.. accelerators.Select(a => new Device(a))];
    }

    /// <summary>The cards.</summary>
    public IReadOnlyList<string> Devices => [.. devices.Select(d => d.Accelerator.Name)];

    /// <inheritdoc/>
    public override string Description => string.Join(", ", Devices);

    /// <summary>Told in a sentence what went wrong and where the shots are computed instead; from any thread. Null: not told.</summary>
    public Action<string>? Notice { get; init; }

    /// <summary>Called with the first row of a chunk before its kernels run: a test throws here what a card throws that fails.</summary>
    internal Action<int>? Before { get; init; }

    /// <summary>Most shots of a chunk.</summary>
    internal int MostShots { get; }

    /// <summary>So many of a group's shots may be left over, of those that go on and of those that wait for a rare event, for a test that wants more; told how many were.</summary>
    internal (int Most, Action<int> Told)? Left { get; init; }

    /// <summary>The cards of this machine.</summary>
    /// <exception cref="GpuUnavailableException">There is none that can be used; the message says why.</exception>
    public static GpuEngine Open(Action<string>? notice = null)
    {
        Context? context = null;
        try
        {
            context = NewContext(builder => builder.Cuda());
            var cards = context.GetCudaDevices();
            if (cards.Count == 0)
            {
                throw new GpuUnavailableException("no NVIDIA card was found: is one there, and its driver installed (nvidia-smi shows both)?");
            }
            var accelerators = new List<Accelerator>();
            foreach (var card in cards)
            {
                accelerators.Add(card.CreateCudaAccelerator(context, LocalMemoryStays));
            }
            return new(context, accelerators, MostShotsIn(accelerators.Min(a => a.MemorySize), GC.GetGCMemoryInfo().TotalAvailableMemoryBytes, accelerators.Count)) { Notice = notice };
        }
        catch (Exception failed) when (failed is not GpuUnavailableException and not OutOfMemoryException)
        {
            context?.Dispose();
            throw new GpuUnavailableException($"the card could not be opened ({failed.Message.ReplaceLineEndings(" ")}): a driver older than CUDA 11.8, or a card in use by another?", failed);
        }
        catch (GpuUnavailableException)
        {
            context?.Dispose();
            throw;
        }
    }

    /// <summary>The cards of this machine, or the processor.</summary>
    /// <param name="notice">Told why the processor computes.</param>
    public static EnsembleEngine OrProcessor(Action<string>? notice = null)
    {
        try
        {
            return Open(notice);
        }
        catch (GpuUnavailableException none)
        {
            notice?.Invoke($"The processor computes: {none.Message}");
            return Processor;
        }
    }

    /// <summary>The kernels as ILGPU runs them on the processor: slow, for tests.</summary>
    internal static GpuEngine Emulated(int mostShots = 256, Action<string>? notice = null, Action<int>? before = null, (int, Action<int>)? left = null)
    {
        var context = NewContext(builder => builder.CPU(CPUDeviceKind.Default));
        return new(context, [context.GetDevice<CPUDevice>(0).CreateAccelerator(context)], mostShots) { Notice = notice, Before = before, Left = left };
    }

    internal override void Run(Rows rows, EnsembleOptions options, IProgress<int>? progress, CancellationToken cancellation)
    {
        var most = ShotsOfChunk(rows.Count, MostShots);
        var work = new Chunks(rows, options, progress, cancellation, most);
        var lanes = Math.Min(ChunksAtATime, (rows.Count + most - 1) / most);
        var serving = devices.Where(d => !d.IsLost).SelectMany(device => Enumerable.Repeat(device, lanes)).ToArray();
        OnThreads(Description, serving.Length, k => Serve(serving[k], work));
        // What no card took: all of them are lost.
        foreach (var (from, count) in work.Left())
        {
            OnProcessor(work, from, count);
        }
    }

    /// <summary>Gives the cards back.</summary>
    public void Dispose()
    {
        foreach (var device in devices)
        {
            device.Dispose();
        }
        context.Dispose();
    }

    /// <summary>Kernel times of a chunk, the best of some rounds; on the first device.</summary>
    internal KernelTimes Timed(Throw[] throws, EnsembleOptions options, int rounds)
    {
        var device = devices[0];
        device.Accelerator.Bind();
        using var memory = new ChunkMemory(device.Accelerator, throws.Length);
        var (filled, group, kernels) = Ready(device, memory, throws, options);
        KernelTimes? best = null;
        for (var i = 0; i < rounds; i++)
        {
            var times = new KernelTimes();
            var left = kernels.Run(memory, group, MostLeft(group), times, default);
            var start = Stopwatch.GetTimestamp();
            Finish(filled, Array.ConvertAll(left, group.Row), options, default);
            (times.Rest, times.Left) = (Stopwatch.GetElapsedTime(start).TotalSeconds, left.Length);
            best = best is null || times.All < best.All ? times : best;
        }
        return best!;
    }

    /// <summary>Seconds that chunks take that go through the first device side by side, as they do in an ensemble, each so many times over: kernels, results brought back, and what is left over thrown on the processor; not what prepares and reads a chunk.</summary>
    internal double Together(Throw[] throws, EnsembleOptions options, int chunks, int rounds)
    {
        var device = devices[0];
        device.Accelerator.Bind();
        var memories = Enumerable.Range(0, chunks).Select(_ => new ChunkMemory(device.Accelerator, throws.Length)).ToArray();
        try
        {
            var ready = Array.ConvertAll(memories, memory => Ready(device, memory, throws, options));
            var start = Stopwatch.GetTimestamp();
            OnThreads(device.Accelerator.Name, chunks, k =>
            {
                device.Accelerator.Bind();
                var (filled, group, kernels) = ready[k];
                for (var i = 0; i < rounds; i++)
                {
                    Finish(filled, Array.ConvertAll(kernels.Run(memories[k], group, MostLeft(group), null, default), group.Row), options, default);
                }
            });
            return Stopwatch.GetElapsedTime(start).TotalSeconds;
        }
        finally
        {
            Array.ForEach(memories, memory => memory.Dispose());
        }
    }

    private static (FilledChunk Filled, Group Group, KernelSet Kernels) Ready(Device device, ChunkMemory memory, Throw[] throws, EnsembleOptions options)
    {
        var filled = new Chunks(new ThrowRows(throws, new Outcome[throws.Length]), options, null, default, throws.Length).Filled(0, throws.Length, memory.Rows);
        var group = filled.Groups.Single();
        return (filled, group, device.Kernels(group.Kind(options.Precision == Precision.Single)));
    }

    /// <summary>A context in which kernels are compiled as they must be.</summary>
    internal static Context NewContext(Action<Context.Builder> devices, MathMode math = MathMode.Default)
    {
        KernelCompiler.Prepare();
        return Context.Create(builder => devices(Settings(builder).Math(math)));
    }

    private static Context.Builder Settings(Context.Builder builder) => builder.Optimize(OptimizationLevel.O1).Inlining(InliningMode.Disabled);

    /// <summary>Shots of a chunk of so many rows.</summary>
    internal static int ShotsOfChunk(int rows, int most) => Math.Min(Math.Clamp(rows / PartOfEnsemble, Math.Min(LeastChunk, most), most), Math.Max(rows, 1));

    /// <summary>Shots of the largest chunk that memory allows: bytes of the smallest card and of the processor, and how many cards there are.</summary>
    internal static int MostShotsIn(long there, long here, int cards) =>
        (int)Math.Clamp(Math.Min(there / PartOfCard / (ChunksAtATime * ChunkMemory.BytesThere), here / PartOfProcessor / (cards * ChunksAtATime * ChunkMemory.BytesHere)), 1 << 14, MostChunk);

    // Threads that may wait for a card; the first failure of one is raised when all have ended.
    private static void OnThreads(string name, int count, Action<int> body)
    {
        var failures = new ConcurrentQueue<Exception>();
        var threads = Enumerable.Range(0, count).Select(k => new Thread(() => Guarded(() => body(k), failures)) { IsBackground = true, Name = name }).ToList();
        threads.ForEach(t => t.Start());
        threads.ForEach(t => t.Join());
        if (failures.TryDequeue(out var first))
        {
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(first);
        }
    }

    private static void Guarded(Action work, ConcurrentQueue<Exception> failures)
    {
        try
        {
            work();
        }
        catch (Exception failed)
        {
            failures.Enqueue(failed);
        }
    }

    // One thread of a card: takes chunks until there are none.
    private void Serve(Device device, Chunks work)
    {
        device.Accelerator.Bind();
        ChunkMemory? memory = null;
        try
        {
            while (!device.IsLost && work.TryTake(out var from, out var count))
            {
                try
                {
                    memory ??= device.Rent(work.Most);
                    var filled = work.Filled(from, count, memory.Rows);
                    Before?.Invoke(from);
                    var single = work.Options.Precision == Precision.Single;
                    foreach (var group in filled.Groups)
                    {
                        var left = device.Kernels(group.Kind(single)).Run(memory, group, MostLeft(group), null, work.Cancellation);
                        Left?.Told(left.Length);
                        filled.Read(group, memory.Results, left, single);
                    }
                    Finish(filled, filled.InDoubt(), work.Options, work.Cancellation);
                    work.Keep(filled);
                }
                catch (Exception failed) when (failed is AcceleratorException or OutOfMemoryException)
                {
                    device.IsLost |= failed is not OutOfMemoryException;
                    Notice?.Invoke($"{device.Accelerator.Name} failed ({failed.Message}): its {count} shots are computed on the processor");
                    OnProcessor(work, from, count);
                }
            }
        }
        finally
        {
            if (memory is not null)
            {
                device.Return(memory);
            }
        }
    }

    private LeftOver MostLeft(Group group)
    {
        int Most(int perThread) => Left?.Most ?? Math.Min(perThread * Environment.ProcessorCount, group.Count / Part);
        return new(Most(GoingPerThread), Most(RarePerThread));
    }

    // Rows of a chunk that the card does not bring to their end, from the foul line.
    private static void Finish(FilledChunk chunk, int[] rows, EnsembleOptions options, CancellationToken cancellation)
    {
        var alone = options with { Precision = Precision.Double, Threads = 1 };
        Parallel.ForEach(rows.Chunk(Math.Max(Slice, (rows.Length - 1) / Environment.ProcessorCount + 1)), slice => Processor.Run(new RestOfChunk(chunk, slice), alone, null, cancellation));
    }

    private static void OnProcessor(Chunks work, int from, int count) => Processor.Run(new PartOfRows(work.Rows, from, count), work.Options, work.PartOf(), work.Cancellation);
}
