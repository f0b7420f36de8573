using Plotly.NET;

namespace BallSim.Plots;

/// <summary>What every picture shares: fonts, paper, legend below, no logo, and a sentence that tells what the picture shows to whoever cannot see it.</summary>
internal static class Figure
{
    private const int Above = 60, Below = 110;

    /// <summary>A chart with axes.</summary>
    /// <param name="traces">What is drawn.</param>
    /// <param name="layout">Axes and shapes; the rest is filled in here.</param>
    /// <param name="title">Title.</param>
    /// <param name="height">Height, pixels.</param>
    /// <param name="words">The text alternative: what the picture shows, with its numbers.</param>
    /// <param name="narrow">What changes on a page as narrow as a phone: properties of the layout that replace those given, or null.</param>
    public static GenericChart Of(IEnumerable<Trace> traces, Layout layout, string title, int height, string words, DynamicObj.DynamicObj? narrow = null)
    {
        var config = new Config().With(("responsive", true), ("displaylogo", false));
        layout.With(
            ("title", Dynamic.Of(("text", Plain(title)), ("x", 0.01), ("xanchor", "left"), ("font", Dynamic.Of(("size", 17))))),
            ("height", height),
            ("margin", Dynamic.Of(("l", 60), ("r", 24), ("t", Above), ("b", Below))),
            ("font", Dynamic.Of(("family", "sans-serif"), ("size", 13), ("color", Palette.Ink))),
            ("paper_bgcolor", Palette.Paper),
            ("plot_bgcolor", Palette.Paper),
            ("hovermode", "closest"),
            ("legend", Dynamic.Of(("orientation", "h"), ("x", 0), ("y", -58.0 / (height - Above - Below)), ("yanchor", "top"), ("itemwidth", 50))),
            ("meta", Dynamic.Of(("words", words), ("narrow", narrow))));
        return GenericChart.setConfig(config, GenericChart.setLayout(layout, GenericChart.ofTraceObjects(false, traces)));
    }

    /// <summary>Names for the legend: those given, else numbers; a single shot goes without.</summary>
    public static string[] Names(int count, IReadOnlyList<string>? names)
    {
        if (count == 0)
        {
            throw new ArgumentException("there is no shot to show", "shots");
        }
        if (names is not null && names.Count != count)
        {
            throw new ArgumentException($"{names.Count} names for {count} shots; give one name for each shot, or none", nameof(names));
        }
        return names is not null ? [.. names.Select(Plain)] : count == 1 ? ["path"] : [.. Enumerable.Range(1, count).Select(i => $"shot {i}")];
    }

    /// <summary>A text from outside as the chart library wants it: it reads tags, and a name is none.</summary>
    public static string Plain(string text) => text.Replace("&", "&amp;").Replace("<", "&lt;").Replace(">", "&gt;");

    /// <summary>The beginning of a sentence.</summary>
    public static string Sentence(string text) => text.Length > 0 ? char.ToUpperInvariant(text[0]) + text[1..] : text;

    /// <summary>A word of layout at a corner of a panel.</summary>
    public static DynamicObj.DynamicObj Note(string text, double x, double y, string xanchor = "left", string yanchor = "bottom", int size = 11, string xref = "paper", string yref = "paper") => Dynamic.Of(
        ("text", text), ("x", x), ("y", y), ("xref", xref), ("yref", yref), ("xanchor", xanchor), ("yanchor", yanchor), ("showarrow", false), ("font", Dynamic.Of(("size", size))));
}
