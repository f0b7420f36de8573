using BallSim.Plots.Pages;
using Plotly.NET;

namespace BallSim.Plots;

/// <summary>Writes charts as files.</summary>
public static class HtmlFiles
{
    /// <summary>
    /// Writes a chart as one HTML file that carries everything it needs, the drawing script too (about 4 MB): it opens without a network. An existing file is replaced as a whole.
    /// </summary>
    /// <param name="chart">The chart.</param>
    /// <param name="path">Path of the file; its folder must exist.</param>
    public static void SaveHtml(this GenericChart chart, string path)
    {
        ArgumentNullException.ThrowIfNull(chart);
        WholeFile.Replace(path, chart.ToHtml());
    }

    /// <summary>The same page as text.</summary>
    /// <param name="chart">The chart.</param>
    public static string ToHtml(this GenericChart chart)
    {
        ArgumentNullException.ThrowIfNull(chart);
        var drawing = Drawing.Of(chart, "chart");
        return Document.Of(drawing.Title, $"<main class=\"single\">\n<h1>{drawing.Title}</h1>\n{drawing.Html(caption: true)}\n</main>");
    }
}
