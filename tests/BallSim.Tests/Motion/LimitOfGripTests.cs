using BallSim.Friction;
using BallSim.Motion;
using BallSim.Shots;
using BallSim.Spatial;
using BallSim.Tests.References;
using Xunit.Abstractions;

namespace BallSim.Tests.Motion;

/// <summary>
/// Whose fresh fraction belongs into the limit of rolling: that of the friction with which sliding would start. Case J11 of full-model.json, a ball in a stick-slip trap, solved outside this project.
/// </summary>
public class LimitOfGripTests(ITestOutputHelper output)
{
    private const int Most = 500;

    [Fact]
    public void With_the_friction_of_the_slip_to_come_the_trap_is_passed_as_in_the_reference()
    {
        var (run, events, end) = Trap((_, cover, _) => cover.Friction);
        output.WriteLine($"{run.Changes.Count} changes at {string.Join(", ", run.Changes.Select(t => $"{t:F5}"))} s, end {run.Time:F4} s");
        Assert.True(run.Time >= end);
        Assert.Equal(events.Length, run.Changes.Count);
        // Events are taken to the nearest of the driver's short steps, and every one shifts the next.
        foreach (var (expected, actual) in events.Zip(run.Changes))
        {
            Assert.Equal(expected, actual, 1e-3);
        }
    }

    /// <summary>
    /// The limit of the force that holds is passed a little before that of the slip to come. In between, the ball must slip by the one, and the other stops it in the same instant: it changes to and fro and gets nowhere,
    /// for good, since the state in which it sticks is the one in which it had to slip.
    /// </summary>
    [Fact]
    public void With_the_friction_of_the_force_that_holds_the_ball_neither_sticks_nor_slips()
    {
        var (run, events, end) = Trap((surface, cover, onCover) => surface.Friction(cover.Film + (1.0 - cover.Fresh) * onCover, 0.0));
        output.WriteLine($"{run.Changes.Count} changes by {run.Time:F6} s of {end:F3} s: {run.Changes.Count(t => t == run.Time)} of them in that instant; the reference slips at {events[1]:F6} s");
        Assert.InRange(run.Changes.Count, Most, Most + 1);
        Assert.True(run.Time < end);
        Assert.All(run.Changes.Skip(events.Length), t => Assert.Equal(run.Time, t));
    }

    private static (StickSlip Run, double[] Events, double End) Trap(Func<FilmSurface<Real, MapOfReal>, CoverContact<Real>, Real, double> limit)
    {
        var c = ReferenceFile.Cases("full-model.json").Single(c => c.GetProperty("name").GetString()!.StartsWith("J11 trap", StringComparison.Ordinal));
        var (ball, lane, start, options) = FullModel.Setup(c.GetProperty("inputs"));
        var surface = new FilmSurface<Real, MapOfReal>(Contact.Of(ball, lane).Law<Real>(options.Friction), new(lane.Oil.Map));
        var run = new StickSlip(Simulator.BodyOf(ball, lane, options), surface);
        var end = c.GetProperty("contact").Number("t");
        run.Go(start, (cover, onCover) => limit(surface, cover, onCover), end, Most);
        return (run, [.. c.GetProperty("events").EnumerateArray().Select(e => e.Number("t"))], end);
    }
}
