using System.Globalization;
using BallSim.Spatial;

namespace BallSim.Ensembles;

/// <summary>Chunks of shots side by side in vectors, on all cores.</summary>
internal sealed class ProcessorEngine : EnsembleEngine
{
    // Few enough to stay in the cache with all they need, many enough to keep the lanes full, those of rare changes too. Measured: half and twice as many are slower by some per cent.
    public const int Chunk = 128;

    public override string Description => string.Create(CultureInfo.InvariantCulture, $"processor, {Environment.ProcessorCount} threads, {Ensemble.Width(Precision.Double)} doubles side by side");

    internal override void Run(Rows rows, EnsembleOptions options, IProgress<int>? progress, CancellationToken cancellation)
    {
        var chunks = (rows.Count + Chunk - 1) / Chunk;
        var threads = options.Threads > 0 ? options.Threads : Environment.ProcessorCount;
        var done = 0;
        try
        {
            Parallel.For(0, chunks, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancellation },
                () => (Crew: CrewFor(options), Work: new Rows.Work(Chunk)),
                (chunk, _, mine) =>
                {
                    var from = chunk * Chunk;
                    var count = Math.Min(Chunk, rows.Count - from);
                    rows.Fill(from, count, mine.Work);
                    mine.Crew.Finish(mine.Work, count);
                    rows.Keep(from, mine.Work.Outcomes.AsSpan(0, count));
                    progress?.Report(Interlocked.Add(ref done, count));
                    return mine;
                },
                mine => mine.Crew.Dispose());
        }
        catch (AggregateException several)
        {
            // The first of what the threads met; a wrong row is no matter of threads.
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
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
