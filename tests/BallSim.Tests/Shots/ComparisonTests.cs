using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Shots;

public class ComparisonTests
{
    private static readonly Release Usual = new()
    {
        Board = 29, LaunchAngle = 4 * Degree, Speed = 18.5 * MilesPerHour, SpinRate = 380 * Rpm, AxisRotation = 55 * Degree, AxisTilt = 13 * Degree,
    };

    private static readonly Ball Drilled = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch)
        .LayOut(new Layout(4 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch));

    // Enough here, and a good deal faster than the default.
    private static readonly SimulatorOptions Rough = new() { Tolerance = 1e-5 };

    private static Lane Oiled(double millilitres) => Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, millilitres * Millilitre) };

    private static Candidate Of(string name, double millilitres, double board = 29) => new(Drilled, Oiled(millilitres), Usual with { Board = board }) { LaneName = name };

    // On ice the entry angle is the launch angle turned round, and nothing else of the release moves it; the offset moves with the board
    // and with the launch angle over the distance to the touch (plane geometry, to the second order in the scatter).
    [Fact]
    public void On_ice_the_spread_is_that_of_the_launch_angle_and_the_board()
    {
        var ice = Lane.Regulation with { GivenFriction = FrictionMap.Constant(0) };
        var scatter = new Scatter { LaunchAngle = 0.1 * Degree, Board = 0.3 };
        var aimed = Aim.AtPocket(Drilled, ice, Usual with { Board = 19 });
        var spread = EntrySpread.Of(Drilled, ice, aimed.Release, scatter);
        Assert.NotNull(spread);
        Assert.Equal(0.1 * Degree, spread.Value.Angle, 1e-9);
        var pocket = 2.5 * 41.5 / 39 * Inch;
        var touch = (8.55 + 4.766) / 2 * Inch;
        var distance = 60 * Foot - Math.Sqrt(touch * touch - pocket * pocket);
        Assert.Equal(Math.Sqrt(Math.Pow(0.3 * 41.5 / 39 * Inch, 2) + Math.Pow(0.1 * Degree * distance, 2)), spread.Value.Offset, 2e-4);
    }

    [Fact]
    public void A_bowler_without_scatter_has_no_spread_and_a_lost_throw_has_none_to_tell()
    {
        var still = new Scatter { Speed = 0, LaunchAngle = 0, Board = 0, SpinRate = 0, AxisRotation = 0, AxisTilt = 0 };
        Assert.Equal(new EntrySpread(0, 0), EntrySpread.Of(Drilled, Oiled(25), Usual, still, Rough));
        Assert.Null(EntrySpread.Of(Drilled, Oiled(25), Usual, still with { LaunchAngle = 10 * Degree }));
        // Half a board further and the release would stand beside the lane.
        Assert.Null(EntrySpread.Of(Drilled, Oiled(25), Usual with { Board = 39.2 }, still with { Board = 0.5 }, Rough));
    }

    [Fact]
    public void Rows_stand_in_the_order_of_the_candidates_and_hold_both_lines()
    {
        var told = new List<int>();
        var rows = Comparison.Of([Of("heavy", 30), Of("light", 20)], options: Rough, progress: new Told(told));
        Assert.Equal(["heavy", "light"], rows.Select(r => r.Candidate.LaneName));
        Assert.Equal([1, 2], told);
        foreach (var row in rows)
        {
            var thrown = Simulator.Throw(row.Candidate.Ball, row.Candidate.Lane, row.Candidate.Release, Rough);
            Assert.Equal(thrown.Entry, row.SameLine.Entry);
            Assert.InRange(row.ReAimed.Shot!.Entry.Offset, -2e-4, 2e-4);
            Assert.Equal(row.ReAimed.Release.LaunchAngle - 4 * Degree, row.LineMove);
            Assert.Equal(EntrySpread.Of(Drilled, row.Candidate.Lane, row.ReAimed.Release, new Scatter(), Rough), row.Spread);
        }
        // Less oil, more friction, more hook: the line moves out (order of effects as in Banerjee and McPhee, 2014).
        Assert.True(rows[1].LineMove > rows[0].LineMove);
    }

    [Fact]
    public void Ranking_goes_by_the_distance_from_the_band_and_leaves_lost_rows_last()
    {
        var rows = Comparison.Of([Of("lost", 25, board: 1), Of("heavy", 30), Of("light", 14)], options: Rough);
        Assert.False(rows[0].ReAimed.IsFound);
        Assert.Equal(double.PositiveInfinity, rows[0].DistanceFromBand);
        Assert.True(double.IsNaN(rows[0].LineMove));
        var ranked = Comparison.Ranked(rows);
        Assert.Equal("lost", ranked[^1].Candidate.LaneName);
        Assert.True(ranked[0].DistanceFromBand <= ranked[1].DistanceFromBand);
        foreach (var row in rows.Skip(1))
        {
            var angle = row.ReAimed.Shot!.Entry.Angle / Degree;
            Assert.Equal(angle < 4 ? 4 - angle : angle > 6 ? angle - 6 : 0, row.DistanceFromBand / Degree, 1e-12);
        }
    }

    [Fact]
    public void Rows_within_the_bowlers_scatter_of_the_best_are_marked_and_others_are_not()
    {
        Candidate[] candidates = [Of("one", 25), Of("nearly one", 25.01), Of("other", 12)];
        var rows = Comparison.Of(candidates, options: Rough);
        var ranked = Comparison.Ranked(rows);
        Assert.False(ranked[0].IsWithinScatter);
        foreach (var row in ranked.Skip(1))
        {
            var difference = Math.Abs(row.ReAimed.Shot!.Entry.Angle - ranked[0].ReAimed.Shot!.Entry.Angle);
            Assert.Equal(difference < Math.Max(row.Spread!.Value.Angle, ranked[0].Spread!.Value.Angle), row.IsWithinScatter);
        }
        Assert.Single(ranked, r => r.IsWithinScatter);
        var still = new Scatter { Speed = 0, LaunchAngle = 0, Board = 0, SpinRate = 0, AxisRotation = 0, AxisTilt = 0 };
        Assert.DoesNotContain(Comparison.Of(candidates, still, Rough), r => r.IsWithinScatter);
    }

    [Fact]
    public void Everything_is_looked_at_before_the_first_throw_and_a_comparison_can_be_stopped()
    {
        var told = new List<int>();
        var undrilled = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch);
        Assert.Contains("drill it", Assert.Throws<ArgumentException>(() =>
            Comparison.Of([Of("fine", 25), new Candidate(undrilled, Oiled(25), Usual)], progress: new Told(told))).Message);
        Assert.Empty(told);
        using var stopped = new CancellationTokenSource();
        Assert.Throws<OperationCanceledException>(() => Comparison.Of([Of("one", 25), Of("two", 25)], options: Rough, progress: new Stops(stopped), cancellation: stopped.Token));
    }

    [Fact]
    public void A_candidate_is_called_by_the_names_it_has() =>
        Assert.Equal("Strong, Fresh", (Of("Fresh", 25) with { LayoutName = "Strong" }).ToString());

    private sealed class Told(List<int> list) : IProgress<int>
    {
        public void Report(int value) => list.Add(value);
    }

    private sealed class Stops(CancellationTokenSource source) : IProgress<int>
    {
        public void Report(int value) => source.Cancel();
    }
}
