using System.Diagnostics;
using ILGPU.Runtime;

namespace BallSim.Gpu;

/// <summary>Where a chunk's time goes, s; each kernel by itself, waited for; and the few shots that are left to the processor.</summary>
internal sealed class KernelTimes
{
    public double Begin, Slide, Stick, Roll, Reach, Look, StartSlip, End, Events, Finish, Rest;

    public int Rounds, EventCount, Near, Slipping, Rare, RareRounds, Left;

    /// <summary>All together.</summary>
    public double All => Begin + Slide + Stick + Roll + Reach + Look + StartSlip + End + Events + Finish + Rest;

    /// <summary>In ms of a million shots, of a chunk of so many.</summary>
    public string Of(int shots)
    {
        string Per(double seconds) => FormattableString.Invariant($"{1e9 * seconds / shots:F2}");
        var kernels = string.Join(", ", new[] { Begin, Slide, Stick, Roll, Reach, Look, StartSlip, End, Events, Finish, Rest }.Select(Per));
        return FormattableString.Invariant($"{kernels} | {Rounds} with {EventCount} events, {Near} near the limit of grip, {Slipping} slipping, {Rare} rare in {RareRounds}, {Left} left over");
    }

    /// <summary>Counts a round: the shots that had plain steps in it, and those near the limit of grip.</summary>
    public void Round(int events, int near)
    {
        Rounds++;
        EventCount += events;
        Near += near;
    }

    /// <summary>Counts a round of rare events.</summary>
    public void Waited(int rare)
    {
        RareRounds++;
        Rare += rare;
    }

    /// <summary>Runs a kernel; with times, waits for it and adds what it took.</summary>
    public static void Run(KernelTimes? times, AcceleratorStream stream, Action kernel, Action<KernelTimes, double> add)
    {
        if (times is null)
        {
            kernel();
            return;
        }
        stream.Synchronize();
        var start = Stopwatch.GetTimestamp();
        kernel();
        stream.Synchronize();
        add(times, Stopwatch.GetElapsedTime(start).TotalSeconds);
    }
}
