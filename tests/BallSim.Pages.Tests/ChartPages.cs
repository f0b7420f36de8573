using System.Reflection;
using BallSim.Plots;
using Plotly.NET;
using PuppeteerSharp;
using Xunit.Abstractions;

namespace BallSim.Pages.Tests;

/// <summary>Every kind of chart, saved as a file and opened in a browser.</summary>
public class ChartPages(Chromium chromium, ITestOutputHelper log) : IClassFixture<Chromium>
{
    private const string Drawn = """
        () => {
          const place = document.querySelector("[data-chart]");
          const box = place.getBoundingClientRect();
          const shapes = [...place.querySelectorAll("svg.main-svg path, svg.main-svg text, svg.main-svg image, svg.main-svg rect")]
            .filter((s) => { const b = s.getBoundingClientRect(); return b.width + b.height > 3; }).length;
          return { width: box.width, height: box.height, shapes, onCanvas: place.querySelector(".gl-container canvas, .gl-canvas") !== null };
        }
        """;

    // The share of a picture's dots that differ from another's.
    private const string Differing = """
        async (pictures) => {
          const [a, b] = await Promise.all(pictures.map(async (png) => {
            const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
            const context = Object.assign(document.createElement("canvas"), { width: image.width, height: image.height }).getContext("2d");
            context.drawImage(image, 0, 0);
            return new Uint32Array(context.getImageData(0, 0, image.width, image.height).data.buffer);
          }));
          return a.filter((dot, i) => dot !== b[i]).length / a.length;
        }
        """;

    public static TheoryData<string> Names => [.. Gallery.Charts.Keys];

    [Theory, MemberData(nameof(Names))]
    public async Task A_chart_opens_without_a_network_and_is_not_empty(string name)
    {
        var path = chromium.PathOf(name);
        Gallery.Charts[name]().SaveHtml(path);
        await using var sight = await chromium.Open(path);
        Assert.Empty(sight.Complaints);
        Assert.Empty(sight.Outside);
        // The record works: the page itself was seen.
        Assert.Contains(sight.Requests, r => r.StartsWith("file:", StringComparison.Ordinal));
        var seen = await sight.Page.EvaluateFunctionAsync<Seen>(Drawn);
        Assert.True(seen.Width > 500 && seen.Height > 150, $"the chart is {seen.Width} by {seen.Height} pixels");
        Assert.True(seen.Shapes > 5, $"only {seen.Shapes} marks are drawn");
        if (seen.OnCanvas)
        {
            // What disappears with the canvas was drawn on it.
            var chart = await sight.Page.QuerySelectorAsync("[data-chart]");
            var shown = await chart.ScreenshotBase64Async();
            await sight.Page.AddStyleTagAsync(new AddTagOptions { Content = "canvas { visibility: hidden }" });
            var hidden = await chart.ScreenshotBase64Async();
            var share = await sight.Page.EvaluateFunctionAsync<double>(Differing, (object)new[] { shown, hidden });
            log.WriteLine($"{share:P1} drawn on a canvas");
            Assert.True(share > 0.02, $"only {share:P2} of the picture is drawn on a canvas: it is empty");
        }
        var words = await sight.Page.EvaluateExpressionAsync<string>("document.querySelector('figcaption').textContent");
        Assert.True(words.Length > 60, $"the chart is told in words by '{words}'");
    }

    [Fact]
    public void The_gallery_has_every_chart_there_is()
    {
        var methods = typeof(LanePlots).Assembly.GetExportedTypes().SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Static)).Where(m => m.ReturnType == typeof(GenericChart)).Select(m => m.Name).ToHashSet();
        Assert.True(methods.Count > 8, $"only {methods.Count} kinds of chart were found");
        Assert.DoesNotContain(methods, m => !Gallery.Charts.Keys.Any(name => name.Split(' ')[0] == m));
    }

    private sealed record Seen(double Width, double Height, int Shapes, bool OnCanvas);
}
