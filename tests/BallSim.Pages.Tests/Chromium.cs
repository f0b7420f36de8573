using PuppeteerSharp;

namespace BallSim.Pages.Tests;

/// <summary>One headless browser for all tests, without a network, with a profile of its own that is thrown away.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("ballsim-pages-");
    private IBrowser? browser;

    public async Task InitializeAsync()
    {
        var program = Places.FirstOrDefault(File.Exists) ?? throw new InvalidOperationException(
            $"The pages are looked at in a browser, and none was found ({string.Join(", ", Places)}). On Debian or Ubuntu: apt-get install -y chromium");
        browser = await Puppeteer.LaunchAsync(new LaunchOptions
        {
            ExecutablePath = program,
            Headless = true,
            UserDataDir = Path.Combine(folder.FullName, "profile"),
            // A machine without a graphics card draws the sphere by software.
            Args =
            [
                "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--use-angle=swiftshader",
                "--enable-unsafe-swiftshader", "--ignore-gpu-blocklist",
            ],
        });
    }

    public async Task DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }
        folder.Delete(recursive: true);
    }

    /// <summary>A file for a page to be written to.</summary>
    public string PathOf(string name) => Path.Combine(folder.FullName, name + ".html");

    /// <summary>Opens a file as a double click would, waits until its charts are drawn, and keeps a record of what it complained of and asked for.</summary>
    public async Task<Sight> Open(string path, int width = 640, int height = 480)
    {
        var page = await browser!.NewPageAsync();
        var sight = new Sight(page);
        await page.SetViewportAsync(new ViewPortOptions { Width = width, Height = height });
        await page.GoToAsync(new Uri(path).AbsoluteUri);
        await page.WaitForFunctionAsync("() => document.documentElement.dataset.drawn !== undefined", new WaitForFunctionOptions { Timeout = 60_000, PollingInterval = 50 });
        return sight;
    }
}
