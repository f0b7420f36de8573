#:project ../../BallSim.Plots/BallSim.Plots.csproj
#:package PuppeteerSharp
#:package WebDriverBiDi
#:property PublishAot=false
#:property PackAsTool=false
// The pictures of README.md: dotnet run -c Release src/Docs/pictures/pictures.cs -- FOLDER. The throw is the README's own, with a second surface beside it.
using BallSim;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Plots;
using BallSim.Releases;
using BallSim.Shots;
using Plotly.NET;
using PuppeteerSharp;
using static BallSim.Units;
using Layout = BallSim.Drilling.Layout;

var folder = args.Length == 1 ? args[0] : throw new ArgumentException("name the folder to write to");
var ball = Ball.FromSpecification(weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce)
    with { Finish = Finish.Polished, Cover = Cover.Urethane };
var drilled = ball.Drill(new Layout(pinToAxis: 4.5 * Inch, angleAtPin: 50 * Degree, angleAtAxis: 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(over: 5 * Inch, up: 0.5 * Inch));
var lane = Lane.Regulation with { Oil = OilMap.Crowned(length: 42 * Foot, volume: 25 * Millilitre) };
var release = new Release { Speed = 18 * MilesPerHour, SpinRate = 350 * Rpm, AxisRotation = 60 * Degree, AxisTilt = 12 * Degree, Board = 24, LaunchAngle = 3 * Degree };
var polished = Simulator.Throw(drilled, lane, release);
var sanded = Simulator.Throw(drilled with { Finish = Finish.Sanded(1000) }, lane, release);
string[] names = ["polished", "sanded at 1000"];

var work = Directory.CreateTempSubdirectory("ballsim-pictures-");
try
{
    await using var browser = await Puppeteer.LaunchAsync(new LaunchOptions
    {
        ExecutablePath = "/usr/bin/chromium",
        Headless = true,
        UserDataDir = Path.Combine(work.FullName, "profile"),
        Args = ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--ignore-gpu-blocklist"],
    });
    foreach (var (name, chart, width) in new (string, GenericChart, int)[]
    {
        ("lane", new[] { polished, sanded }.LaneView(names), 1100), ("motion", new[] { polished, sanded }.MotionCurves(names), 1100), ("ball", polished.BallView(), 900),
    })
    {
        var html = Path.Combine(work.FullName, name + ".html");
        chart.SaveHtml(html);
        await using var page = await browser.NewPageAsync();
        await page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 900 });
        await page.GoToAsync(new Uri(html).AbsoluteUri);
        await page.WaitForFunctionAsync("() => document.documentElement.dataset.drawn !== undefined", new WaitForFunctionOptions { Timeout = 60_000, PollingInterval = 50 });
        await page.AddStyleTagAsync(new AddTagOptions { Content = ".modebar { display: none !important }" });
        await Task.Delay(500);
        await (await page.QuerySelectorAsync("[data-chart]")).ScreenshotAsync(Path.Combine(folder, name + ".png"));
    }
}
finally
{
    work.Delete(recursive: true);
}
