using System.Diagnostics;
using System.Globalization;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Benchmarks;

/// <summary>
/// BallSim's side of the comparison in benchmarks/peers: writes the 512 releases with a fine solution for solvers outside .NET, and measures BallSim and MathNet's RK4 by the rule that holds for all of them. The rule:
/// the coarsest setting of a geometric series up to which, coming from the fine side, the greatest error over the 512 places at the pins stays below the mark; its time from the minima over rounds of blocks of 32 shots.
/// </summary>
internal static class Peers
{
    private const int Block = 32;
    private const double FinestTolerance = 1e-12;
    private static readonly double[] Marks = [1e-4, 1e-6];
    private static readonly InitialState[] Starts = [.. ReleaseSet.Releases.Select(r => r.StartOn(ReleaseSet.Lane, ReleaseSet.Ball))];

    private delegate (double X, double Time) Solver(InitialState start, double setting);

    /// <summary>Writes ball and lane (constants.csv) and the releases with the place and time of the end at the finest tolerance (releases.csv).</summary>
    public static void Export(string folder)
    {
        Directory.CreateDirectory(folder);
        var body = Simulator.BodyOf(ReleaseSet.Ball, ReleaseSet.Lane, SimulatorOptions.Default);
        var bounds = Simulator.BoundsOf(ReleaseSet.Ball, ReleaseSet.Lane, SimulatorOptions.Default);
        (string Name, double Value)[] constants =
        [
            ("mass", (double)body.Mass), ("radius", (double)body.Radius),
            ("I1", (double)body.Moments.X), ("I2", (double)body.Moments.Y), ("I3", (double)body.Moments.Z),
            ("d1", (double)body.d_P.X), ("d2", (double)body.d_P.Y), ("d3", (double)body.d_P.Z),
            ("gravity", -(double)body.g.Z), ("drag", (double)body.Drag),
            ("halfWidth", (double)bounds.HalfWidth), ("pinsAt", (double)bounds.PinsAt), ("touch", (double)bounds.TouchDistance),
            ("mu1", ReleaseSet.Mu1), ("mu2", ReleaseSet.Mu2), ("y1", ReleaseSet.ChangeFrom), ("y2", ReleaseSet.ChangeTo),
        ];
        Write(Path.Combine(folder, "constants.csv"), constants.Select(c => FormattableString.Invariant($"{c.Name},{c.Value:R}")));
        Write(Path.Combine(folder, "releases.csv"), Starts.Select(start =>
        {
            if (start.Loft != 0)
            {
                throw new InvalidOperationException("the peers know no loft, but a release of the set has one");
            }
            var q = (start.Orientation.Normalised.Spatial * body.Axes).Normalised();
            var (x, time) = Bare(start, FinestTolerance);
            var ω = start.AngularVelocity;
            double[] numbers = [start.X, start.Y, start.VelocityX, start.VelocityY, (double)q.W, (double)q.X, (double)q.Y, (double)q.Z, ω.X, ω.Y, ω.Z, x, time];
            return string.Join(',', numbers.Select(n => n.ToString("R", CultureInfo.InvariantCulture)));
        }));
    }

    /// <summary>One row a solver and mark: solver;mark;setting;greatest error;greatest error of the time;microseconds a shot.</summary>
    public static void Measure(TextWriter to)
    {
        var exact = Starts.Select(s => Bare(s, FinestTolerance)).ToArray();
        foreach (var mark in Marks)
        {
            Row(to, "BallSim, bare", mark, Coarsest(Bare, exact, mark, 0.1 * mark, 9e-3), Bare, exact, 25);
            Row(to, "BallSim, path kept", mark, Coarsest(Kept, exact, mark, 0.1 * mark, 9e-3), Kept, exact, 25);
            Row(to, "MathNet RK4", mark, Coarsest(MathNet, exact, mark, 1.2e-3, 5e-2), MathNet, exact, 4);
        }
        to.WriteLine(FormattableString.Invariant($"peak;C#;{Peak.Doubles};{Peak.Measured():F1}"));
    }

    private static (double X, double Time) Bare(InitialState start, double tolerance)
    {
        var options = new SimulatorOptions { Tolerance = tolerance, MaxSteps = 5_000_000 };
        var body = Simulator.BodyOf(ReleaseSet.Ball, ReleaseSet.Lane, options);
        var surface = new GivenSurface<Real, MapOfReal>(new(ReleaseSet.Lane.GivenFriction!.Map));
        var run = new Run<Real, GivenSurface<Real, MapOfReal>, Nobody>(body, surface, Simulator.BoundsOf(ReleaseSet.Ball, ReleaseSet.Lane, options), tolerance, default);
        var ending = run.Go(start.X, start.Y, start.VelocityX, start.VelocityY, start.Orientation.Normalised.Spatial, start.AngularVelocity.Spatial, start.Loft);
        return ending is Ending.HeadPin or Ending.PassedPins
            ? ((double)run.Last.X, (double)run.Last.Time)
            : throw new InvalidOperationException($"a release of the set does not reach the pins: {ending}");
    }

    private static (double X, double Time) Kept(InitialState start, double tolerance)
    {
        var shot = Simulator.Throw(ReleaseSet.Ball, ReleaseSet.Lane, start, new() { Tolerance = tolerance, MaxSteps = 5_000_000 });
        return (shot.End.X, shot.Duration);
    }

    private static (double X, double Time) MathNet(InitialState start, double step) =>
        new MathNetShot(Simulator.BodyOf(ReleaseSet.Ball, ReleaseSet.Lane, SimulatorOptions.Default), step)
            .Throw(start, ReleaseSet.Ball.Radius + PinDeck.BellyDiameter / 2, ReleaseSet.Lane.Length);

    // Coming from the fine side: the last of a geometric series before the greatest error passes the mark.
    private static double Coarsest(Solver solver, (double X, double Time)[] exact, double mark, double fine, double coarse)
    {
        var factor = Math.Pow(10, 0.1);
        while (Greatest(solver, exact, fine).X > mark)
        {
            fine /= factor;
        }
        while (fine * factor <= coarse && Greatest(solver, exact, fine * factor).X <= mark)
        {
            fine *= factor;
        }
        return fine;
    }

    private static (double X, double Time) Greatest(Solver solver, (double X, double Time)[] exact, double setting)
    {
        double x = 0, time = 0;
        for (var i = 0; i < Starts.Length; i++)
        {
            var end = solver(Starts[i], setting);
            (x, time) = (Math.Max(x, Math.Abs(end.X - exact[i].X)), Math.Max(time, Math.Abs(end.Time - exact[i].Time)));
        }
        return (x, time);
    }

    private static void Row(TextWriter to, string name, double mark, double setting, Solver solver, (double X, double Time)[] exact, int rounds)
    {
        var (x, time) = Greatest(solver, exact, setting);
        var sum = 0.0;
        for (var block = 0; block < Starts.Length; block += Block)
        {
            var least = double.PositiveInfinity;
            for (var round = 0; round < rounds; round++)
            {
                var began = Stopwatch.GetTimestamp();
                for (var i = block; i < block + Block; i++)
                {
                    solver(Starts[i], setting);
                }
                least = Math.Min(least, Stopwatch.GetElapsedTime(began).TotalMicroseconds);
            }
            sum += least;
        }
        to.WriteLine(FormattableString.Invariant($"{name};{mark:E0};{setting:E2};{x:E2};{time:E2};{sum / Starts.Length:F1}"));
    }

    private static void Write(string path, IEnumerable<string> lines)
    {
        File.WriteAllLines(path + ".part", lines);
        File.Move(path + ".part", path, overwrite: true);
    }

    private readonly struct Nobody : IRecorder<Real>
    {
        public void Took(Phase phase, in Step<State<Real>> step, Real h, Quat<Real> start)
        {
        }

        public void Changed(Phase from, Phase to, in State<Real> at, Quat<Real> start)
        {
        }
    }
}
