using Plotly.NET;

namespace BallSim.Plots;

/// <summary>What every picture shares: fonts, paper, legend below, no logo.</summary>
internal static class Figure
{
    private const int Above = 60, Below = 110;

    public static GenericChart Of(IEnumerable<Trace> traces, Layout layout, string title, int height)
    {
        var config = new Config().With(("responsive", true), ("displaylogo", false));
        layout.With(
            ("title", Dynamic.Of(("text", title), ("x", 0.01), ("xanchor", "left"), ("font", Dynamic.Of(("size", 17))))),
            ("height", height),
            ("margin", Dynamic.Of(("l", 60), ("r", 24), ("t", Above), ("b", Below))),
            ("font", Dynamic.Of(("family", "sans-serif"), ("size", 13), ("color", Palette.Ink))),
            ("paper_bgcolor", Palette.Paper),
            ("plot_bgcolor", Palette.Paper),
            ("hovermode", "closest"),
            ("legend", Dynamic.Of(("orientation", "h"), ("x", 0), ("y", -58.0 / (height - Above - Below)), ("yanchor", "top"), ("itemwidth", 50))));
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
        return names is not null ? [.. names] : count == 1 ? ["path"] : [.. Enumerable.Range(1, count).Select(i => $"shot {i}")];
    }
}
