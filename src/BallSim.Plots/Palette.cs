namespace BallSim.Plots;

/// <summary>
/// Colours and strokes of our own. Six hues that stay apart under the three kinds of colour blindness (a test holds the distances), each with a stroke of its own, so that a print
/// in grey can be read as well. After six shots the strokes move on by one against the colours.
/// </summary>
internal static class Palette
{
    public const string Ink = "#16181D";
    public const string Grid = "#D9D5CC";
    public const string Paper = "#FFFFFF";
    public const string DryLane = "#FBF5E6";
    public const string FullOil = "#5C8FBF";
    public const string Soft = "#6B6F76";
    public const string Band = "#E4F0EE";

    public static readonly IReadOnlyList<string> Colours = [Ink, "#D24A12", "#0B6E69", "#8C5BD6", "#E3AE10", "#7CB8F2"];

    /// <summary>From little to much: one hue, ever darker, so that it reads in grey as well, and light enough for writing on it.</summary>
    public static readonly object[] Ramp = [new object[] { 0, "#FFF7E0" }, new object[] { 0.5, "#F2BE6B" }, new object[] { 1, "#DB7F36" }];

    /// <summary>The same for lines on white, dark enough to be seen.</summary>
    public static readonly object[] LineRamp = [new object[] { 0, "#E3AE10" }, new object[] { 0.5, "#B24A0A" }, new object[] { 1, "#3F1102" }];

    private static readonly string[] Symbols = ["circle", "diamond", "square", "triangle-up", "x", "triangle-down"];

    private static readonly string[] Strokes = ["solid", "dash", "dot", "dashdot", "longdash", "longdashdot"];

    public static string Colour(int shot) => Colours[shot % Colours.Count];

    public static string Stroke(int shot) => Strokes[(shot + shot / Colours.Count) % Strokes.Length];

    public static string Symbol(int shot) => Symbols[(shot + shot / Colours.Count) % Symbols.Length];
}
