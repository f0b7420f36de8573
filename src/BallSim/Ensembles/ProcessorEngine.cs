using System.Globalization;
using BallSim.Spatial;

namespace BallSim.Ensembles;

/// <summary>Chunks of shots side by side in vectors, on all cores.</summary>
internal sealed class ProcessorEngine : EnsembleEngine
{
    /// <summary>Shots that are taken at a time: few enough to stay in the cache with all they need. What of them waits for company goes on with those of the next chunk.</summary>
    public const int Chunk = 128;

    public override string Description => string.Create(CultureInfo.InvariantCulture, $"processor, {Environment.ProcessorCount} threads, {Ensemble.Width(Precision.Double)} doubles side by side");

    internal override void Run(Rows rows, EnsembleOptions options, IProgress<int>? progress, CancellationToken cancellation)
    {
        var chunks = (rows.Count + Chunk - 1) / Chunk;
        var threads = Math.Clamp(options.Threads > 0 ? options.Threads : Environment.ProcessorCount, 1, Math.Max(chunks, 1));
        var (taken, done) = (0, 0);
        try
        {
            Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancellation }, (_, loop) =>
            {
                bool GoesOn() => !loop.ShouldExitCurrentIteration && !cancellation.IsCancellationRequested;

                using var crew = CrewFor(options);
                List<Rows.Work> open = [];
                Stack<Rows.Work> free = [];
                for (int chunk; GoesOn() && (chunk = Interlocked.Increment(ref taken) - 1) < chunks;)
                {
                    var work = free.TryPop(out var used) ? used : new(Chunk);
                    (work.From, work.Count) = (chunk * Chunk, Math.Min(Chunk, rows.Count - chunk * Chunk));
                    rows.Fill(work.From, work.Balls.AsSpan(0, work.Count), work.Lanes.AsSpan(0, work.Count), work.Launches.AsSpan(0, work.Count));
                    crew.Take(work);
                    open.Add(work);
                    Keep(open, free);
                }
                if (GoesOn())
                {
                    crew.Drain();
                    Keep(open, free);
                }
            });
        }
        catch (AggregateException several)
        {
            // The first of what the threads met; a wrong row is no matter of threads.
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
        cancellation.ThrowIfCancellationRequested();

        // Chunks that are whole.
        void Keep(List<Rows.Work> open, Stack<Rows.Work> free)
        {
            foreach (var work in open.Where(w => w.Left == 0))
            {
                rows.Keep(work.From, work.Outcomes.AsSpan(0, work.Count));
                progress?.Report(Interlocked.Add(ref done, work.Count));
                free.Push(work);
            }
            open.RemoveAll(w => w.Left == 0);
        }
    }

    private static Crew CrewFor(EnsembleOptions options) => (options.SideBySide ? Ensemble.Width(Precision.Double) : 1, options.Precision) switch
    {
        (8, Precision.Double) => new Crew<Doubles8, Doubles8>(options.Shot),
        (8, _) => new Crew<Floats16, Doubles8>(options.Shot),
        (4, Precision.Double) => new Crew<Doubles4, Doubles4>(options.Shot),
        (4, _) => new Crew<Floats8, Doubles4>(options.Shot),
        _ => new Crew(options.Shot),
    };
}
