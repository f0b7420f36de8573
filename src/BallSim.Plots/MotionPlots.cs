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
                    ("text", points.Select(p => p.Phase.ToString().ToLowerInvariant()).ToArray()), ("hovertemplate", $"{words[i]} at %{{x:.1f}} ft, %{{text}}<br>{curve.Title}: %{{y:.4~g}}<extra></extra>")));
                if (all[i].StartOfRoll is { } roll)
                {
                    traces.Add(new Trace("scatter").With(
                        ("mode", "markers"), ("x", new[] { roll.Distance / Foot }), ("y", new[] { curve.Of(all[i].At(roll.Time)) }), ("xaxis", axes.X), ("yaxis", axes.Y),
                        ("name", Place.Roll.Word), ("legendgroup", Place.Roll.Word), ("showlegend", c == 0 && firstRoll), ("legendrank", 1000), ("hoverinfo", "skip"),
                        ("marker", Dynamic.Of(("symbol", Place.Roll.Symbol), ("size", 9), ("color", Palette.Paper), ("line", Dynamic.Of(("color", Palette.Colour(i)), ("width", 2)))))));
                }
            }
        }
        return Figure.Of(traces, Layout(2), title ?? "Motion along the lane", 760, $"Motion against distance, release to end. {string.Join(" ", all.Select((shot, i) => Words(shot, words[i])))}",
            Layout(1).With(("height", 1500), ("legend", Dynamic.Of(("orientation", "h"), ("x", 0), ("y", -0.045), ("yanchor", "top")))));
    }

    private static string Words(Shot shot, string name)
    {
        var (from, to) = (shot.Start, shot.End);
        return Invariant($"{Figure.Sentence(name)}: speed {from.Speed / MilesPerHour:F1} to {to.Speed / MilesPerHour:F1} mph, spin {from.SpinRate / Rpm:F0} to {to.SpinRate / Rpm:F0} rpm, ")
            + Invariant($"axis rotation {from.AxisRotation / Degree:F0}° to {Math.Abs(to.AxisRotation / Degree):F0}°, tilt {from.AxisTilt / Degree:F0}° to {to.AxisTilt / Degree:F0}°, ")
            + (shot.StartOfRoll is { } roll ? Invariant($"rolls from {roll.Distance / Foot:F0} ft.") : "never rolls.");
    }

    private static double GripUsed(PathPoint p) => p.NormalForce > 0
        ? Math.Sqrt(p.ContactForce.X * p.ContactForce.X + p.ContactForce.Y * p.ContactForce.Y) / p.NormalForce
        : 0;

    private static Axes AxesOf(int curve) => curve == 0 ? new("x", "y") : new($"x{curve + 1}", $"y{curve + 1}");

    // The titles stand inside the panels, where the eye is.
    private static Layout Layout(int columns)
    {
        var layout = new Layout();
        var titles = new object[Curves.Length];
        var rows = Curves.Length / columns;
        var step = 1.05 / rows;
        for (var c = 0; c < Curves.Length; c++)
        {
            var (column, row) = (c % columns, c / columns);
            double left = column * 0.53, right = columns == 1 ? 1 : left + 0.47, bottom = (rows - 1 - row) * step, top = bottom + step - 0.24 / rows;
            var suffix = c == 0 ? "" : $"{c + 1}";
            layout.With(
                ($"xaxis{suffix}", Dynamic.Of(
                    ("domain", new[] { left, right }), ("anchor", $"y{suffix}"), ("matches", c == 0 ? null : "x"), ("dtick", 10), ("gridcolor", Palette.Grid), ("zeroline", false),
                    ("showticklabels", row == rows - 1), ("title", row == rows - 1 ? Dynamic.Of(("text", "distance from the foul line, ft"), ("standoff", 8)) : null))),
                ($"yaxis{suffix}", Dynamic.Of(("domain", new[] { bottom, top }), ("anchor", $"x{suffix}"), ("nticks", 6), ("gridcolor", Palette.Grid), ("zeroline", false))));
            titles[c] = Figure.Note($"<b>{Curves[c].Title}</b>", left, top + 0.015 / rows, size: 13);
        }
        return layout.With(("annotations", titles));
    }

    private sealed record Curve(string Title, Func<PathPoint, double> Of);
}
