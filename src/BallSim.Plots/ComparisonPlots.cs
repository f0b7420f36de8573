using BallSim.Shots;
using Plotly.NET;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Plots;

/// <summary>Comparisons as a picture.</summary>
public static class ComparisonPlots
{
    /// <summary>
    /// The entry angles of a comparison's re-aimed shots, best row on top, as dots with the spread of the bowler's scatter (one standard deviation), over the band of 4° to 6°. A full dot is the best row, an open one cannot be
    /// told from it by a single throw, a diamond can; a row that no line brings to the pocket has none.
    /// </summary>
    /// <param name="rows">The rows, in any order.</param>
    /// <param name="title">Title; a plain one if null.</param>
    /// <exception cref="ArgumentException">There are no rows.</exception>
    public static GenericChart EntryAngles(this IReadOnlyList<ComparisonRow> rows, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Count == 0)
        {
            throw new ArgumentException("there is no row to show", nameof(rows));
        }
        var ranked = Comparison.Ranked(rows);
        var names = RowNames.Of(ranked);
        string[] labels = [.. names.Select((name, i) => Invariant($"{Figure.Plain(name)}  {i + 1}"))];
        var traces = new List<Trace>();
        void Kind(string name, string symbol, string colour, Func<ComparisonRow, int, bool> wanted)
        {
            int[] of = [.. Enumerable.Range(0, ranked.Count).Where(i => ranked[i].ReAimed.IsFound && wanted(ranked[i], i))];
            if (of.Length == 0)
            {
                return;
            }
            double Angle(int i) => ranked[i].ReAimed.Shot!.Entry.Angle / Degree;
            traces.Add(new Trace("scatter").With(
                ("mode", "markers"), ("x", of.Select(Angle).ToArray()), ("y", of.Select(i => labels[i]).ToArray()), ("name", name), ("cliponaxis", false),
                ("marker", Dynamic.Of(("symbol", symbol), ("size", 11), ("color", colour), ("line", Dynamic.Of(("color", colour), ("width", 2))))),
                ("error_x", Dynamic.Of(("type", "data"), ("array", of.Select(i => (ranked[i].Spread?.Angle ?? 0) / Degree).ToArray()), ("color", colour), ("thickness", 1.5), ("width", 4))),
                ("text", of.Select(i => Figure.Plain(names[i]) + Invariant($"<br>entry angle {Angle(i):F2}°{(ranked[i].Spread is { } s ? Invariant($" ± {s.Angle / Degree:F2}°") : "")}")).ToArray()), ("hoverinfo", "text")));
        }
        Kind("best row", "circle", Palette.Ink, (_, i) => i == 0);
        Kind("within the bowler's scatter of it", "circle-open", Palette.Colours[2], (row, i) => i > 0 && row.IsWithinScatter);
        Kind("differs from it", "diamond", Palette.Colours[1], (row, i) => i > 0 && !row.IsWithinScatter);
        var (low, high) = (Comparison.LowestGoodAngle / Degree, Comparison.HighestGoodAngle / Degree);
        var layout = new Layout();
        layout.With(
            ("xaxis", Dynamic.Of(("title", Dynamic.Of(("text", "entry angle, °"), ("standoff", 8))), ("gridcolor", Palette.Grid), ("zeroline", false))),
            ("yaxis", Dynamic.Of(("type", "category"), ("categoryorder", "array"), ("categoryarray", labels), ("range", new[] { ranked.Count - 0.4, -0.6 }), ("gridcolor", Palette.Grid), ("automargin", true), ("tickvals", labels))),
            ("shapes", new object[]
            {
                Dynamic.Of(("type", "rect"), ("xref", "x"), ("yref", "paper"), ("x0", low), ("x1", high), ("y0", 0), ("y1", 1), ("fillcolor", Palette.Band), ("layer", "below"), ("line", Dynamic.Of(("color", Palette.Soft), ("width", 1), ("dash", "dot")))),
            }),
            ("annotations", new object[] { Figure.Note(Invariant($"aimed for: {low:F0}° to {high:F0}°"), low, 1.0, xref: "x", size: 12) }));
        return Figure.Of(traces, layout, title ?? "Entry angles, re-aimed at the pocket", 200 + 26 * ranked.Count, Words(ranked, names));
    }

    private static string Words(IReadOnlyList<ComparisonRow> ranked, string[] names)
    {
        string Of(int i) => ranked[i].ReAimed.Shot is { } shot
            ? Invariant($"{names[i]}: {shot.Entry.Angle / Degree:F2}°{(ranked[i].Spread is { } s ? Invariant($" ± {s.Angle / Degree:F2}°") : "")}")
            : $"{names[i]}: no line reaches the pocket";
        return $"Entry angles, best first. {string.Join("; ", Enumerable.Range(0, ranked.Count).Select(Of))}.";
    }
}
