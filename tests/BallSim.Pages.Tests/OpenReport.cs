using System.Diagnostics;
using BallSim.Cli;
using PuppeteerSharp;

namespace BallSim.Pages.Tests;

/// <summary>The demo's page, written once by the command and open once for all that look at it.</summary>
public sealed class OpenReport : IAsyncLifetime
{
    private readonly Chromium chromium = new();

    public Sight Sight { get; private set; } = null!;

    public string Text { get; private set; } = "";

    public TimeSpan DrawnAfter { get; private set; }

    public async Task InitializeAsync()
    {
        await chromium.InitializeAsync();
        var path = chromium.PathOf("report");
        using StringWriter output = new(), error = new();
        var code = Application.Run(["compare", "--html", path], new Screen(output, error, 200), CancellationToken.None);
        if (code != ExitCode.Fine)
        {
            throw new InvalidOperationException($"compare --html ended with {code}: {error}");
        }
        Text = await File.ReadAllTextAsync(path);
        var watch = Stopwatch.StartNew();
        Sight = await chromium.Open(path, 1280, 800);
        DrawnAfter = watch.Elapsed;
    }

    public async Task DisposeAsync()
    {
        await Sight.DisposeAsync();
        await chromium.DisposeAsync();
    }

    /// <summary>Makes the window as wide as that and waits until the charts have followed.</summary>
    public async Task Wide(int width)
    {
        await Sight.Page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 800 });
        await Sight.Page.WaitForFunctionAsync("() => [...document.querySelectorAll('[data-chart]')].every((c) => { const s = c.querySelector('.main-svg'); return s && Math.abs(s.getBoundingClientRect().width - c.clientWidth) < 2; })",
            new WaitForFunctionOptions { Timeout = 60_000, PollingInterval = 50 });
    }
}
