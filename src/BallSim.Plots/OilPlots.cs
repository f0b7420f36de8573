using BallSim.Lanes;
using Plotly.NET;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Plots;

/// <summary>The film of oil on a lane, seen from above as the lane views are: the bowler at the left, board 1 lowest.</summary>
public static class OilPlots
{
    private const int Boards = 39;
    private const double Length = 60;

    /// <summary>A film of oil with lines of equal thickness.</summary>
    /// <param name="oil">The oil.</param>
    /// <param name="title">Title; a plain one if null.</param>
    public static GenericChart OilView(this OilMap oil, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(oil);
        var film = Film(oil);
        return Figure.Of([Panel(film, "film", Greatest(film), 0)], Layout([Caption("film, µm", oil)]), title ?? "The oil", 420, $"Film of oil over boards and distance: {oil}.",
            Dynamic.Of(("height", 380)));
    }

    /// <summary>
    /// The film before and after, in one scale, and under them the difference: negative where oil was taken away, positive where it was carried to. Lines of equal thickness carry their numbers.
    /// </summary>
    /// <param name="before">The oil before.</param>
    /// <param name="after">The oil after.</param>
    /// <param name="title">Title; a plain one if null.</param>
    public static GenericChart BeforeAndAfter(this OilMap before, OilMap after, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        double[][] was = Film(before), now = Film(after), change = [.. was.Select((row, b) => row.Select((film, i) => now[b][i] - film).ToArray())];
        var most = Math.Max(Greatest(was), Greatest(now));
        var gone = (before.Volume - after.Volume) / Millilitre;
        double[] changes = [.. change.SelectMany(row => row)];
        return Figure.Of(
            [Panel(was, "before", most, 2), Panel(now, "after", most, 1), .. Difference(change)],
            Layout([$"<b>difference, µm</b>: {gone:F2} mL less on the lane", Caption("after, µm", after), Caption("before, µm", before)]), title ?? "The oil before and after", 860,
            Invariant($"Film of oil before ({before.Volume / Millilitre:F2} mL) and after ({after.Volume / Millilitre:F2} mL): {gone:F2} mL less. On a spot the film changes by {changes.Min():F2} µm at the lowest and {changes.Max():+0.00;-0.00;0.00} µm at the highest."));
    }

    private static string Caption(string what, OilMap oil) => Invariant($"<b>{what}</b>: {oil.Volume / Millilitre:F1} mL to {oil.Length / Foot:F0} ft");

    private static double[] Distances { get; } = [.. Enumerable.Range(0, (int)(2 * Length) + 1).Select(i => i / 2.0)];

    private static double[] AllBoards { get; } = [.. Enumerable.Range(1, Boards).Select(b => (double)b)];

    private static double[][] Film(OilMap oil) => [.. AllBoards.Select(b => Distances.Select(d => oil.FilmOnBoard(d * Foot, b) / Micrometre).ToArray())];

    private static double Greatest(double[][] film) => Math.Max(1e-6, film.Max(row => row.Max()));

    private static Axes AxesOf(int panel) => panel == 0 ? new("x", "y") : new($"x{panel + 1}", $"y{panel + 1}");

    private static Trace Panel(double[][] film, string name, double most, int panel) => Contours(film, name, panel).With(
        ("zmin", 0), ("zmax", most), ("colorscale", new object[] { new object[] { 0, Palette.DryLane }, new object[] { 1, Palette.FullOil } }), ("showscale", false),
        ("contours", Lines(0, most, most / 6)));

    // Colour from rust over paper to teal; lines solid where oil came, dashed where it went, none at zero, where they would trace the rounding.
    private static IEnumerable<Trace> Difference(double[][] change)
    {
        var most = Math.Max(1e-6, change.Max(row => row.Max(Math.Abs)));
        yield return Contours(change, "difference", 0).With(
            ("type", "heatmap"), ("zsmooth", "best"), ("zmin", -most), ("zmax", most), ("colorscale", new object[] { new object[] { 0, Palette.Colours[1] }, new object[] { 0.5, Palette.Paper }, new object[] { 1, Palette.Colours[2] } }), ("showscale", false));
        foreach (var (sign, stroke) in new[] { (1, "solid"), (-1, "dash") })
        {
            var lines = Lines(0, most, most / 4);
            var step = Step(most / 4);
            yield return Contours([.. change.Select(row => row.Select(v => sign * v > 0 ? v : 0).ToArray())], "lines", 0).With(
                ("showscale", false), ("showlegend", false), ("hoverinfo", "skip"), ("line", Dynamic.Of(("color", Palette.Ink), ("width", 0.7), ("dash", stroke))),
                ("contours", lines.With(("coloring", "none"), ("start", sign > 0 ? step : -step * Math.Floor(most / step)), ("end", sign > 0 ? most : -step))));
        }
    }

    private static Trace Contours(double[][] z, string name, int panel)
    {
        var axes = AxesOf(panel);
        return new Trace("contour").With(
            ("x", Distances), ("y", AllBoards), ("z", z), ("xaxis", axes.X), ("yaxis", axes.Y), ("name", name), ("line", Dynamic.Of(("color", Palette.Ink), ("width", 0.7))),
            ("hovertemplate", $"board %{{y}} at %{{x:.1f}} ft<br>{name} %{{z:.2f}} µm<extra></extra>"));
    }

    // Round numbers of lines: 1, 2 or 5 in the last place.
    private static double Step(double about)
    {
        var place = Math.Pow(10, Math.Floor(Math.Log10(about)));
        return place * (about / place) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 };
    }

    private static DynamicObj.DynamicObj Lines(double from, double to, double about)
    {
        var step = Step(about);
        return Dynamic.Of(("coloring", "heatmap"), ("showlabels", true), ("labelfont", Dynamic.Of(("size", 11), ("color", Palette.Ink))), ("start", step * Math.Ceiling(from / step + 0.01)), ("end", to), ("size", step));
    }

    // Panels from the lowest up.
    private static Layout Layout(string[] captions)
    {
        var layout = new Layout();
        var (count, gap) = (captions.Length, captions.Length == 1 ? 0 : 0.09);
        var height = (1 - gap * (count - 1)) / count;
        for (var panel = 0; panel < count; panel++)
        {
            var suffix = panel == 0 ? "" : $"{panel + 1}";
            var bottom = panel * (height + gap);
            layout.With(
                ($"xaxis{suffix}", Dynamic.Of(("range", new[] { 0, Length }), ("dtick", 5), ("anchor", $"y{suffix}"), ("matches", panel == 0 ? null : "x"), ("showticklabels", panel == 0),
                    ("title", panel == 0 ? Dynamic.Of(("text", "distance from the foul line, ft"), ("standoff", 8)) : null))),
                ($"yaxis{suffix}", Dynamic.Of(("range", new[] { 0.5, Boards + 0.5 }), ("domain", new[] { bottom, bottom + height }), ("tickvals", new[] { 1, 5, 10, 15, 20, 25, 30, 35, 39 }), ("anchor", $"x{suffix}"),
                    ("title", Dynamic.Of(("text", "board from the right"), ("standoff", 6))))));
        }
        return layout.With(("annotations", captions.Select((text, panel) => (object)Figure.Note(text, 0, panel * (height + gap) + height + 0.004, size: 13)).ToArray()));
    }
}
