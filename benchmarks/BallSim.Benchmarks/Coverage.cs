using System.Diagnostics;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Fitting;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Sweeps;
using static BallSim.Units;

namespace BallSim.Benchmarks;

/// <summary>Fits of tracks whose truth is known: how often the intervals hold it, how far the estimates are off on average, and how long a fit takes.</summary>
internal static class Coverage
{
    private static readonly FitParameter[] Law = [FitParameter.Dry, FitParameter.Floor, FitParameter.FilmScale];

    public static void Report(TextWriter to, int replications, params double[] noises)
    {
        to.WriteLine("Tracks made by the simulator (a drilled urethane ball on 42 ft, 25 mL; releases scattered as Scatter's defaults), fitted by least squares with those priors from another friction (0.22, 0.017, 1.2).");
        to.WriteLine();
        to.WriteLine("One fit of 18 shots at 30 stations, 5 mm and 4 ms:");
        var data = SyntheticTracks.Make(18, 30, 0.005, 0.004, 0);
        foreach (var loss in new[] { RobustLoss.LeastSquares, RobustLoss.Cauchy })
        {
            Fit(data, 0.005, loss);
            var before = Process.GetCurrentProcess().TotalProcessorTime;
            var clock = Stopwatch.StartNew();
            var fit = Fit(data, 0.005, loss);
            to.WriteLine(FormattableString.Invariant($"{loss,-13} {clock.Elapsed.TotalSeconds:F2} s, {(Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds:F2} s of processor, {fit.Evaluations} evaluations; relative errors: ")
                + string.Join(", ", Law.Select(p => FormattableString.Invariant($"{p} {100 * fit[p].StandardError / True(p):F1} %"))));
        }
        foreach (var noise in noises)
        {
            to.WriteLine();
            to.WriteLine(FormattableString.Invariant($"{replications} fits of 18 shots at 30 stations, {1000 * noise:F0} mm and 4 ms:"));
            var fits = new (bool IsConverged, Estimate[] Law)[replications];
            Parallel.For(0, replications, k =>
            {
                var fit = Fit(SyntheticTracks.Make(18, 30, noise, 0.004, 1 + k), noise, RobustLoss.LeastSquares);
                fits[k] = (fit.IsConverged, [.. Law.Select(p => fit[p])]);
            });
            for (var i = 0; i < Law.Length; i++)
            {
                var truth = True(Law[i]);
                Estimate[] all = [.. fits.Select(f => f.Law[i])];
                var (mean, least) = (all.Average(e => e.Value), all.Average(e => e.Value + e.Bias));
                var deviation = Math.Sqrt(all.Average(e => (e.Value - mean) * (e.Value - mean)));
                to.WriteLine(FormattableString.Invariant($"{Law[i],-10} 95 % intervals hold in {100.0 * all.Count(e => e.Low95 <= truth && truth <= e.High95) / replications:F1} %; bias {(mean - truth) / deviation:+0.000;-0.000;0.000} standard deviations ({(least - truth) / deviation:+0.000;-0.000;0.000} at the least misfit); ")
                    + FormattableString.Invariant($"standard deviation {100 * deviation / truth:F2} %, mean standard error {100 * all.Average(e => e.StandardError) / truth:F2} %; mean error in standard errors {all.Average(e => (e.Value - truth) / e.StandardError):+0.000;-0.000;0.000}"));
            }
            to.WriteLine(FormattableString.Invariant($"chance alone: 95 ± {100 * Math.Sqrt(0.95 * 0.05 / replications):F1} %, and ± {1 / Math.Sqrt(replications):F3} of bias. Converged: {fits.Count(f => f.IsConverged)} of {replications}"));
        }
    }

    private static double True(FitParameter p) => p switch { FitParameter.Dry => SyntheticTracks.Truth.Dry, FitParameter.Floor => SyntheticTracks.Truth.Floor, _ => SyntheticTracks.Truth.FilmScale };

    private static FitResult Fit(IReadOnlyList<FitShot> shots, double noise, RobustLoss loss) => TrackFit.Of(shots, FitOptions.For(SyntheticTracks.Usual) with
    {
        Noise = new() { Lateral = noise, Time = 0.004 },
        Loss = loss,
        Simulator = SyntheticTracks.Start,
    });
}
