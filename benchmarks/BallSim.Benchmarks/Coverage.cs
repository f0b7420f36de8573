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
    private const int Seed = 20261125;

    private static readonly FitParameter[] Law = [FitParameter.Dry, FitParameter.Floor, FitParameter.FilmScale];
    private static readonly FrictionCalibration Truth = new() { Dry = 0.20, Floor = 0.020, FilmScale = 1 };

    private static readonly Ball Drilled =
        (Ball.FromSpecification(weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce)
            with { Finish = Finish.Polished, Cover = Cover.Urethane })
        .Drill(new Layout(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch));

    private static readonly Lane Oiled = Lane.Regulation with { Oil = OilMap.Crowned(length: 42 * Foot, volume: 25 * Millilitre) };
    private static readonly Release Meant = new() { Speed = 18 * MilesPerHour, SpinRate = 350 * Rpm, AxisRotation = 60 * Degree, AxisTilt = 12 * Degree, Board = 24, LaunchAngle = 3 * Degree };
    private static readonly Scatter Usual = new();

    public static void Report(TextWriter to, int replications, params double[] noises)
    {
        to.WriteLine("Tracks made by the simulator (a drilled urethane ball on 42 ft, 25 mL; releases scattered as Scatter's defaults), fitted by least squares with those priors from another friction (0.22, 0.017, 1.2).");
        to.WriteLine();
        to.WriteLine("One fit of 18 shots at 30 stations, 5 mm and 4 ms:");
        var data = Make(18, 30, 0.005, 0);
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
                var fit = Fit(Make(18, 30, noise, 1 + k), noise, RobustLoss.LeastSquares);
                fits[k] = (fit.IsConverged, [.. Law.Select(p => fit[p])]);
            });
            for (var i = 0; i < Law.Length; i++)
            {
                var truth = True(Law[i]);
                Estimate[] all = [.. fits.Select(f => f.Law[i])];
                var (mean, least) = (all.Average(e => e.Value), all.Average(e => e.Value + e.Bias));
                var deviation = Math.Sqrt(all.Average(e => (e.Value - mean) * (e.Value - mean)));
                to.WriteLine(FormattableString.Invariant($"{Law[i],-10} 95 % intervals hold in {100.0 * all.Count(e => e.Low95 <= truth && truth <= e.High95) / replications:F1} %; bias {(mean - truth) / deviation:+0.000;-0.000} standard deviations ({(least - truth) / deviation:+0.000;-0.000} at the least misfit); ")
                    + FormattableString.Invariant($"standard deviation {100 * deviation / truth:F2} %, mean standard error {100 * all.Average(e => e.StandardError) / truth:F2} %; mean error in standard errors {all.Average(e => (e.Value - truth) / e.StandardError):+0.000;-0.000}"));
            }
            to.WriteLine(FormattableString.Invariant($"chance alone: 95 ± {100 * Math.Sqrt(0.95 * 0.05 / replications):F1} %, and ± {1 / Math.Sqrt(replications):F3} of bias. Converged: {fits.Count(f => f.IsConverged)} of {replications}"));
        }
    }

    private static double True(FitParameter p) => p switch { FitParameter.Dry => Truth.Dry, FitParameter.Floor => Truth.Floor, _ => Truth.FilmScale };

    private static FitResult Fit(IReadOnlyList<FitShot> shots, double noise, RobustLoss loss) => TrackFit.Of(shots, FitOptions.For(Usual) with
    {
        Noise = new() { Lateral = noise, Time = 0.004 },
        Loss = loss,
        Simulator = new() { Tolerance = 1e-5, Friction = new() { Dry = 0.22, Floor = 0.017, FilmScale = 1.2 } },
    });

    // Box and Muller's normal numbers. Each replication has a row of the counter-based generator: System.Random from one seed after another is no set of independent streams (some draws of a thousand such streams have means of nearly one
    // standard deviation), and showed as a bias of the fit.
    private static List<FitShot> Make(int count, int stations, double noise, int replication)
    {
        var draws = 0;
        double Uniform() => CounterRandom.Uniform(Seed, replication, 0, draws++);
        double Off(double deviation) => deviation * Math.Sqrt(-2 * Math.Log(Uniform())) * Math.Cos(2 * Math.PI * Uniform());
        List<FitShot> shots = [];
        while (shots.Count < count)
        {
            var r = Meant with
            {
                Speed = Meant.Speed + Off(Usual.Speed),
                SpinRate = Meant.SpinRate + Off(Usual.SpinRate),
                AxisRotation = Meant.AxisRotation + Off(Usual.AxisRotation),
                AxisTilt = Meant.AxisTilt + Off(Usual.AxisTilt),
                Board = Meant.Board + Off(Usual.Board),
                LaunchAngle = Meant.LaunchAngle + Off(Usual.LaunchAngle),
            };
            var shot = Simulator.Throw(Drilled, Oiled, r, new() { Friction = Truth });
            var points = Enumerable.Range(0, stations).Select(i => shot.AtDistance(0.3 + 17.7 * i / (stations - 1))).Select(p => new TrackedPoint { Distance = p.Y, X = p.X + Off(noise), Time = p.Time + Off(0.004) });
            shots.Add(new(TrackedShot.Of($"{shots.Count + 1}", points), Drilled, Oiled, Meant));
        }
        return shots;
    }
}
