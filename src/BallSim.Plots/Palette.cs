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

    public static readonly IReadOnlyList<string> Colours = [Ink, "#D24A12", "#0B6E69", "#8C5BD6", "#E3AE10", "#7CB8F2"];

    private static readonly string[] Strokes = ["solid", "dash", "dot", "dashdot", "longdash", "longdashdot"];

    public static string Colour(int shot) => Colours[shot % Colours.Count];

    public static string Stroke(int shot) => Strokes[(shot + shot / Colours.Count) % Strokes.Length];
}
