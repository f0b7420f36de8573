using System.Text.Json;
using Deque.AxeCore.Commons;
using PuppeteerSharp;
using PuppeteerSharp.Input;
using PuppeteerSharp.Media;
using Xunit.Abstractions;

namespace BallSim.Pages.Tests;

/// <summary>The page of the demo's comparison, as the command writes it.</summary>
public class ReportPage(OpenReport report, ITestOutputHelper log) : IClassFixture<OpenReport>
{
    private IPage Page => report.Sight.Page;

    [Fact]
    public async Task It_opens_without_a_network_carries_the_script_once_and_has_every_part()
    {
        await report.Wide(1280);
        Assert.Equal(2, report.Text.Split("plotly.js v2").Length);
        Assert.True(report.Text.Length < 7_000_000, $"the page has {report.Text.Length / 1e6:F1} MB");
        log.WriteLine($"{report.Text.Length / 1e6:F2} MB, drawn after {report.DrawnAfter.TotalSeconds:F1} s");
        Assert.Empty(report.Sight.Complaints);
        Assert.Empty(report.Sight.Outside);
        foreach (var part in new[] { "#asked dl", "#table table.sortable", "#lanes figure", "#motion figure", "#track", "#balls table", "#assumed table", "html[lang=en]", "title", "h1" })
        {
            Assert.True(await Page.QuerySelectorAsync(part) is not null, $"the page has no {part}");
        }
        // The angles, two charts for each of two lanes, the track, three layouts; each with its sentence.
        var words = await Page.EvaluateFunctionAsync<int[]>("() => [...document.querySelectorAll('figure')].map((f) => f.querySelector('.main-svg') ? f.querySelector('details').textContent.length : 0)");
        Assert.Equal(9, words.Length);
        Assert.All(words, length => Assert.True(length > 60));
    }

    [Fact]
    public async Task Its_table_sorts_by_click_and_by_key()
    {
        await report.Wide(1280);
        Task<double[]> Column(int fromEnd) => Page.EvaluateFunctionAsync<double[]>("(n) => [...document.querySelectorAll('table.sortable tbody tr')].map((r) => Number(r.cells[r.cells.length - n].dataset.value))", fromEnd);
        var before = await Column(2);
        Assert.Equal(12, before.Length);
        Assert.NotEqual(before.Order(), before);
        var heading = await Page.QuerySelectorAsync("table.sortable th:nth-last-child(2) button");
        await heading.ClickAsync();
        Assert.Equal(before.Order(), await Column(2));
        await heading.FocusAsync();
        await Page.Keyboard.PressAsync(Key.Enter);
        Assert.Equal(before.OrderDescending(), await Column(2));
        Assert.Equal("descending", await Page.EvaluateFunctionAsync<string>("() => document.querySelector('table.sortable th:nth-last-child(2)').getAttribute('aria-sort')"));
        // The order of the ranks again, for whoever looks next.
        await (await Page.QuerySelectorAsync("table.sortable th button")).ClickAsync();
        Assert.Equal(before, await Column(2));
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task It_fits_its_width_and_only_the_tables_scroll(int width)
    {
        await report.Wide(width);
        var over = await Page.EvaluateFunctionAsync<string[]>("""
            () => {
              const wide = document.documentElement.clientWidth;
              return [...document.querySelectorAll("body *")].filter((e) => !e.closest(".box") && !e.closest("svg") && e.getBoundingClientRect().right > wide + 1).map((e) => `${e.tagName}.${e.className}`).slice(0, 5);
            }
            """);
        Assert.Empty(over);
        Assert.Empty(report.Sight.Complaints);
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task Nothing_in_it_keeps_anybody_out(int width)
    {
        await report.Wide(width);
        await Page.EvaluateExpressionAsync(new BundledAxeScriptProvider().GetScript());
        var found = await Page.EvaluateFunctionAsync<JsonElement>("async () => { const r = await axe.run(document, { resultTypes: ['violations'] }); return { passes: r.passes.length, violations: r.violations.map((v) => ({ id: v.id, impact: v.impact, nodes: v.nodes.slice(0, 4).map((n) => n.html.slice(0, 160)) })) }; }");
        log.WriteLine(found.ToString());
        Assert.True(found.GetProperty("passes").GetInt32() > 20, "the check hardly looked at anything");
        Assert.Empty(found.GetProperty("violations").EnumerateArray().Where(v => v.GetProperty("impact").GetString() is "serious" or "critical").Select(v => v.ToString()));
    }

    [Fact]
    public async Task It_prints()
    {
        await report.Wide(1280);
        await Page.EmulateMediaTypeAsync(MediaType.Print);
        Assert.Equal("none", await Page.EvaluateExpressionAsync<string>("getComputedStyle(document.querySelector('nav')).display"));
        await Page.EmulateMediaTypeAsync(MediaType.Screen);
        var pdf = await Page.PdfDataAsync(new PdfOptions { Format = PaperFormat.A4, PrintBackground = true });
        Assert.True(pdf.Length > 100_000, $"the print has {pdf.Length} bytes");
    }
}
