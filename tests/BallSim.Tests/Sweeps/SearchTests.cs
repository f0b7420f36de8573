using BallSim.Ensembles;
using BallSim.Releases;
using BallSim.Sweeps;
using Xunit;
using static BallSim.Units;

namespace BallSim.Tests.Sweeps;

/// <summary>The way back finds what was put in.</summary>
public class SearchTests
{
    private static Throw Thrown(IReadOnlyList<double> v) => new(SweepTests.Drilled, SweepTests.House, SweepTests.Line with { Board = v[0], LaunchAngle = v[1] });

    private static readonly Factor[] Lines = [Factor.Range("board", 18, 30), Factor.Range("launch", 0, 6 * Degree)];

    [Fact]
    public void It_comes_back_to_a_shot_that_exists()
    {
        // The target is a shot's own entry: what is looked for is there, and the search knows only its numbers.
        var wanted = Ensemble.Throw([Thrown([24, 3 * Degree])])[0];
        var found = Search.For(new()
        {
            Factors = Lines,
            Build = Thrown,
            Goals = [Goal.Near(Metric.EntryBoard, wanted.Board, 1), Goal.Near(Metric.BreakpointBoard, wanted.BreakpointBoard, 1)],
            Tries = 80,
        });
        Assert.Contains(found.TradeOff, f => f.Goals.All(g => g.Cost < 0.1));
        Assert.Equal(0, found.Impossibles);
        // A trade-off: none beats another in everything.
        Assert.DoesNotContain(found.TradeOff, a => found.TradeOff.Any(b => a != b && b.Goals.Zip(a.Goals).All(p => p.First.Cost < p.Second.Cost)));
    }

    [Fact]
    public void It_says_what_the_rule_forbids_and_keeps_to_the_bounds()
    {
        var found = Search.For(new()
        {
            Factors = Lines,
            Build = Thrown,
            Goals = [Goal.Near(Metric.EntryAngle, 20, 1)],
            Rule = t => t.Release.LaunchAngle > 3 * Degree ? "more than three degrees" : null,
            Starts = 32,
            Descents = 2,
        });
        Assert.Equal("more than three degrees", found.FirstReason);
        Assert.True(found.Impossibles > 0);
        Assert.All(found.TradeOff, f => Assert.True(f.Values[1] <= 3 * Degree && f.Values[0] is >= 18 and <= 30));
        Assert.Single(found.TradeOff);
    }

    [Fact]
    public void A_line_for_the_largest_share_beats_the_one_it_began_with_and_tells_how_sure_it_is()
    {
        var window = new PocketWindow { LeastAngle = 3 * Degree, GreatestAngle = 7 * Degree };
        var scatter = new Scatter();
        var plan = new SearchPlan
        {
            Factors = Lines, Build = Thrown, Goals = [Goal.LargestPocketShare(window)], Scatter = scatter, Throws = 32, FinalThrows = 800, Starts = 16, Descents = 1, Tries = 15,
        };
        var best = Search.For(plan).TradeOff[0];
        var share = best.Goals[0];
        Assert.True(share.Low <= share.Value && share.Value <= share.High && share.High - share.Low < 0.071);
        var fixedLine = Repeatability.Of(SweepTests.Drilled, SweepTests.House, SweepTests.Line, scatter, new() { Throws = 800, Window = window }).InPocket;
        Assert.True(share.Value > fixedLine.Low, $"{share} against {fixedLine}");
        // The same by a sample of its own.
        var again = Repeatability.Of(SweepTests.Drilled, SweepTests.House, SweepTests.Line with { Board = best.Values[0], LaunchAngle = best.Values[1] }, scatter, new() { Throws = 800, Seed = 77, Window = window });
        Assert.Equal(again.InPocket.Value, share.Value, 0.08);
    }

    [Fact]
    public void The_same_seed_finds_the_same()
    {
        SearchPlan plan = new() { Factors = Lines, Build = Thrown, Goals = [Goal.Near(Metric.EntryAngle, 4, 1)], Starts = 8, Descents = 1, Tries = 10 };
        Assert.Equal(Search.For(plan).TradeOff.Select(f => f.ToString()), Search.For(plan with { Options = new() { Threads = 1 } }).TradeOff.Select(f => f.ToString()));
    }
}
