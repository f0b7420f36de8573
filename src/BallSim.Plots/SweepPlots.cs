using Plotly.NET;
using static System.FormattableString;

namespace BallSim.Plots;

/// <summary>Tables of many throws: maps over two factors, and all columns side by side.</summary>
public static class SweepPlots
{
    // With more cells than this the numbers in them can no longer be read.
    private const int MostWritten = 150;

    /// <summary>
    /// A result over two factors as a map, with the numbers written into the cells where there is room. Factors that take few values make cells; rows with the same two factors are averaged, cells without a row
    /// stay empty.
    /// </summary>
    /// <param name="result">What is shown.</param>
    /// <param name="across">The factor across.</param>
    /// <param name="up">The factor upwards.</param>
    /// <param name="title">Title; the three names if null.</param>
    /// <exception cref="ArgumentException">The columns differ in length or hold no number.</exception>
    public static GenericChart SweepMap(this Column result, Column across, Column up, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(across);
        ArgumentNullException.ThrowIfNull(up);
        var rows = Column.Rows(result, across, up);
        var (least, greatest) = result.Span;
        double[] xs = [.. across.Values.Where(double.IsFinite).Distinct().Order()], ys = [.. up.Values.Where(double.IsFinite).Distinct().Order()];
        var cells = Enumerable.Range(0, rows).Where(i => double.IsFinite(result.Values[i]))
            .GroupBy(i => (across.Values[i], up.Values[i])).ToDictionary(g => g.Key, g => g.Average(i => result.Values[i]));
        double?[][] z = [.. ys.Select(y => xs.Select(x => cells.TryGetValue((x, y), out var value) ? value : (double?)null).ToArray())];
        string[][] texts = [.. ys.Select(y => xs.Select(x => Invariant($"{across.Text(x)}, {up.Text(y)}<br>") + (cells.TryGetValue((x, y), out var v) ? result.Text(v) : "no result")).ToArray())];
        // Written by hand: a template would write a nought into an empty cell.
        string[][] numbers = [.. z.Select(row => row.Select(v => v is { } number ? Invariant($"{number:G3}") : "").ToArray())];
        var heat = new Trace("heatmap").With(
            ("x", xs.Select(Written).ToArray()), ("y", ys.Select(Written).ToArray()), ("z", z), ("zmin", least), ("zmax", greatest), ("colorscale", Palette.Ramp), ("xgap", 1), ("ygap", 1), ("hovertext", texts), ("hoverinfo", "text"), ("name", result.Label),
            ("text", numbers), ("texttemplate", xs.Length * ys.Length <= MostWritten ? "%{text}" : null), ("textfont", Dynamic.Of(("color", Palette.Ink))),
            ("colorbar", Dynamic.Of(("title", Dynamic.Of(("text", result.Label), ("side", "right"))), ("thickness", 14))));
        var layout = new Layout();
        layout.With(("xaxis", Axis(across.Label)), ("yaxis", Axis(up.Label)));
        var best = cells.Where(c => c.Value == cells.Values.Max()).Select(c => c.Key).First();
        var worst = cells.Where(c => c.Value == cells.Values.Min()).Select(c => c.Key).First();
        return Figure.Of([heat], layout, title ?? Figure.Sentence($"{result.Name} over {across.Name} and {up.Name}"), 560,
            $"{Figure.Sentence(result.Name)}, {xs.Length} by {ys.Length} cells: greatest {result.Text(cells[best])} at {across.Name} {across.Text(best.Item1)} and {up.Name} {up.Text(best.Item2)}, "
            + $"least {result.Text(cells[worst])} at {across.Name} {across.Text(worst.Item1)} and {up.Name} {up.Text(worst.Item2)}.");
    }

    /// <summary>
    /// All columns side by side, a line for each row: what goes with what. The lines are shaded by the last column, whose own axis tells the same. Drag along an axis to pick rows, drag its name to move it.
    /// </summary>
    /// <param name="columns">At least two, the result last.</param>
    /// <param name="title">Title; a plain one if null.</param>
    /// <exception cref="ArgumentException">Fewer than two columns, or they differ in length or hold no number.</exception>
    public static GenericChart ParallelAxes(this IEnumerable<Column> columns, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(columns);
        Column[] all = [.. columns];
        if (all.Length < 2)
        {
            throw new ArgumentException($"{all.Length} columns; lines need at least two axes to run between", nameof(columns));
        }
        var count = Column.Rows(all);
        // A row with a hole has no line.
        int[] rows = [.. Enumerable.Range(0, count).Where(i => all.All(c => double.IsFinite(c.Values[i])))];
        var result = all[^1];
        var (least, greatest) = result.Span;
        var lines = new Trace("parcoords").With(
            ("dimensions", all.Select(c => Dynamic.Of(("label", c.Label), ("values", rows.Select(i => c.Values[i]).ToArray()), ("tickformat", ".4~g"))).ToArray()), ("labelangle", -12), ("name", "rows"),
            ("labelfont", Dynamic.Of(("size", 12))), ("tickfont", Dynamic.Of(("size", 11))), ("rangefont", Dynamic.Of(("size", 11))),
            ("line", Dynamic.Of(("color", rows.Select(i => result.Values[i]).ToArray()), ("cmin", least), ("cmax", greatest), ("colorscale", Palette.LineRamp), ("showscale", true),
                ("colorbar", Dynamic.Of(("title", Dynamic.Of(("text", result.Label), ("side", "right"))), ("thickness", 14))))));
        var words = $"{(rows.Length == count ? $"{count} rows" : $"{rows.Length} rows of {count}")} as lines over {all.Length} axes: {string.Join("; ", all.Select(c => Invariant($"{c.Name} from {c.Text(c.Span.Least)} to {c.Text(c.Span.Greatest)}")))}.";
        var chart = Figure.Of([lines], new Layout(), title ?? "Rows side by side", 520, words);
        GenericChart.getLayout(chart).With(("margin", Dynamic.Of(("l", 60), ("r", 30), ("t", 80), ("b", 30))));
        GenericChart.getLayout(chart).With(("meta", Dynamic.Of(("words", words), ("top", 60))));
        return chart;
    }

    private static string Written(double value) => Invariant($"{value:G6}");

    private static DynamicObj.DynamicObj Axis(string label) => Dynamic.Of(("type", "category"), ("title", Dynamic.Of(("text", label), ("standoff", 8))), ("gridcolor", Palette.Grid), ("zeroline", false), ("automargin", true));
}
