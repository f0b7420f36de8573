using System.Collections.Concurrent;
using PuppeteerSharp;

namespace BallSim.Pages.Tests;

/// <summary>A page that is open, and what came up while it was.</summary>
public sealed class Sight : IAsyncDisposable
{
    private readonly ConcurrentQueue<string> complaints = new(), requests = new();

    public Sight(IPage page)
    {
        Page = page;
        page.Console += (_, e) =>
        {
            if (e.Message.Type == ConsoleType.Error)
            {
                complaints.Enqueue(e.Message.Text);
            }
        };
        page.PageError += (_, e) => complaints.Enqueue(e.Message);
        page.Request += (_, e) => requests.Enqueue(e.Request.Url);
    }

    public IPage Page { get; }

    /// <summary>Errors on the console and errors that nobody caught.</summary>
    public IEnumerable<string> Complaints => complaints;

    /// <summary>Every address asked for.</summary>
    public IEnumerable<string> Requests => requests;

    /// <summary>What lies outside the file itself.</summary>
    public IEnumerable<string> Outside => requests.Where(r => !r.StartsWith("file:", StringComparison.Ordinal) && !r.StartsWith("data:", StringComparison.Ordinal) && !r.StartsWith("blob:", StringComparison.Ordinal));

    public ValueTask DisposeAsync() => Page.DisposeAsync();
}
