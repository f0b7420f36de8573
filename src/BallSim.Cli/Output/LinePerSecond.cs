using System.Diagnostics;

namespace BallSim.Cli;

/// <summary>Progress as plain lines, at most one a second and none in the first: it reads the same on a terminal and in a log.</summary>
internal sealed class LinePerSecond(TextWriter error, int total, string what = "rows") : IProgress<int>
{
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private TimeSpan next = TimeSpan.FromSeconds(1);

    public void Report(int done)
    {
        if (clock.Elapsed >= next && done < total)
        {
            error.WriteLine($"ballsim: {done} of {total} {what}");
            next = clock.Elapsed + TimeSpan.FromSeconds(1);
        }
    }
}
