using BallSim.Releases;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>Throws candidates against each other: layouts, finishes, balls, releases, lanes, in any mixture.</summary>
public static class Comparison
{
    /// <summary>
    /// Least entry angle of the band that strikes best, 4 degrees (USBC, as quoted; a tracking study of 2024, doi
    /// 10.1177/17479541241306543, finds the entry angle less important).
    /// </summary>
    public const double LowestGoodAngle = 4 * Degree;

    /// <summary>Greatest entry angle of that band, 6 degrees (same source).</summary>
    public const double HighestGoodAngle = 6 * Degree;

    /// <summary>
    /// Throws every candidate twice over: on its own line, and re-aimed at the pocket, with the effect of the bowler's scatter there. The
    /// rows stand in the order of the candidates.
    /// </summary>
    /// <param name="candidates">What to compare.</param>
    /// <param name="scatter">The bowler's scatter; assumed numbers if null.</param>
    /// <param name="options">How each throw is computed.</param>
    /// <param name="progress">Told the number of rows done after each.</param>
    /// <param name="cancellation">Stops between two throws.</param>
    /// <exception cref="ArgumentException">
    /// A candidate's release does not fit its ball or lane; all are looked at before the first throw.
    /// </exception>
    /// <exception cref="OperationCanceledException">The comparison was stopped.</exception>
    public static IReadOnlyList<ComparisonRow> Of(IReadOnlyList<Candidate> candidates, Scatter? scatter = null, SimulatorOptions? options = null,
        IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        foreach (var candidate in candidates)
        {
            candidate.Release.StartOn(candidate.Lane, candidate.Ball);
        }
        scatter ??= new Scatter();
        var rows = new List<ComparisonRow>(candidates.Count);
        foreach (var candidate in candidates)
        {
            var (ball, lane, release) = (candidate.Ball, candidate.Lane, candidate.Release);
            cancellation.ThrowIfCancellationRequested();
            var aimed = Aim.AtPocket(ball, lane, release, options: options, cancellation: cancellation);
            rows.Add(new()
            {
                Candidate = candidate,
                SameLine = Simulator.Throw(ball, lane, release, options),
                ReAimed = aimed,
                Spread = aimed.IsFound ? EntrySpread.Of(ball, lane, aimed.Release, scatter, options, cancellation) : null,
            });
            progress?.Report(rows.Count);
        }
        return Marked(rows);
    }

    /// <summary>
    /// The rows with the best first: by the distance of the re-aimed entry angle from the band, rows inside it (and other ties) in the
    /// order they came; rows without a shot last.
    /// </summary>
    public static IReadOnlyList<ComparisonRow> Ranked(IReadOnlyList<ComparisonRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        return [.. rows.OrderBy(row => row.DistanceFromBand)];
    }

    private static IReadOnlyList<ComparisonRow> Marked(List<ComparisonRow> rows)
    {
        if (Ranked(rows).FirstOrDefault() is not { ReAimed.Shot: { } best } first)
        {
            return rows;
        }
        return [.. rows.Select(row => row == first || row.ReAimed.Shot is not { } shot ? row : row with
        {
            IsWithinScatter = Math.Abs(shot.Entry.Angle - best.Entry.Angle) < Math.Max(row.Spread?.Angle ?? 0, first.Spread?.Angle ?? 0),
        })];
    }
}
