using Newtonsoft.Json.Linq;
using Plotly.NET;

namespace BallSim.Plots.Tests;

/// <summary>A chart read back from the text that the page carries.</summary>
internal sealed class ChartText
{
    private readonly JToken figure;

    public ChartText(GenericChart chart) => figure = JToken.Parse(GenericChart.toFigureJson(chart));

    public IEnumerable<JToken> Traces => figure["data"]!;

    public JToken Layout => figure["layout"]!;

    public IEnumerable<JToken> Named(string name) => Traces.Where(t => (string?)t["name"] == name);

    public static double[] Numbers(JToken trace, string axis) => [.. trace[axis]!.Select(v => (double)v)];
}
