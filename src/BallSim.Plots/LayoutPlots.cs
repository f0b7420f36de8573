using BallSim.Balls;
using BallSim.Drilling;
using Plotly.NET;
using Layout = Plotly.NET.Layout;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Plots;

/// <summary>A drilled ball as a marking sheet.</summary>
public static class LayoutPlots
{
    // What lies further than this from the grip centre is on the far side; a quarter turn is the ball's edge seen from there.
    private const double Farthest = 0.78 * Math.PI;

    // Of the whole drawing, its margins and a row of the table, pixels.
    private const int Height = 1000, NarrowHeight = 860, Above = 60, Below = 110, RowHeight = 26;

    /// <summary>
    /// The grip side of a drilled ball, fingers up: holes to scale, pin, mass-bias mark, positive axis point, the arcs between them with their lengths, the two angles of the layout, and under it the arcs to tape. Every
    /// distance from the grip centre is true along the surface, so that what lies beyond the ball's edge is seen as well, outside the circle.
    /// </summary>
    /// <param name="sheet">The drilled ball; its grip must have been laid out.</param>
    /// <param name="title">Title; a plain one if null.</param>
    /// <exception cref="ArgumentException">The ball has no grip.</exception>
    public static GenericChart LayoutView(this DrillSheet sheet, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var ball = sheet.Before;
        if (ball.Marks is not { GripCentre: { } grip, GripUp: { } up, PositiveAxis: { } axis })
        {
            throw new ArgumentException("the ball has no grip to draw; drill it by a layout first", nameof(sheet));
        }
        var (marks, face) = (ball.Marks, new Face(grip, up, ball.Radius));
        var measures = LayoutMeasures.Of(ball);
        var (pin, bias) = (marks.Pin, marks.MassBias);
        var traces = new List<Trace>
        {
            Line(face, SphereScene.Circle(grip, Math.PI / 2, 121), "edge of the ball seen from the grip", Palette.Soft, "solid", 1),
            Line(face, [.. Great(grip, face.Right, -1.5, 1.5), BallPlots.Gap, .. Great(grip, up, -1.5, 1.5)], "midline and centre line", Palette.Ink, "dot", 1),
            Line(face, Great(axis, Tangent(axis, up), -0.9, 0.9), "vertical axis line", Palette.Colours[2], "dashdot", 1.5),
            Line(face, SphereScene.Arc(pin, axis), "pin to positive axis point", Palette.Colours[1], "solid", 2.5),
            Line(face, SphereScene.Arc(pin, grip), "pin to grip centre", Palette.Colours[1], "dash", 1.5),
        };
        if (bias is { } m)
        {
            traces.Add(Line(face, SphereScene.Arc(pin, m), "pin to mass-bias mark", Palette.Colours[3], "longdash", 1.5));
            traces.Add(Corner(face, pin, Tangent(pin, m), Tangent(pin, axis), "angle at the pin"));
        }
        traces.Add(Corner(face, axis, Tangent(axis, up), Tangent(axis, pin), "angle at the axis"));
        traces.AddRange(sheet.Holes.Select((hole, i) => HoleOf(face, hole, i == 0)));
        traces.AddRange(Places(ball, sheet, face));
        var arcs = MarkingSheet.Of(ball).Arcs;
        // The headings stand a little higher than a row; on a narrow screen they may take two lines.
        var (wide, narrow) = (Share(arcs.Count + 2, Height), Share(arcs.Count + 2.5, NarrowHeight));
        traces.Add(Tape(arcs, marks.MassBias is not null, wide, narrow));
        Vector3D[] beyond = bias is { } b ? [pin, axis, b] : [pin, axis];
        var layout = Layout(face, Labels(face, ball, measures), beyond, 1, wide + 0.02);
        var chart = Figure.Of(traces, layout, title ?? "Layout and drilling", Height, Words(measures, sheet),
            Layout(face, Labels(face, ball, measures), beyond, 1.14, narrow + 0.02).With(("height", NarrowHeight)));
        // No numbers stand at the sides.
        layout.With(("margin", Dynamic.Of(("l", 12), ("r", 12), ("t", Above), ("b", Below))));
        return chart;
    }

    private static IEnumerable<Trace> Places(Ball ball, DrillSheet sheet, Face face)
    {
        var marks = ball.Marks;
        // A line has two ends: the one nearer the grip is shown.
        var preferred = sheet.Ball.PreferredAxis;
        preferred = preferred.Dot(face.Centre) < 0 ? -preferred : preferred;
        foreach (var (place, name, symbol, colour) in new (Vector3D? Place, string Name, string Symbol, string Colour)[]
        {
            (marks.Pin, "pin", "circle", Palette.Colours[1]), (marks.MassBias, "mass-bias mark", "diamond", Palette.Colours[3]), (marks.PositiveAxis, "positive axis point", "cross", Palette.Colours[2]),
            (marks.GripCentre, "grip centre", "x-thin", Palette.Ink), (preferred, "axis of highest RG, drilled", "star", Palette.Ink),
        })
        {
            if (place is { } p && face.Sees(p))
            {
                var (x, y) = face.At(p);
                yield return new Trace("scatter").With(
                    ("mode", "markers"), ("x", new[] { x }), ("y", new[] { y }), ("name", name), ("marker", Dynamic.Of(("symbol", symbol), ("size", 12), ("color", colour), ("line", Dynamic.Of(("color", symbol == "x-thin" ? colour : Palette.Paper), ("width", 1.5))))),
                    ("text", new[] { Invariant($"{name}<br>{face.Radius * p.AngleTo(marks.Pin) / Inch:F2} in from the pin<br>{face.Radius * p.AngleTo(face.Centre) / Inch:F2} in from the grip centre") }), ("hoverinfo", "text"));
            }
        }
    }

    private static Trace HoleOf(Face face, Hole hole, bool first)
    {
        var pitch = hole.PitchOn(face.Radius);
        return Line(face, Rim(hole, face.Radius), "holes", Palette.Ink, "solid", 1.5).With(
            ("fill", "toself"), ("fillcolor", Palette.Grid), ("legendgroup", "holes"), ("showlegend", first), ("hoveron", "fills"), ("hoverinfo", "text"),
            ("text", Invariant($"{hole.Name}: {hole.Diameter / Inch:0.###} in wide, {hole.Depth / Inch:0.###} in deep, axis {pitch / Inch:0.###} in beside the centre")));
    }

    /// <summary>Where the hole's wall meets the sphere.</summary>
    private static IEnumerable<Vector3D> Rim(Hole hole, double radius)
    {
        var (u, v) = SphereScene.Square(hole.Axis);
        foreach (var φ in Enumerable.Range(0, 49).Select(i => 2 * Math.PI * i / 48))
        {
            // A point of the wall beside the entry, moved along the axis until it lies on the sphere.
            var beside = hole.Entry + hole.Diameter / 2 / radius * (Math.Cos(φ) * u + Math.Sin(φ) * v);
            var along = beside.Dot(hole.Axis);
            var root = along * along - beside.Dot(beside) + 1;
            yield return (beside + (-along + Math.Sqrt(Math.Max(0, root))) * hole.Axis).Unit;
        }
    }

    private static Trace Line(Face face, IEnumerable<Vector3D> places, string name, string colour, string stroke, double width)
    {
        (double? X, double? Y)[] at = [.. places.Select(p => double.IsNaN(p.X) || !face.Sees(p) ? (null, null) : ((double?, double?))face.At(p))];
        return new Trace("scatter").With(
            ("mode", "lines"), ("x", at.Select(p => p.X).ToArray()), ("y", at.Select(p => p.Y).ToArray()), ("name", name), ("hoverinfo", "name"),
            ("line", Dynamic.Of(("color", colour), ("width", width), ("dash", stroke))));
    }

    // The angle between two directions at a place, as a small arc.
    private static Trace Corner(Face face, Vector3D at, Vector3D from, Vector3D to, string name) =>
        Line(face, SphereScene.Arc(from, to, 17).Select(t => (at + 0.16 * t).Unit), name, Palette.Ink, "solid", 1.5).With(("showlegend", false));

    private static IEnumerable<Vector3D> Great(Vector3D through, Vector3D towards, double from, double to) =>
        Enumerable.Range(0, 61).Select(i => from + (to - from) * i / 60).Select(a => Math.Cos(a) * through + Math.Sin(a) * towards);

    private static Vector3D Tangent(Vector3D at, Vector3D towards) => (towards - towards.Dot(at) * at).Unit;

    private static IEnumerable<object> Labels(Face face, Ball ball, LayoutMeasures m)
    {
        var (pin, axis) = (ball.Marks.Pin, ball.Marks.PositiveAxis!.Value);
        object At(Vector3D place, string text, string xanchor, string yanchor)
        {
            var (x, y) = face.At(place);
            return Figure.Note(text, x, y, xanchor, yanchor, 13, "x", "y").With(("bgcolor", "rgba(255,255,255,0.8)"), ("xshift", xanchor == "left" ? 9 : xanchor == "right" ? -9 : 0), ("yshift", yanchor == "bottom" ? 7 : -7));
        }
        static Vector3D Middle(Vector3D a, Vector3D b) => (a + b).Unit;
        var right = face.At(axis).X > face.At(pin).X;
        yield return At(pin, m.AngleAtPin is { } p ? Invariant($"pin, {p / Degree:F0}°") : "pin", right ? "right" : "left", "bottom");
        yield return At(axis, m.AngleAtAxis is { } a ? Invariant($"axis, {a / Degree:F0}°") : "axis", face.At(axis).X > 0 ? "left" : "right", "top");
        yield return At(Middle(pin, axis), Inches(m.PinToAxis), "center", "bottom");
        yield return At(Middle(pin, face.Centre), Inches(m.PinToGripCentre), right ? "right" : "left", "top");
        if (ball.Marks.MassBias is { } bias && face.Sees(bias))
        {
            yield return At(bias, "mass bias", face.At(bias).X > 0 ? "left" : "right", "top");
        }
    }

    private static string Inches(double length) => Invariant($"{length / Inch:F2} in");

    private static Trace Tape(IReadOnlyList<MarkingArc> arcs, bool marked, double wide, double narrow)
    {
        string[] Cells(Func<MarkingArc, string> of) => [.. arcs.Select(of)];
        List<(string Heading, string[] Cells)> columns = [("arcs to tape, in", Cells(a => a.Name)), ("from pin", Cells(a => TapeReading.Of(a.FromPin)))];
        if (marked)
        {
            columns.Add(("from mark", Cells(a => a.FromMassBias is { } m ? TapeReading.Of(m) : "-")));
            columns.Add(("side", Cells(a => a.Side?.ToString().ToLowerInvariant() ?? "-")));
        }
        DynamicObj.DynamicObj Look(string fill, params object[] values) => Dynamic.Of(
            ("values", values), ("align", new[] { "left", "right", "right", "right" }), ("fill", Dynamic.Of(("color", fill))), ("line", Dynamic.Of(("color", Palette.Grid), ("width", 1))), ("height", RowHeight),
            ("font", Dynamic.Of(("size", 13), ("color", Palette.Ink))));
        return new Trace("table").With(
            ("domain", TableDomain(wide)), ("meta", Dynamic.Of(("narrow", Dynamic.Of(("domain", TableDomain(narrow)))))), ("columnwidth", new[] { 1.7, 1, 1, 0.8 }),
            ("header", Look(Palette.DryLane, [.. columns.Select(c => $"<b>{c.Heading}</b>")])), ("cells", Look(Palette.Paper, [.. columns.Select(c => c.Cells)])));
    }

    // Of the height inside the margins, what so many rows take.
    private static double Share(double rows, int height) => rows * RowHeight / (height - Above - Below);

    private static DynamicObj.DynamicObj TableDomain(double top) => Dynamic.Of(("x", new[] { 0.0, 1 }), ("y", new[] { 0, top }));

    private static Layout Layout(Face face, IEnumerable<object> labels, IEnumerable<Vector3D> places, double room, double above)
    {
        var layout = new Layout();
        // The edge of the ball, and what lies beyond it with room for its name.
        var reach = room * Math.Max(face.Radius * Math.PI / 2 / Inch * 1.03, places.Where(face.Sees).Max(p => face.Radius * p.AngleTo(face.Centre) / Inch) + 0.9);
        return layout.With(
            ("annotations", labels.ToArray()),
            ("xaxis", Dynamic.Of(("visible", false), ("range", new[] { -reach, reach }), ("domain", new[] { 0, 1 }), ("constrain", "domain"))),
            ("yaxis", Dynamic.Of(("visible", false), ("range", new[] { -reach, reach }), ("domain", new[] { above, 1 }), ("scaleanchor", "x"), ("scaleratio", 1), ("constrain", "domain"))));
    }

    private static string Words(LayoutMeasures m, DrillSheet sheet) =>
        Invariant($"The grip side of the ball, fingers up. Pin to positive axis point {Inches(m.PinToAxis)}, ")
        + (m.AngleAtPin is { } p ? Invariant($"angle at the pin {p / Degree:F1}°, ") : "") + (m.AngleAtAxis is { } a ? Invariant($"angle at the axis {a / Degree:F1}°, ") : "")
        + Invariant($"pin to grip centre {Inches(m.PinToGripCentre)}, grip centre to axis point {Inches(m.GripCentreToAxis)}; the pin lies {Inches(Math.Abs(m.PinAboveMidline))} {(m.PinAboveMidline < 0 ? "below" : "above")} the midline. ")
        + $"Holes: {string.Join("; ", sheet.Holes)}. The side is that of the line from pin to mark, going that way and seen from outside.";

    /// <summary>The sphere laid flat about the grip centre: distance and direction from there are true.</summary>
    private sealed record Face(Vector3D Centre, Vector3D Up, double Radius)
    {
        // Seen from outside with the fingers up.
        public Vector3D Right { get; } = Up.Cross(Centre);

        public bool Sees(Vector3D place) => place.AngleTo(Centre) < Farthest;

        public (double X, double Y) At(Vector3D place)
        {
            var (across, along) = (place.Dot(Right), place.Dot(Up));
            var (length, arc) = (double.Hypot(across, along), Radius * place.AngleTo(Centre) / Inch);
            return length < 1e-12 ? (0, 0) : (arc * across / length, arc * along / length);
        }
    }
}
