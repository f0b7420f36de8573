using BallSim.Ensembles;

namespace BallSim.Sweeps;

/// <summary>
/// Computes the rows of a plan. A row is a function of the plan and its number alone: whatever block, shard, thread or order it is computed in, it is the same to the last bit.
/// </summary>
public static class Sweep
{
    /// <summary>Rows computed at a time by <see cref="Rows"/>: memory holds one such block, whatever the size of the sweep.</summary>
    public const int BlockSize = 4096;

    /// <summary>All rows in order, computed a block at a time while they are read.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="progress">Told how many rows are done.</param>
    /// <param name="cancellation">Stops between two chunks of a block.</param>
    /// <exception cref="ArgumentException">The factors do not fit the design.</exception>
    public static IEnumerable<SweepRow> Rows(SweepPlan plan, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Blocks(plan, plan.Rows, progress, cancellation);
    }

    /// <summary>Some neighbouring rows, all in memory.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="from">The first row, from 0.</param>
    /// <param name="count">How many.</param>
    /// <param name="cancellation">Stops between two chunks.</param>
    /// <exception cref="ArgumentException">The factors do not fit the design, or there are no such rows.</exception>
    public static SweepRow[] Block(SweepPlan plan, int from, int count, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var rows = plan.Rows;
        Check.Range(from, 0, rows, Quantity.Number);
        Check.Range(count, 0, rows - from, Quantity.Number);
        var values = new double[count][];
        var throws = new Throw[count];
        var failures = new string?[count];
        var threads = plan.Options.Threads > 0 ? plan.Options.Threads : Environment.ProcessorCount;
        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancellation }, i =>
        {
            values[i] = plan.Design.Values(plan.Factors, from + i);
            (throws[i], failures[i]) = Built(plan.Build, values[i]);
        });
        var outcomes = Thrown(throws, failures, plan.Options, cancellation);
        return [.. Enumerable.Range(0, count).Select(i => new SweepRow(from + i, values[i], outcomes[i], failures[i]))];
    }

    /// <summary>A throw, or why there is none.</summary>
    internal static (Throw Throw, string? Failure) Built(Func<IReadOnlyList<double>, Throw> build, double[] values)
    {
        try
        {
            var made = build(values);
            made.Release.LaunchOn(made.Lane, made.Ball);
            return (made, null);
        }
        catch (ArgumentException wrong)
        {
            return (default, Sentence(wrong));
        }
    }

    /// <summary>Outcomes of those that can be thrown; what turns out impossible only then joins the failures.</summary>
    internal static Outcome?[] Thrown(Throw[] throws, string?[] failures, EnsembleOptions options, CancellationToken cancellation)
    {
        var possible = Enumerable.Range(0, throws.Length).Where(i => failures[i] is null).ToArray();
        var outcomes = new Outcome?[throws.Length];
        try
        {
            var found = Ensemble.Throw([.. possible.Select(i => throws[i])], options, null, cancellation);
            for (var k = 0; k < possible.Length; k++)
            {
                outcomes[possible[k]] = found[k];
            }
        }
        catch (ArgumentException)
        {
            // Ball, lane and law of friction meet only in the throw; one that cannot be must not take the others with it.
            foreach (var i in possible)
            {
                try
                {
                    outcomes[i] = Ensemble.Throw([throws[i]], options, null, cancellation)[0];
                }
                catch (ArgumentException wrong)
                {
                    failures[i] = Sentence(wrong.InnerException as ArgumentException ?? wrong);
                }
            }
        }
        return outcomes;
    }

    private static IEnumerable<SweepRow> Blocks(SweepPlan plan, int rows, IProgress<int>? progress, CancellationToken cancellation)
    {
        for (var from = 0; from < rows; from += BlockSize)
        {
            var count = Math.Min(BlockSize, rows - from);
            foreach (var row in Block(plan, from, count, cancellation))
            {
                yield return row;
            }
            progress?.Report(from + count);
        }
    }

    // On one line, without the note of the parameter that .NET appends.
    private static string Sentence(ArgumentException wrong)
    {
        var text = wrong.Message.ReplaceLineEndings("\n");
        var note = text.IndexOf(" (Parameter '", StringComparison.Ordinal);
        return (note < 0 ? text : text[..note]).Split('\n')[0];
    }
}
