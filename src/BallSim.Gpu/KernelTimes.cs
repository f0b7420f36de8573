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

    /// <summary>In ms of a million shots, of a chunk of so many.</summary>
    public string Of(int shots)
    {
        string Per(double seconds) => FormattableString.Invariant($"{1e9 * seconds / shots:F2}");
        var kernels = string.Join(", ", new[] { Begin, Slide, Roll, StartSlip, Relax, Stick, End, Events, Finish, Rest }.Select(Per));
        return FormattableString.Invariant($"{kernels} | {Rounds} with {EventCount} events, {Near} near the limit of grip, {Stiff} slipping, {Rare} rare in {RareRounds}, {Left} left over");
    }

    /// <summary>Counts a round: the events beside those of rolling; those of rolling, the shots near the limit of grip and of these those that slip stand in the lengths of the lists.</summary>
    public void Round(int others, ReadOnlySpan<int> lengths)
    {
        Rounds++;
        EventCount += others + lengths[ShotKernels.Rolled];
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
