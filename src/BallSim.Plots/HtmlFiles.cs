using Plotly.NET;

namespace BallSim.Plots;

/// <summary>Writes charts as files.</summary>
public static class HtmlFiles
{
    /// <summary>
    /// Writes a chart as one HTML file that carries everything it needs, the drawing script too (about 4 MB): it opens without a network. An existing file is replaced.
    /// </summary>
    /// <param name="chart">The chart.</param>
    /// <param name="path">Path of the file; its folder must exist.</param>
    public static void SaveHtml(this GenericChart chart, string path)
    {
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        File.WriteAllText(path, chart.ToHtml());
    }

    /// <summary>The same page as text.</summary>
    /// <param name="chart">The chart.</param>
    public static string ToHtml(this GenericChart chart)
    {
        ArgumentNullException.ThrowIfNull(chart);
        // By property, not by the setters, which take F# functions: a notebook's kernel has another F# core than the charts, and functions cannot cross from one to the other.
        var display = new DisplayOptions().With(("DocumentTitle", "BallSim"), ("DocumentCharset", "utf-8"), ("PlotlyJSReference", PlotlyJSReference.Full));
        return GenericChart.toEmbeddedHTML(GenericChart.setDisplayOptions(display, chart));
    }
}
