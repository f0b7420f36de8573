using BallSim.Shots;

namespace BallSim.Plots;

/// <summary>What tells the rows of a comparison apart, and what they share.</summary>
internal static class RowNames
{
    private static readonly (string Heading, Func<Candidate, string> Of)[] Parts =
    [
        ("Ball", c => c.BallName), ("Layout", c => c.LayoutName), ("Finish", c => c.FinishName), ("Release", c => c.ReleaseName), ("Lane", c => c.LaneName),
    ];

    /// <summary>The parts that differ between rows.</summary>
    public static IReadOnlyList<(string Heading, Func<Candidate, string> Of)> Varying(IReadOnlyList<ComparisonRow> rows) =>
        [.. Parts.Where(part => rows.Select(r => part.Of(r.Candidate)).Distinct().Count() > 1)];

    /// <summary>A name for each row from the parts that differ; numbers where none does.</summary>
    public static string[] Of(IReadOnlyList<ComparisonRow> rows)
    {
        var varying = Varying(rows);
        return [.. rows.Select((row, i) => varying.Count == 0 ? $"row {i + 1}" : string.Join(", ", varying.Select(part => part.Of(row.Candidate))))];
    }
}
