#:package PuppeteerSharp
#:package WebDriverBiDi
#:property PublishAot=false
#:property PackAsTool=false
// Opens every guide of a finished site in a headless browser, wide and narrow: dotnet run src/Docs/look.cs -- FOLDER [PICTURES]. A page that asks for something elsewhere or in vain, complains, or is wider than the window ends the program with 1.
using System.Net;
using PuppeteerSharp;

var site = Path.GetFullPath(args[0]);
var pictures = args.Length > 1 ? Directory.CreateDirectory(args[1]).FullName : null;
// The scripts of the pages are modules, which a browser takes from a server only.
using var server = new HttpListener();
var address = $"http://127.0.0.1:{FreePort()}/";
server.Prefixes.Add(address);
server.Start();
_ = Task.Run(async () =>
{
    while (server.IsListening)
    {
        var context = await server.GetContextAsync();
        var path = Path.GetFullPath(Path.Combine(site, Uri.UnescapeDataString(context.Request.Url!.AbsolutePath).TrimStart('/')));
        path = Directory.Exists(path) ? Path.Combine(path, "index.html") : path;
        if (path.StartsWith(site, StringComparison.Ordinal) && File.Exists(path))
        {
            context.Response.ContentType = Path.GetExtension(path) switch
            {
                ".html" => "text/html; charset=utf-8", ".js" or ".mjs" => "text/javascript", ".css" => "text/css", ".json" => "application/json", ".svg" => "image/svg+xml", ".png" => "image/png", _ => "application/octet-stream",
            };
            await context.Response.OutputStream.WriteAsync(await File.ReadAllBytesAsync(path));
        }
        else
        {
            context.Response.StatusCode = 404;
        }
        context.Response.Close();
    }
});

var complaints = new List<string>();
var work = Directory.CreateTempSubdirectory("ballsim-look-");
try
{
    await using var browser = await Puppeteer.LaunchAsync(new LaunchOptions
    {
        ExecutablePath = "/usr/bin/chromium",
        Headless = true,
        UserDataDir = Path.Combine(work.FullName, "profile"),
        Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
    });
    // The guides and the chapter, and of the pages of types one of a namespace, one of a type and one of an enumeration.
    var pages = Directory.EnumerateFiles(site, "*.html", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(site, f).Replace('\\', '/'))
        .Where(f => Path.GetFileName(f) != "toc.html")
        .Where(f => !f.StartsWith("api/", StringComparison.Ordinal) || f is "api/BallSim.Shots.html" or "api/BallSim.Releases.Release.html" or "api/BallSim.Shots.StopReason.html").Order();
    foreach (var name in pages)
    {
        foreach (var width in new[] { 1280, 390 })
        {
            await using var page = await browser.NewPageAsync();
            void Complain(string what) => complaints.Add($"{name} at {width}: {what}");
            page.RequestFailed += (_, e) => Complain($"{e.Request.Url} did not load");
            page.Request += (_, e) => { if (!e.Request.Url.StartsWith(address, StringComparison.Ordinal) && !e.Request.Url.StartsWith("data:", StringComparison.Ordinal)) { Complain($"asks for {e.Request.Url}"); } };
            page.Response += (_, e) => { if ((int)e.Response.Status >= 400) { Complain($"{e.Response.Url}: {e.Response.Status}"); } };
            page.PageError += (_, e) => Complain(e.Message);
            page.Console += (_, e) => { if (e.Message.Type is ConsoleType.Error) { Complain(e.Message.Text); } };
            await page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 900 });
            await page.GoToAsync(address + name, WaitUntilNavigation.Networkidle0);
            var over = await page.EvaluateExpressionAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
            if (over > 0)
            {
                Complain($"{over} points wider than the window");
            }
            if (pictures is not null)
            {
                await page.ScreenshotAsync(Path.Combine(pictures, $"{name.Replace('/', '-')}-{width}.png"), new ScreenshotOptions { FullPage = true });
            }
        }
    }
    Console.WriteLine($"{pages.Count()} pages opened");
    if (!pages.Any())
    {
        complaints.Add("there are no pages");
    }
}
finally
{
    server.Stop();
    work.Delete(recursive: true);
}
complaints.Distinct().ToList().ForEach(Console.WriteLine);
return complaints.Count == 0 ? 0 : 1;

static int FreePort()
{
    using var probe = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
    probe.Start();
    return ((IPEndPoint)probe.LocalEndpoint).Port;
}
