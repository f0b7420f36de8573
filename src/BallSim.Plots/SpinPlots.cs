using BallSim.Balls;
using BallSim.Shots;
using Plotly.NET;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Plots;

/// <summary>The spin axis of a ball that spins free or on a test stand, drawn on the ball.</summary>
public static class SpinPlots
{
    private const int Height = 620;
    private const int Places = 241;

    /// <summary>
    /// The polhodes of a ball: the closed curves that the spin axis follows in it while nothing acts. Solid curves go round the axis of greatest inertia, dashed ones round that of least
    /// inertia; the dotted one parts the two families and runs through the middle axis.
    /// </summary>
    /// <param name="ball">The ball; one to which all axes are alike has none to show.</param>
    /// <param name="title">Title; a plain one if null.</param>
    /// <exception cref="ArgumentException">The three moments of inertia are equal: every axis stays where it is.</exception>
    public static GenericChart PolhodeView(this Ball ball, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(ball);
        var axes = ball.Inertia.Principal;
        var (least, middle, greatest) = (axes.LeastMoment, axes.MiddleMoment, axes.GreatestMoment);
        if (greatest - least < 1e-9 * greatest)
        {
            throw new ArgumentException("the ball has three equal moments of inertia: its spin axis stays where it is, there is no polhode to show", nameof(ball));
        }
        // In the plane of the least and the greatest axis the two families meet at this angle from the least.
        var border = Math.Atan(Math.Sqrt(least * (middle - least) / Math.Max(1e-300, greatest * (greatest - middle))));
        var traces = new List<Trace>();
        void Family(double from, double to, int count, string name, string colour, string stroke)
        {
            for (var i = 0; i < count && to - from > 1 * Degree; i++)
            {
                var angle = from + (to - from) * (i + 0.5) / count;
                foreach (var (side, other) in new[] { (1, 1), (-1, -1) })
                {
                    var start = side * Math.Cos(angle) * axes.Least + other * Math.Sin(angle) * axes.Greatest;
                    traces.Add(Polhode(TorqueFreeSpin.Of(ball, 300 * Rpm * start), name, colour, stroke, i == 0 && side == 1));
                }
            }
        }
        Family(0, border, 4, "round the axis of least inertia", Palette.Colours[1], "dash");
        Family(border, Math.PI / 2, 4, "round the axis of greatest inertia", Palette.Colours[2], "solid");
        if (greatest - middle > 1e-9 * greatest && middle - least > 1e-9 * greatest)
        {
            var first = true;
            foreach (var (a, b) in new[] { (1, 1), (1, -1), (-1, 1), (-1, -1) })
            {
                // A start a hair on the greatest axis' side shows the border from near enough.
                var start = a * Math.Cos(border + 1e-7) * axes.Least + b * Math.Sin(border + 1e-7) * axes.Greatest;
                traces.Add(Polhode(TorqueFreeSpin.Of(ball, 300 * Rpm * start), "border of the families", Palette.Ink, "dot", first));
                first = false;
            }
        }
        return Scene([.. traces, .. Axes(ball), .. PinAndMark(ball)], Eye(axes), axes.Least, title ?? "Polhodes: ways of the spin axis in the ball while nothing acts",
            Invariant($"Closed curves on the ball. Moments of inertia in the ratio 1 : {middle / least:F4} : {greatest / least:F4}; the two families of curves meet {border / Degree:F1}° from the axis of least inertia. Without dissipation the spin axis stays on its curve."));
    }

    /// <summary>The polhode of one free spin on the ball frame's sphere.</summary>
    /// <param name="spin">The spin.</param>
    /// <param name="title">Title; a plain one if null.</param>
    public static GenericChart PolhodeView(this TorqueFreeSpin spin, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(spin);
        var axes = spin.Inertia.Principal;
        var start = spin.AngularVelocityInBall(0).Unit;
        var (round, about) = spin.CirclesGreatestAxis ? ("round the axis of greatest inertia", axes.Greatest) : spin.CirclesLeastAxis ? ("round the axis of least inertia", axes.Least) : ("on no closed curve", axes.Middle);
        var period = spin.Period is { } p ? Invariant($"once in {p:F2} s") : "without a period";
        return Scene([Polhode(spin, "polhode", Palette.Colours[1], "solid", true), .. Start(start), .. AxisMarks(axes)], (start + about * Math.Sign(start.Dot(about))).Unit, axes.Least.Cross(start).Length > 0.2 ? axes.Least : axes.Middle,
            title ?? "Polhode of a free spin", $"The spin axis goes {round}, {period}.");
    }

    /// <summary>
    /// The way of the spin axis in a ball on a spin test, on the sphere, and under it the angle to the preferred axis against time. A diamond marks the start, a small black dot the end.
    /// </summary>
    /// <param name="record">The test.</param>
    /// <param name="title">Title; a plain one if null.</param>
    public static GenericChart AxisMigration(this SpinRecord record, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(record);
        var moments = record.Samples(Math.Clamp(record.Steps * 2, 600, 2000));
        var axes = record.Ball.Inertia.Principal;
        Vector3D[] way = [.. moments.Select(m => m.AxisInBall)];
        string[] texts = [.. moments.Select(m => Invariant($"{m.Time:F1} s, {m.AngularVelocity.Length / Rpm:F0} rpm<br>{m.AngleToPreferredAxis / Degree:F1}° from the preferred axis"))];
        Trace[] traces =
        [
            SphereScene.Curve(way, "way of the spin axis", Palette.Colours[2], "solid", 4, texts),
            .. Start(way[0]), SphereScene.Mark(way[^1], "end", "circle", Palette.Ink, texts[^1], size: 5), .. Axes(record.Ball), .. PinAndMark(record.Ball),
            new Trace("scatter").With(
                ("mode", "lines"), ("x", moments.Select(m => m.Time).ToArray()), ("y", moments.Select(m => m.AngleToPreferredAxis / Degree).ToArray()), ("name", "angle to the preferred axis"), ("showlegend", false),
                ("line", Dynamic.Of(("color", Palette.Colours[2]), ("width", 2))), ("text", texts), ("hoverinfo", "text")),
        ];
        var layout = new Layout();
        layout.With(
            ("scene", SphereScene.Seen((axes.Greatest * Math.Sign(way[^1].Dot(axes.Greatest)) + way[0]).Unit, axes.Least, [0.3, 1])),
            ("xaxis", Dynamic.Of(("title", Dynamic.Of(("text", "time, s"), ("standoff", 6))), ("domain", new[] { 0.08, 0.98 }), ("gridcolor", Palette.Grid), ("zeroline", false))),
            ("yaxis", Dynamic.Of(("domain", new[] { 0, 0.22 }), ("rangemode", "tozero"), ("gridcolor", Palette.Grid), ("zeroline", false))),
            ("annotations", new object[] { Figure.Note("<b>angle to the preferred axis, °</b>", 0.08, 0.225, size: 13) }));
        var (from, to) = (moments[0].AngleToPreferredAxis / Degree, moments[^1].AngleToPreferredAxis / Degree);
        return Scene(traces, layout, 760, title ?? "Spin test: the way of the spin axis in the ball", Invariant($"In {record.Duration:F0} s the spin axis comes from {from:F1}° to {to:F1}° from the preferred axis; the spin goes from {moments[0].AngularVelocity.Length / Rpm:F0} to {moments[^1].AngularVelocity.Length / Rpm:F0} rpm. Dissipation: {record.Dissipation}."), 120);
    }

    private static Trace Polhode(TorqueFreeSpin spin, string name, string colour, string stroke, bool inLegend)
    {
        var places = spin.Polhode(Places);
        var text = spin.Period is { } period ? Invariant($"{name}<br>once in {period:F2} s at {spin.AngularVelocityInBall(0).Length / Rpm:F0} rpm") : name;
        return SphereScene.Curve(places, name, colour, stroke, 4, places.Select(_ => text), inLegend);
    }

    private static IEnumerable<Trace> Start(Vector3D place) => [SphereScene.Mark(place, "start", "diamond", Palette.Colours[1], "the spin axis at the start"), SphereScene.Word(place, "start")];

    private static IEnumerable<Trace> Axes(Ball ball) => AxisMarks(ball.Inertia.Principal);

    private static IEnumerable<Trace> AxisMarks(PrincipalAxes axes)
    {
        foreach (var (axis, name, symbol, colour) in new[]
        {
            (axes.Least, "axis of least inertia (low RG)", "circle-open", Palette.Colours[1]), (axes.Middle, "middle axis", "diamond-open", Palette.Ink),
            (axes.Greatest, "axis of greatest inertia (preferred)", "square-open", Palette.Colours[2]),
        })
        {
            yield return SphereScene.Mark(axis, name, symbol, colour, name, size: 9);
            yield return SphereScene.Mark(-axis, name, symbol, colour, name, inLegend: false, size: 9);
        }
    }

    // On an undrilled ball the two lie on the axes themselves.
    private static IEnumerable<Trace> PinAndMark(Ball ball) => ball.Marks.IsDrilled
        ? BallPlots.Marks(ball)
        : ball.Marks.MassBias is { } bias ? [SphereScene.Word(ball.Marks.Pin, "pin"), SphereScene.Word(bias, "mass bias")] : [SphereScene.Word(ball.Marks.Pin, "pin")];

    private static Vector3D Eye(PrincipalAxes axes) => (0.8 * axes.Least + 0.55 * axes.Middle + axes.Greatest).Unit;

    private static GenericChart Scene(IEnumerable<Trace> traces, Vector3D from, Vector3D up, string title, string words)
    {
        var layout = new Layout();
        layout.With(("scene", SphereScene.Seen(from, up)));
        return Scene(traces, layout, Height, title, words, 90);
    }

    private static GenericChart Scene(IEnumerable<Trace> traces, Layout layout, int height, string title, string words, int below)
    {
        var chart = Figure.Of([SphereScene.Surface(), .. traces], layout, title, height, words);
        layout.With(("margin", Dynamic.Of(("l", 0), ("r", 0), ("t", 50), ("b", below))),
            ("legend", Dynamic.Of(("orientation", "h"), ("x", 0), ("y", below > 100 ? -0.09 : -0.01), ("yanchor", "top"), ("itemsizing", "constant"))));
        return chart;
    }
}
