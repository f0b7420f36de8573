using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>The rows of an ensemble, handed out in chunks to whoever is free.</summary>
internal sealed class Chunks(Rows rows, EnsembleOptions options, IProgress<int>? progress, CancellationToken cancellation, int most)
{
    // Rows that one thread of the processor prepares or reads in one go.
    private const int Block = 2048;

    private int next, done;

    public Rows Rows => rows;

    public EnsembleOptions Options => options;

    public CancellationToken Cancellation => cancellation;

    public int Most => most;

    public bool TryTake(out int from, out int count)
    {
        cancellation.ThrowIfCancellationRequested();
        from = Interlocked.Add(ref next, most) - most;
        count = Math.Min(most, rows.Count - from);
        return count > 0;
    }

    /// <summary>The chunks that nobody has taken.</summary>
    public IEnumerable<(int From, int Count)> Left()
    {
        while (TryTake(out var from, out var count))
        {
            yield return (from, count);
        }
    }

    /// <summary>The throws of a chunk, checked, as the device wants them.</summary>
    /// <param name="from">First row.</param>
    /// <param name="count">Number of rows.</param>
    /// <param name="room">For them, as long as the chunk is of use.</param>
    public FilledChunk Filled(int from, int count, ChunkRows room)
    {
        var chunk = new FilledChunk(from, count, options.Shot, room);
        ForBlocks(count, (at, n) =>
        {
            rows.Fill(from + at, room.Balls.AsSpan(at, n), room.Lanes.AsSpan(at, n), room.Launches.AsSpan(at, n));
            for (var i = at; i < at + n; i++)
            {
                room.InDoubt[i] = options.Precision == Precision.Single && Doubt.Of(room.Balls[i], room.Lanes[i], room.Launches[i]);
            }
        });
        chunk.Sort();
        return chunk;
    }

    public void Keep(FilledChunk chunk)
    {
        ForBlocks(chunk.Count, (at, n) => rows.Keep(chunk.From + at, chunk.Outcomes.AsSpan(at, n)));
        Report(chunk.Count);
    }

    /// <summary>Progress of a part that is computed elsewhere.</summary>
    public IProgress<int>? PartOf()
    {
        if (progress is null)
        {
            return null;
        }
        var before = 0;
        return new Told(n => Report(n - Interlocked.Exchange(ref before, n)));
    }

    /// <summary>Blocks of a chunk, from a row so many, on the processor's threads.</summary>
    public static void ForBlocks(int count, Action<int, int> body)
    {
        try
        {
            Parallel.For(0, (count + Block - 1) / Block, block => body(block * Block, Math.Min(Block, count - block * Block)));
        }
        catch (AggregateException several)
        {
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
    }

    private void Report(int count) => progress?.Report(Interlocked.Add(ref done, count));

    private sealed class Told(Action<int> tell) : IProgress<int>
    {
        public void Report(int value) => tell(value);
    }
}
