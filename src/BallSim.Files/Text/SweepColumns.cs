using BallSim.Sweeps;

namespace BallSim.Files.Text;

/// <summary>The columns of a sweep's table: the row, the factors, how the shot ended, the metrics, and why there was none.</summary>
internal static class SweepColumns
{
    public static IReadOnlyList<Column<SweepRow>> Of(SweepPlan plan) =>
    [
        new("row", r => r.Row),
        .. plan.Factors.Select((factor, i) => new Column<SweepRow>(factor.Name, r => factor.Shown(r.Values[i]))),
        new("end", r => r.Outcome?.StopReason.ToString()),
        .. plan.Metrics.Select(metric => new Column<SweepRow>(metric.Name, r => r.Outcome is { } outcome ? metric.Value(outcome) : null)),
        new("failure", r => r.Failure),
    ];

    /// <summary>The columns that hold text; all others hold numbers.</summary>
    public static IEnumerable<string> Texts(SweepPlan plan) => [.. plan.Factors.Where(f => f.Labels.Count > 0).Select(f => f.Name), "end", "failure"];
}
