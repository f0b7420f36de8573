using ILGPU.Runtime;

namespace BallSim.Gpu;

/// <summary>A card, its kernels, and whether it still works.</summary>
internal sealed class Device(Accelerator accelerator) : IDisposable
{
    private readonly Dictionary<GroupKind, KernelSet> kernels = [];
    private readonly List<ChunkMemory> free = [];
    private volatile bool isLost;

    public Accelerator Accelerator => accelerator;

    public bool IsLost
    {
        get => isLost;
        set => isLost = value;
    }

    /// <summary>Memory for a chunk, used again from ensemble to ensemble.</summary>
    public ChunkMemory Rent(int most)
    {
        lock (free)
        {
            var found = free.FindIndex(m => m.Most >= most);
            if (found >= 0)
            {
                var memory = free[found];
                free.RemoveAt(found);
                return memory;
            }
        }
        return new(accelerator, most);
    }

    /// <summary>Takes memory back.</summary>
    public void Return(ChunkMemory memory)
    {
        memory.Rows.Forget();
        lock (free)
        {
            free.Add(memory);
        }
    }

    public void Dispose()
    {
        try
        {
            free.ForEach(m => m.Dispose());
            accelerator.Dispose();
        }
        catch (AcceleratorException)
        {
            // A lost card refuses to free what is lost with it.
        }
    }

    /// <summary>The kernels for a kind of shots, compiled when they are first asked for.</summary>
    public KernelSet Kernels(GroupKind kind)
    {
        lock (kernels)
        {
            if (!kernels.TryGetValue(kind, out var set))
            {
                kernels[kind] = set = KernelSet.For(accelerator, kind);
            }
            return set;
        }
    }
}
