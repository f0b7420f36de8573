using System.Diagnostics;
using BallSim.Shots;

namespace BallSim.Benchmarks;

/// <summary>Work against precision: the greatest error of any of the 512 paths, along the whole path and at the pins, for a series of tolerances.</summary>
internal static class Accuracy
{
    private const int Stations = 120;

    public static void Report(TextWriter to)
    {
        Warm();
        var exact = ReleaseSet.Releases.Select(r => Places(Simulator.Throw(ReleaseSet.Ball, ReleaseSet.Lane, r, new() { Tolerance = 1e-12, MaxSteps = 5_000_000 }))).ToArray();
        to.WriteLine("tolerance [m] | max error, path [m] | max error, end [m] | max error, end time [s] | steps | rejected | us a shot | slips again, mean");
        foreach (var tolerance in new[] { 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8 })
        {
            var options = new SimulatorOptions { Tolerance = tolerance };
            var shots = ReleaseSet.Releases.Select(r => Simulator.Throw(ReleaseSet.Ball, ReleaseSet.Lane, r, options)).ToArray();
            double path = 0, end = 0, time = 0;
            foreach (var (shot, reference) in shots.Zip(exact))
            {
                var places = Places(shot);
                path = Math.Max(path, places.X.Zip(reference.X, (a, b) => Math.Abs(a - b)).Max());
                end = Math.Max(end, Math.Abs(places.X[^1] - reference.X[^1]));
                time = Math.Max(time, Math.Abs(shot.Duration - reference.Time));
            }
            var clock = Stopwatch.StartNew();
            var rounds = 0;
            while (clock.ElapsedMilliseconds < 1500)
            {
                foreach (var release in ReleaseSet.Releases)
                {
                    Simulator.Throw(ReleaseSet.Ball, ReleaseSet.Lane, release, options);
                }
                rounds++;
            }
            var each = clock.Elapsed.TotalMicroseconds / rounds / shots.Length;
            to.WriteLine(FormattableString.Invariant($"{tolerance:E0} | {path:E1} | {end:E1} | {time:E1} | {shots.Average(s => s.Steps):F0} | {shots.Average(s => s.RejectedSteps):F0} | {each:F1} | {shots.Average(s => s.SlippedAgain):F1}"));
        }
    }

    /// <summary>
    /// The full law (film, oil on the cover, fresh cover) on 25 mL of oil: errors of place at the end of the shot over the 512 releases, against a tolerance of 1e-9, and the time of a shot beside two of given friction in the same run: on the same lane
    /// (<see cref="ReleaseSet.OiledAsGiven"/>: the ball goes nearly the same way, so that the ratio is what law and states cost) and on the benchmark's lane, where it slides longer and meets fewer rows.
    /// </summary>
    public static void ReportFull(TextWriter to)
    {
        var lane = ReleaseSet.Oiled;
        var exact = ReleaseSet.Releases.Select(r => Simulator.Throw(ReleaseSet.Ball, lane, r, new() { Tolerance = 1e-9, MaxSteps = 5_000_000 }).End).ToArray();
        to.WriteLine("full law: tolerance [m] | greatest error, end [m] | 99 of 100 below | 9 of 10 below | half below | steps | rejected | us a shot | friction given, same lane | benchmark's lane | full : same lane | full : benchmark's lane");
        foreach (var tolerance in new[] { 1e-3, 1e-4, 1e-5, 3e-6, 1e-6, 1e-7 })
        {
            var options = new SimulatorOptions { Tolerance = tolerance };
            var shots = ReleaseSet.Releases.Select(r => Simulator.Throw(ReleaseSet.Ball, lane, r, options)).ToArray();
            var errors = shots.Zip(exact, (s, e) => Math.Max(Math.Abs(s.End.X - e.X), Math.Abs(s.End.Y - e.Y))).Order().ToArray();
            // Round by round in turn, the least of each shot: other work on the machine then weighs little.
            var lanes = new[] { lane, ReleaseSet.OiledAsGiven, ReleaseSet.Lane };
            var least = new double[lanes.Length][];
            for (var k = 0; k < lanes.Length; k++)
            {
                least[k] = [.. Enumerable.Repeat(double.PositiveInfinity, shots.Length)];
            }
            var clock = Stopwatch.StartNew();
            while (clock.ElapsedMilliseconds < 6000)
            {
                for (var k = 0; k < lanes.Length; k++)
                {
                    for (var i = 0; i < shots.Length; i++)
                    {
                        var start = Stopwatch.GetTimestamp();
                        Simulator.Throw(ReleaseSet.Ball, lanes[k], ReleaseSet.Releases[i], options);
                        least[k][i] = Math.Min(least[k][i], Stopwatch.GetElapsedTime(start).TotalMicroseconds);
                    }
                }
            }
            double full = least[0].Average(), same = least[1].Average(), bare = least[2].Average();
            to.WriteLine(FormattableString.Invariant($"{tolerance:E0} | {errors[^1]:E1} | {errors[errors.Length * 99 / 100]:E1} | {errors[errors.Length * 9 / 10]:E1} | {errors[errors.Length / 2]:E1} | {shots.Average(s => s.Steps):F0} | {shots.Average(s => s.RejectedSteps):F0} | {full:F1} | {same:F1} | {bare:F1} | {full / same:F2} | {full / bare:F2}"));
        }
    }

    /// <summary>The same for the peer: greatest error at the end over all 512 releases for a series of fixed steps.</summary>
    public static void ReportRk4(TextWriter to)
    {
        var exact = ReleaseSet.Releases.Select(r => Simulator.Throw(ReleaseSet.Ball, ReleaseSet.Lane, r, new() { Tolerance = 1e-11, MaxSteps = 5_000_000 })).ToArray();
        to.WriteLine("RK4 step [s] | max error, end [m] | max error, end time [s] | us a shot");
        foreach (var step in new[] { 1e-2, 6e-3, 4e-3, 3e-3, 2e-3, 1e-3 })
        {
            double end = 0, time = 0;
            var clock = Stopwatch.StartNew();
            foreach (var (release, shot) in ReleaseSet.Releases.Zip(exact))
            {
                var (x, t) = OneShot.Rk4(release, step);
                end = Math.Max(end, Math.Abs(x - shot.End.X));
                time = Math.Max(time, Math.Abs(t - shot.Duration));
            }
            to.WriteLine(FormattableString.Invariant($"{step:E1} | {end:E1} | {time:E1} | {clock.Elapsed.TotalMicroseconds / exact.Length:F0}"));
        }
    }

    // The compiler arranges the code by what it sees first: let that be shots at tolerances that are measured, not the many short steps of those that they are compared with.
    private static void Warm()
    {
        for (var round = 0; round < 5; round++)
        {
            foreach (var tolerance in new[] { 1e-3, 1e-4, 1e-5, 1e-6 })
            {
                foreach (var lane in new[] { ReleaseSet.Oiled, ReleaseSet.OiledAsGiven, ReleaseSet.Lane })
                {
                    foreach (var release in ReleaseSet.Releases)
                    {
                        Simulator.Throw(ReleaseSet.Ball, lane, release, new() { Tolerance = tolerance });
                    }
                }
            }
        }
    }

    private static (double[] X, double Time) Places(Shot shot)
    {
        if (!shot.ReachedPins)
        {
            throw new InvalidOperationException($"a release of the set does not reach the pins: it {shot.StopSentence}");
        }
        var x = new double[Stations + 1];
        for (var i = 0; i < Stations; i++)
        {
            x[i] = shot.AtDistance(18.0 * i / (Stations - 1)).X;
        }
        x[^1] = shot.End.X;
        return (x, shot.Duration);
    }
}
