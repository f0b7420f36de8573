using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;
using BenchmarkDotNet.Attributes;

namespace BallSim.Benchmarks;

/// <summary>
/// One shot, averaged over 32 of the 512 releases: the library at its default tolerance and at 1e-4 m, with the whole path kept, against MathNet's RK4 at the step that the accuracy report
/// finds for the same greatest error. Read the ratios. Covered: one core, given friction, offset and asymmetry; not covered: the film law.
/// </summary>
[MemoryDiagnoser]
public class OneShot
{
    private const int Count = 32;

    /// <summary>Fixed step of RK4, s, at which its greatest error over the 512 releases is 1e-6 m; see the accuracy report.</summary>
    public const double Rk4Step = 2.8e-3;

    private static readonly Release[] Releases = [.. ReleaseSet.Releases.Where((_, i) => i % (512 / Count) == 7)];
    private static readonly SimulatorOptions Coarse = new() { Tolerance = 1e-4 };

    [Benchmark(Baseline = true, OperationsPerInvoke = Count)]
    public double Throw() => Sum(SimulatorOptions.Default);

    [Benchmark(OperationsPerInvoke = Count)]
    public double ThrowAt1e4() => Sum(Coarse);

    [Benchmark(OperationsPerInvoke = Count)]
    public double MathNetRk4()
    {
        double sum = 0;
        foreach (var release in Releases)
        {
            sum += Rk4(release, Rk4Step).X;
        }
        return sum;
    }

    internal static (double X, double Time) Rk4(Release release, double step)
    {
        var body = Simulator.BodyOf(ReleaseSet.Ball, ReleaseSet.Lane, SimulatorOptions.Default);
        return new MathNetShot(body, step).Throw(release.StartOn(ReleaseSet.Lane, ReleaseSet.Ball),
            ReleaseSet.Ball.Radius + Lanes.PinDeck.BellyDiameter / 2, ReleaseSet.Lane.Length);
    }

    private static double Sum(SimulatorOptions options)
    {
        double sum = 0;
        foreach (var release in Releases)
        {
            sum += Simulator.Throw(ReleaseSet.Ball, ReleaseSet.Lane, release, options).End.X;
        }
        return sum;
    }
}
