using BallSim.Lanes;
using BallSim.Shots;
using Plotly.NET;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Plots;

/// <summary>The lane from above.</summary>
public static class LanePlots
{
    private static readonly Axes True = new("x", "y2"), Stretched = new("x", "y");

    /// <summary>A shot on the lane from above, see <see cref="LaneView(IEnumerable{Shot}, IReadOnlyList{string}, string)"/>.</summary>
    /// <param name="shot">The shot.</param>
    /// <param name="title">Title; the entry in words if null.</param>
    public static GenericChart LaneView(this Shot shot, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(shot);
        return new[] { shot }.LaneView(null, title ?? (shot.ReachedPins ? $"Entry: {shot.Entry}" : $"The ball {shot.StopSentence}"));
    }

    /// <summary>
    /// Shots on the lane from above, twice: above in true proportions, below stretched across so that boards can be read. The bowler stands at the left and looks to the right; board 1 is
    /// the lowest. The film of oil (or the given friction) is shaded; marked are landing, end of skid, breakpoint, changes between sliding and rolling, and the pocket.
    /// </summary>
    /// <param name="shots">The shots, at least one. The lane drawn is that of the first one, even where the others were thrown on other oil.</param>
    /// <param name="names">A name for each shot; numbers if null.</param>
    /// <param name="title">Title; a plain one if null.</param>
    public static GenericChart LaneView(this IEnumerable<Shot> shots, IReadOnlyList<string>? names = null, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(shots);
        Shot[] all = [.. shots];
        var words = Figure.Names(all.Length, names);
        var lane = all[0].Lane;
        var traces = new List<Trace>();
        foreach (var axes in new[] { True, Stretched })
        {
            var readable = axes == Stretched;
            if (Shading(lane, axes, readable) is { } shading)
            {
                traces.Add(shading);
            }
            var inLegend = new HashSet<Place>();
            traces.AddRange(all.Select(shot => PathTraces.Rim(shot, axes)));
            for (var i = 0; i < all.Length; i++)
            {
                traces.AddRange(PathTraces.Of(all[i], words[i], i, axes, readable, inLegend.Add));
            }
            if (lane.HasPins)
            {
                traces.Add(Pocket(lane, all[0].Hand, axes, readable));
            }
        }
        return Figure.Of(traces, Layout(lane, all), title ?? "Paths on the lane", 600, $"The lane from above. {string.Join(" ", all.Select((shot, i) => PathWords(shot, words[i])))}",
            Dynamic.Of(("yaxis2", Across(lane, all).With(("tickvals", Array.Empty<int>())))));
    }

    private static string PathWords(Shot shot, string name)
    {
        var turn = shot.Breakpoint.IsEnd ? "without a breakpoint" : Invariant($"breakpoint on board {shot.Breakpoint.Board:F1} at {shot.Breakpoint.Distance / Foot:F0} ft");
        var roll = shot.StartOfRoll is { } r ? Invariant($"rolls from {r.Distance / Foot:F0} ft") : "never rolls";
        var end = shot.ReachedPins ? Invariant($"enters on board {shot.Entry.Board:F1} at {shot.Entry.Angle / Degree:F1}°") : shot.StopSentence;
        return Invariant($"{Figure.Sentence(name)}: from board {shot.Start.Board:F1}, {turn}, {roll}, {end}.");
    }

    private static Trace? Shading(Lane lane, Axes axes, bool hover)
    {
        var (kind, unit, at) = lane.GivenFriction is { } given
            ? ("friction", "", (Func<double, double, double>)given.At)
            : ("film", " µm", (x, y) => lane.Oil.FilmAt(x, y) / Micrometre);
        double[] distances = [.. Enumerable.Range(0, 2 * (int)(lane.Length / Foot)).Select(i => 0.25 + i / 2.0)], boards = [.. Enumerable.Range(1, lane.Boards).Select(b => (double)b)];
        double[][] values = [.. boards.Select(b => distances.Select(d => at(lane.PlaceOf(b), d * Foot)).ToArray())];
        var most = values.Max(row => row.Max());
        if (most <= 0)
        {
            return null;
        }
        return new Trace("heatmap").With(
            ("x", distances), ("y", boards), ("z", values), ("xaxis", axes.X), ("yaxis", axes.Y), ("name", kind), ("zmin", 0), ("zmax", most),
            ("colorscale", new object[] { new object[] { 0, Palette.DryLane }, new object[] { 1, Palette.FullOil } }),
            ("opacity", 0.8), ("showscale", hover), ("colorbar", Dynamic.Of(("title", Dynamic.Of(("text", kind + (unit.Length > 0 ? "," + unit : "")))), ("len", 0.62), ("y", 0), ("yanchor", "bottom"), ("thickness", 14))),
            ("hovertemplate", $"board %{{y}} at %{{x:.1f}} ft<br>{kind} %{{z:.3g}}{unit}<extra></extra>"));
    }

    private static Trace Pocket(Lane lane, Hand hand, Axes axes, bool inLegend)
    {
        var board = lane.BoardAt(lane.Pocket(hand));
        return new Trace("scatter").With(
            ("mode", "markers"), ("x", new[] { lane.Length / Foot }), ("y", new[] { board }), ("xaxis", axes.X), ("yaxis", axes.Y), ("name", "pocket"), ("showlegend", inLegend), ("legendrank", 1001),
            ("marker", Dynamic.Of(("symbol", "cross-thin"), ("size", 13), ("line", Dynamic.Of(("color", Palette.Ink), ("width", 2))))),
            ("text", new[] { Invariant($"pocket: board {board:F1}") }), ("hoverinfo", "text"));
    }

    private static Layout Layout(Lane lane, Shot[] shots)
    {
        var length = lane.Length / Foot;
        var end = lane.HasPins ? length + 3.5 : Math.Max(length, shots.Max(s => s.End.Y / Foot)) + 1;
        var (right, left) = Reach(lane, shots);
        var layout = new Layout();
        return layout.With(
            ("annotations", new object[] { Figure.Note("<b>true proportions</b>", 0, 1), Figure.Note("<b>stretched across, not to scale</b>", 0, 0.725) }),
            ("xaxis", Dynamic.Of(
                ("title", Dynamic.Of(("text", "distance from the foul line, ft"), ("standoff", 8))), ("range", new[] { -1, end }), ("dtick", 5), ("gridcolor", Palette.Grid), ("zeroline", false), ("anchor", "y"))),
            ("yaxis", Dynamic.Of(
                ("title", Dynamic.Of(("text", "board from the right"))), ("range", new[] { right, left }), ("domain", new[] { 0, 0.72 }), ("dtick", 5), ("gridcolor", Palette.Grid), ("zeroline", false))),
            ("yaxis2", Across(lane, shots)),
            ("shapes", Outlines(lane).ToArray()));
    }

    // The axis of true proportions: a board is as long on the screen as its width is along the lane.
    private static DynamicObj.DynamicObj Across(Lane lane, Shot[] shots)
    {
        var (right, left) = Reach(lane, shots);
        return Dynamic.Of(
            ("range", new[] { right, left }), ("domain", new[] { 0.76, 1 }), ("scaleanchor", "x"), ("scaleratio", lane.BoardWidth / Foot), ("constrain", "domain"), ("showgrid", false),
            ("tickvals", new[] { 1, 20, 39 }), ("zeroline", false), ("anchor", "x"));
    }

    private static (double Right, double Left) Reach(Lane lane, Shot[] shots) => lane.HasEdges ? (-0.5, lane.Boards + 1.5)
        : (Math.Min(-0.5, shots.Min(s => s.Samples(60).Min(p => p.Board)) - 1), Math.Max(lane.Boards + 1.5, shots.Max(s => s.Samples(60).Max(p => p.Board)) + 1));

    private static IEnumerable<object> Outlines(Lane lane)
    {
        foreach (var axes in new[] { True, Stretched })
        {
            if (lane.HasEdges)
            {
                yield return Shape(axes, "rect", 0, 0.5, lane.Length / Foot + 3, lane.Boards + 0.5, Palette.DryLane, "below");
            }
            if (lane.HasPins)
            {
                // Pins in rows of 1 to 4, a triangle of equal sides.
                for (var row = 0; row < 4; row++)
                {
                    for (var i = 0; i <= row; i++)
                    {
                        var (x, y) = ((i - row / 2.0) * PinDeck.Spacing, lane.Length + row * PinDeck.Spacing * Math.Sqrt(0.75));
                        var (r, b) = (PinDeck.BellyDiameter / 2, PinDeck.BellyDiameter / 2 / lane.BoardWidth);
                        yield return Shape(axes, "circle", (y - r) / Foot, lane.BoardAt(x) - b, (y + r) / Foot, lane.BoardAt(x) + b, Palette.Paper, "above");
                    }
                }
            }
        }
    }

    private static DynamicObj.DynamicObj Shape(Axes axes, string type, double x0, double y0, double x1, double y1, string fill, string layer) => Dynamic.Of(
        ("type", type), ("xref", axes.X), ("yref", axes.Y), ("x0", x0), ("y0", y0), ("x1", x1), ("y1", y1), ("fillcolor", fill), ("layer", layer),
        ("line", Dynamic.Of(("color", Palette.Ink), ("width", 1))));
}
