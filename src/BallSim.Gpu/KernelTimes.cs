using System.Diagnostics;
using ILGPU.Runtime;

namespace BallSim.Gpu;

/// <summary>Where a chunk's time goes, s; each kernel by itself, waited for; and the few shots that are left to the processor.</summary>
internal sealed class KernelTimes
{
    public double Begin, Slide, Roll, StartSlip, Relax, Stick, End, Events, Finish, Rest;

    public int Rounds, EventCount, Near, Stiff, Rare, RareRounds, Left;

    /// <summary>All together.</summary>
    public double All => Begin + Slide + Roll + StartSlip + Relax + Stick + End + Events + Finish + Rest;

    public override string ToString() => FormattableString.Invariant(
        $"{1e3 * Begin:F2}, {1e3 * Slide:F2}, {1e3 * Roll:F2}, {1e3 * StartSlip:F2}, {1e3 * Relax:F2}, {1e3 * Stick:F2}, {1e3 * End:F2}, {1e3 * Events:F2}, {1e3 * Finish:F2}, {1e3 * Rest:F2} | {Rounds} with {EventCount} events, {Near} near the limit of grip, {Stiff} slipping, {Rare} rare in {RareRounds}, {Left} left over");

    /// <summary>Counts a round of so many shots.</summary>
    public void Round(int all)
    {
        Rounds++;
        EventCount += all;
    }

    /// <summary>Counts those near the limit of grip and of these those that slip.</summary>
    public void NearLimit(ReadOnlySpan<int> lengths)
    {
        Near += lengths[ShotKernels.Near];
        Stiff += lengths[ShotKernels.Stiff];
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
