using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Api;

/// <summary>Values are shared between threads without a thought: sixteen threads on two of each get what one thread gets, to the last bit.</summary>
public class SharingTests
{
    private static readonly Ball Ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch);
    private static readonly Ball Drilled = Ball.Drill(new Layout(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch));
    private static readonly Lane Lane = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };
    private static readonly SimulatorOptions Coarse = new() { Tolerance = 1e-4 };
    private static readonly Release[] Releases = [.. Enumerable.Range(0, 8).Select(i => new Release { Speed = 7.5 + 0.2 * i, SpinRate = 35, AxisRotation = 50 * Degree, AxisTilt = 10 * Degree, Board = 26, LaunchAngle = 3 * Degree })];

    private static T[] Together<T>(Func<T> work)
    {
        var results = new T[16];
        using var ready = new Barrier(results.Length);
        var threads = Enumerable.Range(0, results.Length).Select(i => new Thread(() =>
        {
            ready.SignalAndWait();
            results[i] = work();
        })).ToArray();
        Array.ForEach(threads, t => t.Start());
        Array.ForEach(threads, t => t.Join());
        return results;
    }

    [Fact]
    public void Balls_lanes_and_releases_are_thrown_from_many_threads()
    {
        // What a value works out when first asked (axes, maps) is asked for by all at once: the values are new.
        var (ball, lane) = (Drilled with { Finish = Finish.Polished }, Lane with { Temperature = 21 });
        string Thrown() => string.Join('\n', Releases.Select(r => Simulator.Throw(ball, lane, r, Coarse)).Select(s => $"{s.End} {s.Entry}"));
        var results = Together(Thrown);
        Assert.All(results, r => Assert.Equal(Thrown(), r));
    }

    [Fact]
    public void One_shot_is_read_from_many_threads()
    {
        var shot = Simulator.Throw(Drilled, Lane, Releases[0], Coarse);
        string Read() => $"{shot} {shot.Breakpoint} {shot.EndOfSkid} {shot.Track} {shot.OilTakenUp:R} {string.Join(' ', shot.Samples(20))}";
        var results = Together(Read);
        Assert.All(results, r => Assert.Equal(Read(), r));
    }

    [Fact]
    public void Ensembles_and_drilling_run_beside_each_other()
    {
        Throw[] rows = [.. Releases.Select(r => new Throw(Drilled, Lane, r))];
        string Work() => string.Join(' ', Ensemble.Throw(rows, new() { Shot = Coarse }).Select(o => $"{o.Angle:R} {o.X:R} {o.Time:R}"))
            + Ball.Drill(new Layout(4 * Inch, 40 * Degree, 60 * Degree), Grip.Conventional, new PositiveAxisPoint(5 * Inch, 0.5 * Inch)).Inertia;
        var results = Together(Work);
        Assert.All(results, r => Assert.Equal(Work(), r));
    }
}
