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

/// <summary>Tracks whose truth is known: a drilled ball thrown on oil, its path seen at stations with normal noise, its releases scattered about the one that the fit is told.</summary>
internal static class SyntheticTracks
{
    /// <summary>Fixed before anything was fitted.</summary>
    public const int Seed = 20261125;

    public static FrictionCalibration Truth { get; } = new() { Dry = 0.20, Floor = 0.020, FilmScale = 1 };

    /// <summary>Where fits start: not at the truth.</summary>
    public static SimulatorOptions Start { get; } = new() { Tolerance = 1e-5, Friction = new() { Dry = 0.22, Floor = 0.017, FilmScale = 1.2 } };

    public static Ball Drilled { get; } =
        (Ball.FromSpecification(weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce)
            with { Finish = Finish.Polished, Cover = Cover.Urethane })
        .Drill(new Layout(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch));

    public static Lane Oiled { get; } = Lane.Regulation with { Oil = OilMap.Crowned(length: 42 * Foot, volume: 25 * Millilitre) };

    public static Release Meant { get; } = new() { Speed = 18 * MilesPerHour, SpinRate = 350 * Rpm, AxisRotation = 60 * Degree, AxisTilt = 12 * Degree, Board = 24, LaunchAngle = 3 * Degree };

    public static Scatter Usual { get; } = new();

    /// <summary>
    /// Standard normal numbers by Box and Muller, a stream of its own for every replication. Not System.Random with one seed after another: there the same draw of a thousand streams has a mean of up to nearly one standard deviation, and a
    /// fit of such tracks looks biased.
    /// </summary>
    public static Func<double> Normals(int replication)
    {
        var draws = 0;
        double Uniform() => CounterRandom.Uniform(Seed, replication, 0, draws++);
        return () => Math.Sqrt(-2 * Math.Log(Uniform())) * Math.Cos(2 * Math.PI * Uniform());
    }

    /// <summary>Tracks of one replication; <paramref name="sign"/> -1: the same with every error turned round.</summary>
    public static List<FitShot> Make(int count, int stations, double lateral, double time, int replication, SimulatorOptions? options = null, Scatter? scatter = null, int sign = 1)
    {
        var normal = Normals(replication);
        var s = scatter ?? Usual;
        List<FitShot> shots = [];
        while (shots.Count < count)
        {
            double Off(double deviation) => sign * deviation * normal();
            var r = Meant with
            {
                Speed = Meant.Speed + Off(s.Speed),
                SpinRate = Meant.SpinRate + Off(s.SpinRate),
                AxisRotation = Meant.AxisRotation + Off(s.AxisRotation),
                AxisTilt = Meant.AxisTilt + Off(s.AxisTilt),
                Board = Meant.Board + Off(s.Board),
                LaunchAngle = Meant.LaunchAngle + Off(s.LaunchAngle),
            };
            var shot = Simulator.Throw(Drilled, Oiled, r, (options ?? SimulatorOptions.Default) with { Friction = Truth });
            if (!shot.ReachedPins)
            {
                throw new InvalidOperationException($"a track for a fit must come to the pins: it {shot.StopSentence}");
            }
            var points = new TrackedPoint[stations];
            for (var i = 0; i < stations; i++)
            {
                var p = shot.AtDistance(0.3 + 17.7 * i / (stations - 1));
                points[i] = new() { Distance = p.Y, X = p.X + Off(lateral), Time = p.Time + Off(time), Line = i + 2 };
            }
            shots.Add(new(TrackedShot.Of($"{shots.Count + 1}", points), Drilled, Oiled, Meant));
        }
        return shots;
    }

    public static FitOptions Options(double lateral, double time, RobustLoss loss = RobustLoss.LeastSquares) =>
        FitOptions.For(Usual) with { Noise = new() { Lateral = lateral, Time = time }, Loss = loss, Simulator = Start };
}
