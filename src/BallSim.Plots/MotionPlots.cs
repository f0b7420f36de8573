using BallSim.Shots;
using Plotly.NET;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Plots;

/// <summary>What the ball does along the lane.</summary>
public static class MotionPlots
{
    private const int Points = 361;

    private static readonly Curve[] Curves =
    [
        new("speed, mph", p => p.Speed / MilesPerHour),
        new("spin, rpm", p => p.SpinRate / Rpm),
        new("axis rotation, °", p => p.AxisRotation / Degree),
        new("axis tilt, °", p => p.AxisTilt / Degree),
        new("slip at the contact, mph", p => p.SlipSpeed / MilesPerHour),
        new("friction used", GripUsed),
    ];

    /// <summary>The motion of a shot along the lane, see <see cref="MotionCurves(IEnumerable{Shot}, IReadOnlyList{string}, string)"/>.</summary>
    /// <param name="shot">The shot.</param>
    /// <param name="title">Title; a plain one if null.</param>
    public static GenericChart MotionCurves(this Shot shot, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(shot);
        return new[] { shot }.MotionCurves(null, title);
    }

    /// <summary>
    /// Speed, spin, axis rotation, axis tilt, slip and friction of shots against the distance down-lane. Friction used is the tangential part of the contact's force over the normal part:
    /// the coefficient of friction while the ball slides, and what rolling asks of the lane while it rolls (less than the coefficient). A ring marks each start of roll.
    /// </summary>
    /// <param name="shots">The shots, at least one.</param>
    /// <param name="names">A name for each shot; numbers if null.</param>
    /// <param name="title">Title; a plain one if null.</param>
    public static GenericChart MotionCurves(this IEnumerable<Shot> shots, IReadOnlyList<string>? names = null, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(shots);
        Shot[] all = [.. shots];
        var words = Figure.Names(all.Length, names);
        var traces = new List<Trace>();
        for (var i = 0; i < all.Length; i++)
        {
            var points = all[i].Samples(Points);
            var firstRoll = !all[..i].Any(s => s.StartOfRoll is not null);
            double[] distance = [.. points.Select(p => p.Y / Foot)];
            for (var c = 0; c < Curves.Length; c++)
            {
                var curve = Curves[c];
                double[] values = [.. points.Select(curve.Of)];
                var axes = AxesOf(c);
                traces.Add(new Trace("scatter").With(
                    ("mode", "lines"), ("x", distance), ("y", values), ("xaxis", axes.X), ("yaxis", axes.Y), ("name", words[i]), ("legendgroup", words[i]),
                    ("showlegend", c == 0 && all.Length > 1), ("legendrank", 1 + i), ("line", Dynamic.Of(("color", Palette.Colour(i)), ("width", 2), ("dash", Palette.Stroke(i)), ("simplify", false))),
                    ("text", points.Select((p, k) => Invariant($"{words[i]} at {distance[k]:F1} ft, {p.Phase.ToString().ToLowerInvariant()}<br>{curve.Title}: {values[k]:G4}")).ToArray()), ("hoverinfo", "text")));
                if (all[i].StartOfRoll is { } roll)
                {
                    traces.Add(new Trace("scatter").With(
                        ("mode", "markers"), ("x", new[] { roll.Distance / Foot }), ("y", new[] { curve.Of(all[i].At(roll.Time)) }), ("xaxis", axes.X), ("yaxis", axes.Y),
                        ("name", Place.Roll.Word), ("legendgroup", Place.Roll.Word), ("showlegend", c == 0 && firstRoll), ("legendrank", 1000), ("hoverinfo", "skip"),
                        ("marker", Dynamic.Of(("symbol", Place.Roll.Symbol), ("size", 9), ("color", Palette.Paper), ("line", Dynamic.Of(("color", Palette.Colour(i)), ("width", 2)))))));
                }
            }
        }
        return Figure.Of(traces, Layout(), title ?? "Motion along the lane", 760);
    }

    private static double GripUsed(PathPoint p) => p.NormalForce > 0
        ? Math.Sqrt(p.ContactForce.X * p.ContactForce.X + p.ContactForce.Y * p.ContactForce.Y) / p.NormalForce
        : 0;

    private static Axes AxesOf(int curve) => curve == 0 ? new("x", "y") : new($"x{curve + 1}", $"y{curve + 1}");

    // Two columns, three rows; the titles stand inside the panels, where the eye is.
    private static Layout Layout()
    {
        var layout = new Layout();
        var titles = new object[Curves.Length];
        for (var c = 0; c < Curves.Length; c++)
        {
            var (column, row) = (c % 2, c / 2);
            double left = column * 0.53, bottom = (2 - row) * 0.35;
            var suffix = c == 0 ? "" : $"{c + 1}";
            layout.With(
                ($"xaxis{suffix}", Dynamic.Of(
                    ("domain", new[] { left, left + 0.47 }), ("anchor", $"y{suffix}"), ("matches", c == 0 ? null : "x"), ("dtick", 10), ("gridcolor", Palette.Grid), ("zeroline", false),
                    ("showticklabels", row == 2), ("title", row == 2 ? Dynamic.Of(("text", "distance from the foul line, ft"), ("standoff", 8)) : null))),
                ($"yaxis{suffix}", Dynamic.Of(("domain", new[] { bottom, bottom + 0.27 }), ("anchor", $"x{suffix}"), ("gridcolor", Palette.Grid), ("zeroline", false))));
            titles[c] = Dynamic.Of(
                ("text", $"<b>{Curves[c].Title}</b>"), ("x", left), ("y", bottom + 0.275), ("xref", "paper"), ("yref", "paper"), ("xanchor", "left"), ("yanchor", "bottom"), ("showarrow", false));
        }
        return layout.With(("annotations", titles));
    }

    private sealed record Curve(string Title, Func<PathPoint, double> Of);
}
