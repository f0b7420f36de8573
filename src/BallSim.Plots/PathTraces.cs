using BallSim.Shots;
using Plotly.NET;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Plots;

/// <summary>A shot's path and its marked places as traces over distance (ft) and board.</summary>
internal static class PathTraces
{
    // A point every two inches on a whole lane: finer than a screen shows.
    private const int Points = 361;

    /// <summary>Paper-coloured rims for all paths: they keep dark strokes apart from dark oil. Drawn before any path, so that none cuts another.</summary>
    public static Trace Rim(Shot shot, Axes axes)
    {
        var points = shot.Samples(Points);
        return Line(axes, points).With(
            ("name", "rim"), ("showlegend", false), ("hoverinfo", "skip"), ("opacity", 0.85), ("line", Dynamic.Of(("color", Palette.Paper), ("width", 5), ("simplify", false))));
    }

    /// <summary>The path and its marked places; the numbers to every point only where the panel is the one to read.</summary>
    public static IEnumerable<Trace> Of(Shot shot, string name, int number, Axes axes, bool inLegend, Func<Place, bool> firstOfKind)
    {
        var points = shot.Samples(Points);
        yield return Line(axes, points).With(
            ("name", name), ("legendgroup", name), ("showlegend", inLegend), ("legendrank", 1 + number),
            ("line", Dynamic.Of(("color", Palette.Colour(number)), ("width", 2.5), ("dash", Palette.Stroke(number)), ("simplify", false))),
            ("text", inLegend ? points.Select(p => Text(name, p)).ToArray() : null), ("hoverinfo", inLegend ? "text" : "name"));

        foreach (var (x, b, place) in Places(shot))
        {
            yield return new Trace("scatter").With(
                ("mode", "markers"), ("x", new[] { x }), ("y", new[] { b }), ("xaxis", axes.X), ("yaxis", axes.Y),
                ("name", place.Word), ("legendgroup", place.Word), ("showlegend", inLegend && firstOfKind(place)), ("legendrank", 1000),
                ("marker", Dynamic.Of(("symbol", place.Symbol), ("size", 11), ("color", Palette.Paper), ("line", Dynamic.Of(("color", Palette.Colour(number)), ("width", 2.5))))),
                ("text", new[] { Invariant($"{name}: {place.Word}<br>board {b:F1} at {x:F1} ft") }), ("hoverinfo", "text"));
        }
    }

    /// <summary>The marked places of a shot, in trade units.</summary>
    public static IEnumerable<(double Distance, double Board, Place Place)> Places(Shot shot)
    {
        foreach (var change in shot.PhaseChanges)
        {
            var place = change switch
            {
                { From: ShotPhase.Loft } => Place.Landing,
                { To: ShotPhase.Rolling } => Place.Roll,
                _ => Place.Slip,
            };
            yield return (change.Distance / Foot, change.Board, place);
        }
        if (shot.EndOfSkid is { } skid)
        {
            yield return (skid.Distance / Foot, skid.Board, Place.EndOfSkid);
        }
        var breakpoint = shot.Breakpoint;
        if (!breakpoint.IsEnd)
        {
            yield return (breakpoint.Distance / Foot, breakpoint.Board, Place.Breakpoint);
        }
    }

    private static Trace Line(Axes axes, IReadOnlyList<PathPoint> points) => new Trace("scatter").With(
        ("mode", "lines"), ("x", points.Select(p => p.Y / Foot).ToArray()), ("y", points.Select(p => p.Board).ToArray()), ("xaxis", axes.X), ("yaxis", axes.Y));

    private static string Text(string name, PathPoint p) => Invariant(
        $"{name}: board {p.Board:F1} at {p.Y / Foot:F1} ft, {p.Time:F2} s<br>{p.Phase.ToString().ToLowerInvariant()}, {p.Speed / MilesPerHour:F1} mph, {p.SpinRate / Rpm:F0} rpm<br>rotation {p.AxisRotation / Degree:F0}°, tilt {p.AxisTilt / Degree:F0}°");
}
