namespace BallSim.Files.Tests;

/// <summary>A small build and a bench file that are right, for tests that change one thing in them.</summary>
internal static class BuildText
{
    public const string Whole = """
        {
          "name": "Second",
          "cover": { "thickness": "0.7 in", "density": "1.18 g/mL", "material": "urethane" },
          "filler": { "weight": "15 lb", "light": "0.45 g/mL", "dense": "1.6 g/mL" },
          "topWeight": "2.5 oz",
          "cores": [
            { "form": "ellipsoid", "width": "2.6 in", "depth": "3.7 in", "height": "5.7 in", "density": "3 g/mL" },
            { "form": "cylinder", "diameter": "1.4 in", "height": "0.8 in", "density": "3.4 g/mL", "place": { "z": "1.4 in" } }
          ],
          "turn": { "about": "x", "by": "35 deg" }
        }
        """;

    public const string Bench = """
        {
          "ball": { "file": "build.json" },
          "layout": { "pinToAxis": "4.5 in", "angleAtPin": "55 deg", "angleAtAxis": "40 deg" },
          "bowler": { "hand": "right", "axis": { "over": "5 in", "up": "0.5 in" } }
        }
        """;

    /// <summary>The text with one piece exchanged; the piece must be there.</summary>
    public static string With(string text, string old, string @new)
    {
        Assert.Contains(old, text);
        return text.Replace(old, @new);
    }
}
