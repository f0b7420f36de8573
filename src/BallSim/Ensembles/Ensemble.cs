using System.Runtime.Intrinsics;
using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Spatial;

namespace BallSim.Ensembles;

/// <summary>
/// Computes many shots: side by side in vectors, on all cores. Every shot is that of <see cref="Shots.Simulator"/> step by step, all physics included; in doubles the shots side by side are bit-equal to those
/// one by one, so that results depend neither on the machine's vectors nor on threads, chunks or order.
/// </summary>
public static class Ensemble
{
    // Few enough to stay in the cache with all they need, many enough to keep the lanes full.
    internal const int Chunk = 128;

    /// <summary>Throws a list of throws.</summary>
    /// <param name="throws">The throws; read while they are computed, from several threads.</param>
    /// <param name="options">How; null for the default.</param>
    /// <param name="progress">Told how many shots are done, from any thread.</param>
    /// <param name="cancellation">Stops between two chunks.</param>
    /// <returns>One outcome a throw, in their order.</returns>
    /// <exception cref="ArgumentException">A release does not fit its ball or lane; the message tells which. Nothing is returned then.</exception>
    public static Outcome[] Throw(IReadOnlyList<Throw> throws, EnsembleOptions? options = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(throws);
        var outcomes = new Outcome[throws.Count];
        Run(new ThrowRows(throws, outcomes), options ?? new(), progress, cancellation);
        return outcomes;
    }

    /// <summary>Throws one ball on one lane by releases in columns.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="common">The release that holds what the columns do not give.</param>
    /// <param name="columns">The numbers that differ from shot to shot.</param>
    /// <param name="options">How; null for the default.</param>
    /// <param name="progress">Told how many shots are done, from any thread.</param>
    /// <param name="cancellation">Stops between two chunks.</param>
    /// <returns>One outcome a row, in their order.</returns>
    /// <exception cref="ArgumentException">A row is no release; the message tells which.</exception>
    public static Outcome[] Throw(Ball ball, Lane lane, Release common, ReleaseColumns columns, EnsembleOptions? options = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(lane);
        ArgumentNullException.ThrowIfNull(common);
        ArgumentNullException.ThrowIfNull(columns);
        var outcomes = new Outcome[columns.Count];
        Run(new ColumnRows(ball, lane, common, columns, outcomes), options ?? new(), progress, cancellation);
        return outcomes;
    }

    /// <summary>How many shots run side by side on this machine.</summary>
    /// <param name="precision">Doubles or floats.</param>
    public static int Width(Precision precision) => (Vector512.IsHardwareAccelerated ? 8 : Vector256.IsHardwareAccelerated ? 4 : 1) * (precision == Precision.Single && Vector256.IsHardwareAccelerated ? 2 : 1);

    private static void Run(Rows rows, EnsembleOptions options, IProgress<int>? progress, CancellationToken cancellation)
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
                _ => { });
        }
        catch (AggregateException several)
        {
            // The first of what the threads met; a wrong row is no matter of threads.
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
    }

    internal static Crew CrewFor(EnsembleOptions options) => (options.SideBySide ? Width(Precision.Double) : 1, options.Precision) switch
    {
        (8, Precision.Double) => new Crew<Doubles8>(options.Shot),
        (8, _) => new Crew<Floats16>(options.Shot),
        (4, Precision.Double) => new Crew<Doubles4>(options.Shot),
        (4, _) => new Crew<Floats8>(options.Shot),
        _ => new Crew(options.Shot),
    };
}
