using BallSim.Balls;
using BallSim.Shots;
using Plotly.NET;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Plots;

/// <summary>The ball as a sphere that the pointer turns.</summary>
public static class BallPlots
{
    private const int Height = 620;

    // Early turns light, late ones dark: a ramp that reads in grey as well.
    private static readonly (double R, double G, double B) First = (0xE3, 0xAE, 0x10), Last = (0x7A, 0x1F, 0x02);

    /// <summary>
    /// A ball as a sphere with its marks: pin, mass-bias mark, and on a drilled or laid-out ball the positive axis point, the grip centre with its two lines, and the finger and thumb places. Seen onto the grip,
    /// else onto the pin.
    /// </summary>
    /// <param name="ball">The ball.</param>
    /// <param name="title">Title; a plain one if null.</param>
    public static GenericChart BallView(this Ball ball, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(ball);
        var (from, up) = Eye(ball, null);
        return Scene(Marks(ball), from, up, title ?? "The ball and its marks", $"A ball as a sphere. {MarkWords(ball)}");
    }

    /// <summary>
    /// The ball of a shot with its track: where the lane touched the cover, one ring for each turn from the landing on, and the way of the spin axis from the positive axis point on. Rings of sliding are drawn solid, rings
    /// of rolling dashed; they darken with the distance, and the first and the last whole one carry the number of their turn.
    /// </summary>
    /// <param name="shot">The shot.</param>
    /// <param name="title">Title; a plain one if null.</param>
    public static GenericChart BallView(this Shot shot, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(shot);
        var (ball, track) = (shot.Ball, SphereTrack.Of(shot));
        var (from, up) = Eye(ball, track);
        var (start, end) = (track.Axis[0], track.Axis[^1]);
        var moved = Invariant($"{ball.Radius * start.AngleTo(end) / Inch:F1} in on the surface");
        return Scene([.. Marks(ball), .. Track(track, ball)], from, up, title ?? "The ball, its marks and its track",
            Invariant($"A ball as a sphere with {track.Rings.Count} rings, one for each turn from {track.Rings[0].From / Foot:F0} ft to {track.Rings[^1].To / Foot:F0} ft. ")
            + Invariant($"From the first contact to the end the spin axis moves {moved}. {MarkWords(ball)}"));
    }

    private static GenericChart Scene(IEnumerable<Trace> traces, Vector3D from, Vector3D up, string title, string words)
    {
        var layout = new Layout();
        layout.With(("scene", SphereScene.Seen(from, up)));
        var chart = Figure.Of([SphereScene.Surface(), .. traces], layout, title, Height, words, Dynamic.Of(("height", 520), ("scene", SphereScene.Seen(from, up, zoom: 1.6))));
        layout.With(("margin", Dynamic.Of(("l", 0), ("r", 0), ("t", 50), ("b", 90))),
            ("legend", Dynamic.Of(("orientation", "h"), ("x", 0), ("y", -0.01), ("yanchor", "top"), ("itemsizing", "constant"))));
        return chart;
    }

    /// <summary>The marks of a ball with their holes or places, for any scene.</summary>
    internal static IEnumerable<Trace> Marks(Ball ball)
    {
        var marks = ball.Marks;
        string From(Vector3D place, string name) => Invariant($"{name}<br>{ball.Radius * marks.Pin.AngleTo(place) / Inch:F2} in from the pin")
            + (marks.MassBias is { } m && name != "mass-bias mark" ? Invariant($"<br>{ball.Radius * m.AngleTo(place) / Inch:F2} in from the mass-bias mark") : "");
        yield return SphereScene.Mark(marks.Pin, "pin", "circle", Palette.Colours[1], "pin: the axis of lowest RG");
        yield return SphereScene.Word(marks.Pin, "pin");
        if (marks.MassBias is { } bias)
        {
            yield return SphereScene.Mark(bias, "mass-bias mark", "diamond", Palette.Colours[3], From(bias, "mass-bias mark"));
            yield return SphereScene.Word(bias, "mass bias");
        }
        if (marks.PositiveAxis is { } axis)
        {
            yield return SphereScene.Mark(axis, "positive axis point", "square", Palette.Colours[2], From(axis, "positive axis point"));
            yield return SphereScene.Word(axis, "PAP");
        }
        if (marks is not { GripCentre: { } centre, GripRight: { } right, GripUp: { } above })
        {
            yield break;
        }
        // The two lines a driller draws through the grip centre, as far as the holes reach.
        IEnumerable<Vector3D> Along(Vector3D towards) => Enumerable.Range(-20, 41).Select(i => 0.032 * i).Select(a => Math.Cos(a) * centre + Math.Sin(a) * towards);
        yield return SphereScene.Curve([.. Along(right), Gap, .. Along(above)], "midline and centre line, crossing at the grip centre", Palette.Ink, "dot", 3);
        var first = true;
        foreach (var (place, name, diameter) in new[] { (marks.Thumb, "thumb", 1.0), (marks.MiddleFinger, "middle finger", 31.0 / 32), (marks.RingFinger, "ring finger", 31.0 / 32) })
        {
            if (place is { } hole)
            {
                yield return SphereScene.Curve(SphereScene.Circle(hole, Math.Asin(diameter * Inch / 2 / ball.Radius)), "holes (drawn about 1 in wide)", Palette.Ink, "solid", 4,
                    Enumerable.Repeat(From(hole, name), 49), first, "holes");
                first = false;
            }
        }
    }

    internal static Vector3D Gap { get; } = new(double.NaN, double.NaN, double.NaN);

    private static IEnumerable<Trace> Track(SphereTrack track, Ball ball)
    {
        var radius = ball.Radius;
        var last = track.Rings.Count - 1;
        var named = new HashSet<bool>();
        for (var i = 0; i <= last; i++)
        {
            var ring = track.Rings[i];
            var name = ring.Rolls ? "track, rolling" : "track, sliding";
            var text = Invariant($"turn {ring.Turn}: {ring.From / Foot:F1} to {ring.To / Foot:F1} ft, {(ring.Rolls ? "rolling" : "sliding")}");
            yield return SphereScene.Curve(ring.Places, name, Ramp(last == 0 ? 1 : (double)i / last), ring.Rolls ? "dash" : "solid", 4, ring.Places.Select(_ => text), named.Add(ring.Rolls), name);
        }
        yield return SphereScene.Curve(track.Axis, "way of the spin axis", Palette.Colours[2], "solid", 6, track.Axis.Select(a => Invariant($"spin axis, {radius * a.AngleTo(track.Axis[0]) / Inch:F2} in from its start")));
        yield return SphereScene.Mark(track.Axis[^1], "spin axis at the end", "diamond-open", Palette.Colours[2], Invariant($"spin axis at the end<br>{radius * track.Axis[^1].AngleTo(track.Axis[0]) / Inch:F2} in from its start"));
        // The end comes in the middle of a turn: the last whole one carries the number.
        var whole = track.Rings[Math.Max(0, last - 1)];
        foreach (var ring in whole == track.Rings[0] ? [whole] : new[] { track.Rings[0], whole })
        {
            var place = Visible(ring, ball, track);
            yield return SphereScene.Mark(place, $"turn {ring.Turn}", "circle", Palette.Ink, $"turn {ring.Turn}", inLegend: false, size: 3);
            yield return SphereScene.Word(place, $"turn {ring.Turn}", ring == whole ? "middle left" : "middle right");
        }
    }

    // Where a ring is seen well from the eye: near to it, but below the way of the axis.
    private static Vector3D Visible(SphereRing ring, Ball ball, SphereTrack track)
    {
        var (from, up) = Eye(ball, track);
        return ring.Places.MaxBy(p => p.Dot(from - 0.45 * up));
    }

    private static string Ramp(double share)
    {
        int Mix(double a, double b) => (int)Math.Round(a + share * (b - a));
        return Invariant($"#{Mix(First.R, Last.R):X2}{Mix(First.G, Last.G):X2}{Mix(First.B, Last.B):X2}");
    }

    private static (Vector3D From, Vector3D Up) Eye(Ball ball, SphereTrack? track) => (ball.Marks, track) switch
    {
        (var m, { } t) => EyeOn(t, m),
        ({ GripCentre: { } grip, GripUp: { } up }, _) => (grip, up),
        (var m, _) => ((m.Pin + 0.7 * (m.MassBias ?? SphereScene.Square(m.Pin).U)).Unit, m.Pin),
    };

    // The rings cross in two knots, square to the way of the axis, and part most half-way between them: there one looks, from the side of the grip and a little from that of the axis.
    private static (Vector3D From, Vector3D Up) EyeOn(SphereTrack track, BallMarks marks)
    {
        var (start, end) = (track.Axis[0], track.Axis[^1]);
        var middle = (start + end).Unit;
        var knot = start.Cross(end).Length > 1e-6 ? start.Cross(end).Unit : SphereScene.Square(middle).U;
        var apart = knot.Cross(middle);
        var towards = marks.GripCentre ?? marks.Pin;
        var from = (apart.Dot(towards) < 0 ? -apart : apart) + 0.5 * middle;
        return (from.Unit, marks.GripUp is { } up && up.Dot(knot) < 0 ? -knot : knot);
    }

    private static string MarkWords(Ball ball)
    {
        var marks = ball.Marks;
        string Arc(Vector3D place) => Invariant($"{ball.Radius * marks.Pin.AngleTo(place) / Inch:F2} in");
        var parts = new List<string>();
        if (marks.MassBias is { } m)
        {
            parts.Add($"the mass-bias mark {Arc(m)}");
        }
        if (marks.PositiveAxis is { } p)
        {
            parts.Add($"the positive axis point {Arc(p)}");
        }
        if (marks.GripCentre is { } g)
        {
            parts.Add($"the grip centre {Arc(g)}");
        }
        return parts.Count == 0 ? "It carries the pin alone." : $"From the pin, on the surface: {string.Join(", ", parts)}.";
    }
}
