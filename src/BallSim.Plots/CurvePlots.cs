using Plotly.NET;
using static System.FormattableString;

namespace BallSim.Plots;

/// <summary>Columns against columns: curves, and computed numbers beside those expected.</summary>
public static class CurvePlots
{
    // More places than this make a line of their own.
    private const int MostMarked = 40;

    /// <summary>
    /// A column against another as curves, one for each name, in the order of the rows. A curve of up to 40 rows marks them.
    /// </summary>
    /// <param name="result">What is shown.</param>
    /// <param name="across">What it is shown against.</param>
    /// <param name="names">The curve of each row; one curve if null.</param>
    /// <param name="logarithmic">Both axes by decades; rows that are not above zero are left out.</param>
    /// <param name="title">Title; the names of the columns if null.</param>
    /// <exception cref="ArgumentException">The columns differ in length or hold no number that can be shown, or there is not one name for each row.</exception>
    public static GenericChart Curves(this Column result, Column across, IReadOnlyList<string>? names = null, bool logarithmic = false, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(across);
        var rows = Column.Rows(result, across);
        Named(names, rows);
        _ = (result.Span, across.Span);
        bool Shown(double value) => double.IsFinite(value) && (value > 0 || !logarithmic);
        int[] seen = [.. Enumerable.Range(0, rows).Where(i => Shown(result.Values[i]) && Shown(across.Values[i]))];
        if (seen.Length == 0)
        {
            throw new ArgumentException($"no row of \"{result.Name}\" and \"{across.Name}\" can be shown{(logarithmic ? " by decades, which have no zero and nothing below" : "")}", nameof(result));
        }
        var groups = seen.GroupBy(i => names is null ? result.Name : names[i]).ToArray();
        var traces = groups.Select((group, g) =>
        {
            int[] of = [.. group];
            var name = Figure.Plain(group.Key);
            return new Trace("scatter").With(
                ("mode", of.Length > MostMarked ? "lines" : "lines+markers"), ("x", of.Select(i => across.Values[i]).ToArray()), ("y", of.Select(i => result.Values[i]).ToArray()), ("name", name), ("showlegend", groups.Length > 1),
                ("line", Dynamic.Of(("color", Palette.Colour(g)), ("width", 2), ("dash", Palette.Stroke(g)))), ("marker", Dynamic.Of(("color", Palette.Colour(g)), ("symbol", Palette.Symbol(g)), ("size", 7))),
                ("text", of.Select(i => $"{name}<br>{Figure.Plain(across.Name)} {across.Text(across.Values[i])}<br>{Figure.Plain(result.Name)} {result.Text(result.Values[i])}").ToArray()), ("hoverinfo", "text"));
        }).ToArray();
        var layout = new Layout();
        layout.With(("xaxis", Axis(across.Label, logarithmic)), ("yaxis", Axis(result.Label, logarithmic)));
        return Figure.Of(traces, layout, title ?? Figure.Sentence($"{result.Name} against {across.Name}"), 480,
            $"{Figure.Sentence(result.Name)} against {across.Name}: " + string.Join("; ", groups.Select(g =>
            {
                var (first, last) = (g.First(), g.Last());
                return $"{(groups.Length > 1 ? g.Key + " " : "")}from {result.Text(result.Values[first])} at {across.Text(across.Values[first])} to {result.Text(result.Values[last])} at {across.Text(across.Values[last])}";
            })) + ".");
    }

    /// <summary>
    /// Computed numbers beside those expected, each as its difference in parts of what is allowed: a dot between -1 and 1, in the band, is within. The numbers themselves appear under the pointer.
    /// </summary>
    /// <param name="computed">The numbers computed, each in a unit of its own.</param>
    /// <param name="expected">The numbers expected.</param>
    /// <param name="allowed">By how much each may differ, more than zero.</param>
    /// <param name="names">What each is, with its unit.</param>
    /// <param name="title">Title; a plain one if null.</param>
    /// <exception cref="ArgumentException">The columns differ in length, there is not one name for each row, or an allowed difference is not above zero.</exception>
    public static GenericChart Agreement(this Column computed, Column expected, Column allowed, IReadOnlyList<string> names, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(computed);
        ArgumentNullException.ThrowIfNull(expected);
        ArgumentNullException.ThrowIfNull(allowed);
        ArgumentNullException.ThrowIfNull(names);
        var rows = Column.Rows(computed, expected, allowed);
        Named(names, rows);
        for (var i = 0; i < rows; i++)
        {
            if (!(allowed.Values[i] > 0))
            {
                throw new ArgumentException(Invariant($"column \"{allowed.Name}\" holds {allowed.Values[i]:G4} for {names[i]}; a difference that is allowed is above zero"), nameof(allowed));
            }
        }
        double[] parts = [.. Enumerable.Range(0, rows).Select(i => (computed.Values[i] - expected.Values[i]) / allowed.Values[i])];
        bool Within(int i) => Math.Abs(parts[i]) <= 1;
        var traces = new[] { (Name: "within", Of: (Func<int, bool>)Within, Symbol: "circle"), ("outside", i => !Within(i), "x") }.Select(kind =>
        {
            int[] of = [.. Enumerable.Range(0, rows).Where(kind.Of)];
            return new Trace("scatter").With(
                ("mode", "markers"), ("x", of.Select(i => parts[i]).ToArray()), ("y", of.ToArray()), ("name", kind.Name), ("showlegend", of.Length > 0),
                ("marker", Dynamic.Of(("color", Palette.Colours[kind.Name == "within" ? 2 : 1]), ("symbol", kind.Symbol), ("size", 10))),
                ("text", of.Select(i => $"{Figure.Plain(names[i])}<br>{Figure.Plain(computed.Name)} {computed.Text(computed.Values[i])}, {Figure.Plain(expected.Name)} {expected.Text(expected.Values[i])} ± {allowed.Text(allowed.Values[i])}").ToArray()),
                ("hoverinfo", "text"));
        }).ToArray();
        var most = Math.Max(1.25, 1.1 * parts.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(1).Max());
        var layout = new Layout();
        layout.With(
            ("xaxis", Dynamic.Of(("title", Dynamic.Of(("text", $"{Figure.Plain(computed.Name)} less {Figure.Plain(expected.Name)}, in parts of {Figure.Plain(allowed.Name)}"), ("standoff", 8))), ("range", new[] { -most, most }), ("gridcolor", Palette.Grid), ("zerolinecolor", Palette.Ink))),
            ("yaxis", Dynamic.Of(("tickmode", "array"), ("tickvals", Enumerable.Range(0, rows).ToArray()), ("ticktext", names.Select(Figure.Plain).ToArray()), ("range", new[] { rows - 0.5, -0.5 }), ("automargin", true), ("gridcolor", Palette.Grid), ("zeroline", false))),
            ("shapes", new object[] { Dynamic.Of(("type", "rect"), ("xref", "x"), ("yref", "paper"), ("x0", -1), ("x1", 1), ("y0", 0), ("y1", 1), ("fillcolor", Palette.Band), ("line", Dynamic.Of(("width", 0))), ("layer", "below")) }));
        var farthest = Enumerable.Range(0, rows).MaxBy(i => Math.Abs(parts[i]));
        return Figure.Of(traces, layout, title ?? "Computed beside expected", 200 + 30 * rows,
            Invariant($"{rows} numbers, {Enumerable.Range(0, rows).Count(Within)} of them within what is allowed; the farthest is {names[farthest]}: {computed.Name} {computed.Text(computed.Values[farthest])}, {expected.Name} {expected.Text(expected.Values[farthest])}, {parts[farthest]:F2} of what is allowed."));
    }

    private static void Named(IReadOnlyList<string>? names, int rows)
    {
        if (names is not null && names.Count != rows)
        {
            throw new ArgumentException($"{names.Count} names for {rows} rows; name each row", nameof(names));
        }
    }

    private static DynamicObj.DynamicObj Axis(string label, bool logarithmic) => Dynamic.Of(
        ("title", Dynamic.Of(("text", label), ("standoff", 8))), ("type", logarithmic ? "log" : null), ("exponentformat", "power"), ("gridcolor", Palette.Grid), ("zeroline", !logarithmic), ("zerolinecolor", Palette.Grid), ("automargin", true));
}
