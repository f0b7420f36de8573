using Plotly.NET;
using static System.FormattableString;

namespace BallSim.Plots;

/// <summary>What a fit leaves over.</summary>
public static class FitPlots
{
    /// <summary>
    /// Residuals of a fit (measured less computed) against distance, shot by shot, over the band of one standard deviation. A good fit keeps two points of three inside, and no shot keeps to one side.
    /// </summary>
    /// <param name="residual">The residuals.</param>
    /// <param name="distance">Where each was measured.</param>
    /// <param name="shots">The shot of each.</param>
    /// <param name="sigma">Standard deviation of each measurement, in the residuals' unit; no band if null.</param>
    /// <param name="title">Title; a plain one if null.</param>
    /// <exception cref="ArgumentException">The columns differ in length or hold no number.</exception>
    public static GenericChart Residuals(this Column residual, Column distance, IReadOnlyList<string> shots, Column? sigma = null, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(residual);
        ArgumentNullException.ThrowIfNull(distance);
        ArgumentNullException.ThrowIfNull(shots);
        var rows = sigma is null ? Column.Rows(residual, distance) : Column.Rows(residual, distance, sigma);
        if (shots.Count != rows)
        {
            throw new ArgumentException($"{shots.Count} shots for {rows} residuals; name the shot of each", nameof(shots));
        }
        _ = residual.Span;
        int[] seen = [.. Enumerable.Range(0, rows).Where(i => double.IsFinite(residual.Values[i]) && double.IsFinite(distance.Values[i]))];
        var traces = new List<Trace>();
        if (sigma is not null)
        {
            traces.Add(Band(seen, distance, sigma));
        }
        var groups = seen.GroupBy(i => shots[i]).ToArray();
        for (var g = 0; g < groups.Length; g++)
        {
            int[] of = [.. groups[g].OrderBy(i => distance.Values[i])];
            var name = Figure.Plain(groups[g].Key);
            traces.Add(new Trace("scatter").With(
                ("mode", "lines+markers"), ("x", of.Select(i => distance.Values[i]).ToArray()), ("y", of.Select(i => residual.Values[i]).ToArray()), ("name", name),
                ("line", Dynamic.Of(("color", Palette.Colour(g)), ("width", 1), ("dash", Palette.Stroke(g)))), ("marker", Dynamic.Of(("color", Palette.Colour(g)), ("symbol", Palette.Symbol(g)), ("size", 7))),
                ("text", of.Select(i => $"{name} at {distance.Text(distance.Values[i])}<br>{residual.Name} {residual.Text(residual.Values[i])}").ToArray()), ("hoverinfo", "text")));
        }
        var layout = new Layout();
        layout.With(
            ("xaxis", Dynamic.Of(("title", Dynamic.Of(("text", distance.Label), ("standoff", 8))), ("gridcolor", Palette.Grid), ("zeroline", false))),
            ("yaxis", Dynamic.Of(("title", Dynamic.Of(("text", residual.Label), ("standoff", 6))), ("gridcolor", Palette.Grid), ("zeroline", true), ("zerolinecolor", Palette.Ink), ("zerolinewidth", 1))));
        var root = Math.Sqrt(seen.Average(i => residual.Values[i] * residual.Values[i]));
        var inside = sigma is null ? "" : Invariant($"; {100.0 * seen.Count(i => Math.Abs(residual.Values[i]) <= sigma.Values[i]) / seen.Length:F0} % of them lie within one standard deviation (68 % expected)");
        return Figure.Of(traces, layout, title ?? "What the fit leaves over", 520,
            Invariant($"{seen.Length} residuals of {groups.Length} shots against {distance.Name}: root mean square {residual.Text(root)}, from {residual.Text(residual.Span.Least)} to {residual.Text(residual.Span.Greatest)}{inside}."));
    }

    // Where several were measured at one distance, the band has their mean width.
    private static Trace Band(int[] seen, Column distance, Column sigma)
    {
        var steps = seen.Where(i => double.IsFinite(sigma.Values[i])).GroupBy(i => distance.Values[i]).OrderBy(g => g.Key).Select(g => (At: g.Key, Width: g.Average(i => sigma.Values[i]))).ToArray();
        var back = steps.Reverse().ToArray();
        return new Trace("scatter").With(
            ("mode", "lines"), ("x", steps.Concat(back).Select(s => s.At).ToArray()), ("y", steps.Select(s => s.Width).Concat(back.Select(s => -s.Width)).ToArray()), ("fill", "toself"),
            ("fillcolor", Palette.Band), ("line", Dynamic.Of(("color", Palette.Soft), ("width", 1), ("dash", "dot"))), ("name", "± one standard deviation"), ("hoverinfo", "skip"));
    }
}
