using BallSim.Lanes;
using BallSim.Spatial;
using ILGPU;
using ILGPU.Runtime;

namespace BallSim.Gpu;

/// <summary>Memory for a chunk of shots on a device, and the stream its kernels run in.</summary>
internal sealed class ChunkMemory : IDisposable
{
    private const int MostLanes = 64;

    private readonly Accelerator accelerator;
    private readonly MemoryBuffer1D<Start, Stride1D.Dense> starts;
    private readonly MemoryBuffer1D<Shot, Stride1D.Dense> shots;
    private readonly MemoryBuffer1D<Finished, Stride1D.Dense> finished;
    private readonly MemoryBuffer1D<int, Stride1D.Dense> sliding, rolling, events, near, stiff, rare, counts;
    private readonly int[] lengths = new int[ShotKernels.Lists];
    private readonly Dictionary<Lane, Dictionary<Type, IDisposable>> lanes = new(ReferenceEqualityComparer.Instance);

    public ChunkMemory(Accelerator accelerator, int most)
    {
        this.accelerator = accelerator;
        Most = most;
        Stream = accelerator.CreateStream();
        starts = accelerator.Allocate1D<Start>(most);
        shots = accelerator.Allocate1D<Shot>(most);
        finished = accelerator.Allocate1D<Finished>(most);
        sliding = accelerator.Allocate1D<int>(most);
        rolling = accelerator.Allocate1D<int>(most);
        events = accelerator.Allocate1D<int>(most);
        near = accelerator.Allocate1D<int>(most);
        stiff = accelerator.Allocate1D<int>(most);
        rare = accelerator.Allocate1D<int>(most);
        counts = accelerator.Allocate1D<int>(lengths.Length);
        Rows = new(most);
        Results = new Finished[most];
    }

    public AcceleratorStream Stream { get; }

    /// <summary>Shots it has room for.</summary>
    public int Most { get; }

    public ArrayView<Start> Starts => starts.View;

    public ArrayView<Shot> Shots => shots.View;

    public ArrayView<Finished> Finished => finished.View;

    public ArrayView<int> Sliding => sliding.View;

    public ArrayView<int> Rolling => rolling.View;

    public ArrayView<int> Events => events.View;

    public ArrayView<int> Near => near.View;

    public ArrayView<int> Stiff => stiff.View;

    public ArrayView<int> Rare => rare.View;

    public ArrayView<int> Counts => counts.View;

    /// <summary>For the rows of the chunk.</summary>
    public ChunkRows Rows { get; }

    /// <summary>What was downloaded last.</summary>
    public Finished[] Results { get; }

    public void Upload(ReadOnlySpan<Start> from)
    {
        // A sweep over oil patterns has many lanes: few are kept.
        if (lanes.Count > MostLanes)
        {
            ForgetLanes();
        }
        starts.View.SubView(0, from.Length).CopyFromCPU(Stream, from);
    }

    public MemoryBuffer1D<TItem, Stride1D.Dense> Upload<TItem>(TItem[] items)
        where TItem : unmanaged
    {
        var buffer = accelerator.Allocate1D<TItem>(items.Length);
        buffer.View.CopyFromCPU(Stream, items);
        return buffer;
    }

    /// <summary>Empties some of the lists.</summary>
    public void Clear(int first, int number) => counts.View.SubView(first, number).MemSetToZero(Stream);

    /// <summary>The lengths of the lists, good until they are read again.</summary>
    public ReadOnlySpan<int> ReadCounts()
    {
        counts.View.CopyToCPU(Stream, lengths);
        Stream.Synchronize();
        return lengths;
    }

    /// <summary>The shots under way: those that slide, that roll, that must slip on, that wait for a rare event.</summary>
    public int[] ReadLists(int sliding, int rolling, int near, int rare)
    {
        var all = new int[sliding + rolling + near + rare];
        var from = 0;
        foreach (var (list, count) in new[] { (Sliding, sliding), (Rolling, rolling), (Near, near), (Rare, rare) })
        {
            if (count > 0)
            {
                list.SubView(0, count).CopyToCPU(Stream, all.AsSpan(from, count));
                from += count;
            }
        }
        Stream.Synchronize();
        return all;
    }

    public void Download(int count)
    {
        finished.View.SubView(0, count).CopyToCPU(Stream, Results.AsSpan(0, count));
        Stream.Synchronize();
    }

    /// <summary>The maps of a lane, uploaded when they are first asked for.</summary>
    public LaneOnDevice<T> Lane<T>(Lane lane)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
        if (!lanes.TryGetValue(lane, out var byNumber))
        {
            lanes[lane] = byNumber = [];
        }
        if (!byNumber.TryGetValue(typeof(T), out var found))
        {
            byNumber[typeof(T)] = found = new LaneOnDevice<T>(accelerator, lane);
        }
        return (LaneOnDevice<T>)found;
    }

    public void Dispose()
    {
        ForgetLanes();
        foreach (IDisposable buffer in new IDisposable[] { starts, shots, finished, sliding, rolling, events, near, stiff, rare, counts, Stream })
        {
            buffer.Dispose();
        }
    }

    private void ForgetLanes()
    {
        foreach (var maps in lanes.Values.SelectMany(byNumber => byNumber.Values))
        {
            maps.Dispose();
        }
        lanes.Clear();
    }
}
