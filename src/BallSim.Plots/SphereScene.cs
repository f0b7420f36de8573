using Plotly.NET;

namespace BallSim.Plots;

/// <summary>The ball as a sphere of radius one in the ball frame, to be turned with the pointer: its surface, and lines and marks just over it.</summary>
internal static class SphereScene
{
    // Over the surface by less than a line is wide, so that lines neither sink in nor float.
    private const double Lines = 1.006, Marks = 1.04, Words = 1.17;
    // So large that the ball fills the scene.
    private const double Zoom = 2.0, Room = 1.25;

    private const int Meridians = 60, Parallels = 30;

    // No hue that a path or a mark has; a light ground for dark lines.
    private const string Cover = "#EEE9DD";

    /// <summary>The cover, as triangles between meridians and parallels: lighter to draw than a surface of the script's own.</summary>
    public static Trace Surface()
    {
        var places = (from i in Enumerable.Range(0, Parallels + 1) from j in Enumerable.Range(0, Meridians) select (θ: Math.PI * i / Parallels, φ: 2 * Math.PI * j / Meridians)).ToArray();
        var corners = (from i in Enumerable.Range(0, Parallels)
                       from j in Enumerable.Range(0, Meridians)
                       let a = Meridians * i + j
                       let b = Meridians * i + (j + 1) % Meridians
                       from triangle in new[] { (a, a + Meridians, b), (b, a + Meridians, b + Meridians) }
                       select triangle).ToArray();
        return new Trace("mesh3d").With(
            ("x", places.Select(p => Math.Sin(p.θ) * Math.Cos(p.φ)).ToArray()), ("y", places.Select(p => Math.Sin(p.θ) * Math.Sin(p.φ)).ToArray()), ("z", places.Select(p => Math.Cos(p.θ)).ToArray()),
            ("i", corners.Select(c => c.Item1).ToArray()), ("j", corners.Select(c => c.Item2).ToArray()), ("k", corners.Select(c => c.Item3).ToArray()), ("color", Cover), ("flatshading", false),
            ("hoverinfo", "skip"), ("name", "ball"), ("showlegend", false), ("lighting", Dynamic.Of(("ambient", 0.88), ("diffuse", 0.18), ("specular", 0.05), ("roughness", 0.9), ("fresnel", 0.1))));
    }

    /// <summary>A curve on the surface; places that are NaN part it.</summary>
    public static Trace Curve(IEnumerable<Vector3D> places, string name, string colour, string stroke, double width, IEnumerable<string>? texts = null, bool inLegend = true, string? group = null)
    {
        Vector3D[] at = [.. places.Select(p => Lines * p)];
        return Scatter(at, name, inLegend, group).With(
            ("mode", "lines"), ("line", Dynamic.Of(("color", colour), ("width", width), ("dash", stroke))), ("text", texts?.ToArray()), ("hoverinfo", texts is null ? "skip" : "text"));
    }

    /// <summary>A word over a place, so far out that the ball does not cut it.</summary>
    public static Trace Word(Vector3D place, string text, string position = "middle center") => Scatter([Words * place], text, false, null).With(
        ("mode", "text"), ("text", new[] { text }), ("hoverinfo", "skip"), ("textposition", position), ("textfont", Dynamic.Of(("size", 14), ("color", Palette.Ink))));

    /// <summary>A named place on the surface. Marks on the sphere are drawn as letters of a font, and not every font has the crosses: circle, square and diamond, full or open, are safe.</summary>
    public static Trace Mark(Vector3D place, string name, string symbol, string colour, string text, bool inLegend = true, double size = 7) => Scatter([Marks * place], name, inLegend, null).With(
        ("mode", "markers"), ("marker", Dynamic.Of(("symbol", symbol), ("size", size), ("color", colour))), ("hovertext", new[] { text }), ("hoverinfo", "text"));

    /// <summary>Settings of the scene: no axes, equal scales, seen from a direction.</summary>
    /// <param name="from">Where the eye is.</param>
    /// <param name="up">What points up.</param>
    /// <param name="domain">Part of the picture's height that the scene takes.</param>
    /// <param name="zoom">Size of the ball; less where words stand beside it in a narrow place.</param>
    public static DynamicObj.DynamicObj Seen(Vector3D from, Vector3D up, double[]? domain = null, double zoom = Zoom)
    {
        static DynamicObj.DynamicObj Point(Vector3D v) => Dynamic.Of(("x", v.X), ("y", v.Y), ("z", v.Z));
        var none = Dynamic.Of(("visible", false), ("range", new[] { -Room, Room }), ("showspikes", false));
        return Dynamic.Of(
            ("xaxis", none), ("yaxis", none), ("zaxis", none), ("aspectmode", "manual"), ("aspectratio", Dynamic.Of(("x", zoom), ("y", zoom), ("z", zoom))), ("dragmode", "orbit"),
            ("camera", Dynamic.Of(("eye", Point(1.55 * from.Unit)), ("up", Point(up)), ("projection", Dynamic.Of(("type", "orthographic"))))),
            ("domain", domain is null ? null : Dynamic.Of(("x", new[] { 0, 1 }), ("y", domain))));
    }

    /// <summary>A circle on the surface about a direction, at an angle from it.</summary>
    public static IEnumerable<Vector3D> Circle(Vector3D about, double angle, int points = 49)
    {
        var (u, v) = Square(about);
        return Enumerable.Range(0, points).Select(i => 2 * Math.PI * i / (points - 1)).Select(φ => Math.Cos(angle) * about + Math.Sin(angle) * (Math.Cos(φ) * u + Math.Sin(φ) * v));
    }

    /// <summary>The arc from one direction to another, the short way.</summary>
    public static IEnumerable<Vector3D> Arc(Vector3D from, Vector3D to, int points = 33)
    {
        var angle = from.AngleTo(to);
        var side = (to - from.Dot(to) * from).Unit;
        return Enumerable.Range(0, points).Select(i => angle * i / (points - 1)).Select(a => Math.Cos(a) * from + Math.Sin(a) * side);
    }

    /// <summary>Two directions that make a right-handed frame with a third.</summary>
    public static (Vector3D U, Vector3D V) Square(Vector3D axis)
    {
        var u = axis.Cross(Math.Abs(axis.X) < 0.6 ? Vector3D.UnitX : Vector3D.UnitY).Unit;
        return (u, axis.Cross(u));
    }

    private static Trace Scatter(Vector3D[] at, string name, bool inLegend, string? group) => new Trace("scatter3d").With(
        ("x", at.Select(Number(p => p.X)).ToArray()), ("y", at.Select(Number(p => p.Y)).ToArray()), ("z", at.Select(Number(p => p.Z)).ToArray()),
        ("name", name), ("showlegend", inLegend), ("legendgroup", group ?? name));

    // Gaps are nulls in the page's data, which has no NaN.
    private static Func<Vector3D, double?> Number(Func<Vector3D, double> of) => p => double.IsNaN(of(p)) ? null : of(p);
}
