using System.Runtime.CompilerServices;
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
    private readonly MemoryBuffer1D<Doubles, Stride1D.Dense> units;
    private readonly MemoryBuffer1D<Counts, Stride1D.Dense> counts;
    private readonly MemoryBuffer1D<int, Stride1D.Dense> setups, whys;
    private readonly MemoryBuffer1D<Finished, Stride1D.Dense> finished;
    private readonly MemoryBuffer1D<int, Stride1D.Dense> lists, listLengths;
    private readonly int[] lengths = GC.AllocateArray<int>(Gpu.Lists.Lengths, pinned: true);
    private readonly List<IDisposable> locks = [];
    private readonly Dictionary<Type, MemoryBuffer> tables = [];
    private readonly Dictionary<Lane, Dictionary<Type, IDisposable>> lanes = new(ReferenceEqualityComparer.Instance);

    /// <summary>What a shot takes on the device and on the processor, bytes: of whole numbers its counts, its setup, why it waits, and its place in the lists.</summary>
    public static long BytesThere => ShotColumns.Numbers * sizeof(double) + Unsafe.SizeOf<Counts>() + Unsafe.SizeOf<Start>() + Unsafe.SizeOf<Finished>() + (2 + Gpu.Lists.Number) * sizeof(int);

    /// <inheritdoc cref="BytesThere"/>
    public static long BytesHere => ChunkRows.Bytes + Unsafe.SizeOf<Finished>();

    public ChunkMemory(Accelerator accelerator, int most)
    {
        this.accelerator = accelerator;
        Most = most;
        Stream = accelerator.CreateStream();
        starts = accelerator.Allocate1D<Start>(most);
        units = accelerator.Allocate1D<Doubles>(ShotColumns.Room(most));
        counts = accelerator.Allocate1D<Counts>(most);
        setups = accelerator.Allocate1D<int>(most);
        whys = accelerator.Allocate1D<int>(most);
        finished = accelerator.Allocate1D<Finished>(most);
        lists = accelerator.Allocate1D<int>((long)Gpu.Lists.Number * most);
        listLengths = accelerator.Allocate1D<int>(lengths.Length);
        Rows = new(most);
        Results = GC.AllocateArray<Finished>(most, pinned: true);
        Lock(Rows.Starts);
        Lock(Results);
        Lock(lengths);
    }

    public AcceleratorStream Stream { get; }

    /// <summary>Shots it has room for.</summary>
    public int Most { get; }

    public ArrayView<Start> Starts => starts.View;

    /// <summary>In units of doubles, or of floats, which take half the room.</summary>
    public Shots<TUnit> Shots<TUnit>()
        where TUnit : unmanaged, IUnit<TUnit> => new(units.View.BaseView.Cast<TUnit>(), counts.View, setups.View, whys.View);

    public ArrayView<double> Finished => finished.View.BaseView.Cast<double>();

    public Lists Lists => new(lists.View, Most, listLengths.View);

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

    /// <summary>A table, good until the next of its kind. Its memory is kept: to give some back, a card stops all that it does.</summary>
    public ArrayView<TItem> Upload<TItem>(TItem[] items)
        where TItem : unmanaged
    {
        if (tables.GetValueOrDefault(typeof(TItem)) is not MemoryBuffer1D<TItem, Stride1D.Dense> table || table.Length < items.Length)
        {
            tables.GetValueOrDefault(typeof(TItem))?.Dispose();
            tables[typeof(TItem)] = table = accelerator.Allocate1D<TItem>(items.Length);
        }
        var view = table.View.SubView(0, items.Length);
        view.CopyFromCPU(Stream, items);
        return view;
    }

    /// <summary>Empties some of the lists.</summary>
    public void Clear(int first, int number = 1) => listLengths.View.SubView(first, number).MemSetToZero(Stream);

    /// <summary>Gives the length of one list to another, and empties the first.</summary>
    public void Move(int from, int to)
    {
        listLengths.View.SubView(from, 1).CopyTo(Stream, listLengths.View.SubView(to, 1));
        Clear(from);
    }

    /// <summary>The lengths of the lists, good until they are read again.</summary>
    public ReadOnlySpan<int> ReadLengths()
    {
        listLengths.View.CopyToCPU(Stream, lengths);
        Stream.Synchronize();
        return lengths;
    }

    /// <summary>The shots in some of the lists, whose lengths have been read.</summary>
    public int[] ReadLists(params ReadOnlySpan<int> some)
    {
        var total = 0;
        foreach (var list in some)
        {
            total += lengths[list];
        }
        var (all, from) = (new int[total], 0);
        foreach (var list in some)
        {
            if (lengths[list] > 0)
            {
                Lists.Of(list).SubView(0, lengths[list]).CopyToCPU(Stream, all.AsSpan(from, lengths[list]));
                from += lengths[list];
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
        foreach (var buffer in (IEnumerable<IDisposable>)[.. locks, .. tables.Values, starts, units, counts, setups, whys, finished, lists, listLengths, Stream])
        {
            buffer.Dispose();
        }
    }

    // Kept where it is by the system as well, the card fetches and brings it several times as fast; where that cannot be had, it goes without.
    private void Lock<TItem>(TItem[] pinned)
        where TItem : unmanaged
    {
        try
        {
            locks.Add(accelerator.CreatePageLockFromPinned(pinned));
        }
        catch (AcceleratorException)
        {
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
