using BallSim.Balls;
using BallSim.Fitting;
using BallSim.Lanes;
using BallSim.Shots;
using static BallSim.Benchmarks.SyntheticTracks;
using static BallSim.Units;

namespace BallSim.Tests.Fitting;

/// <summary>Designed against measured, and how many shots that takes.</summary>
public class VerdictTests
{
    private static readonly FitShot[] Shots = [.. Make(8, 20, 0.005, 0.004, 0)];

    private static readonly FitResult Fit = TrackFit.Of(Shots, Options(0.005, 0.004));

    [Fact]
    public void The_ball_that_was_thrown_is_as_designed_by_wide_tolerances()
    {
        var verdict = Verdict.Of(Fit, Shots, Start with { Friction = Truth }, [new(ShotMetric.EntryAngle, 1 * Degree), new(ShotMetric.EntrySpeed, 0.5)]);
        Assert.Equal(Finding.AsDesigned, verdict.Finding);
        Assert.All(verdict.Metrics, m => Assert.InRange(0, m.Low, m.High));
        Assert.All(verdict.Metrics, m => Assert.True(m.FromFit > 0 && m.ShotToShot > 0 && m.Shots == 8));
        Assert.Equal("as designed", verdict.Sentence);
    }

    [Fact]
    public void A_rougher_ball_than_designed_differs()
    {
        FitShot[] design = [.. Shots.Select(s => s with { Ball = s.Ball with { Finish = Finish.Measured(0.4 * Micrometre) } })];
        var verdict = Verdict.Of(Fit, design, Start with { Friction = Truth }, [new(ShotMetric.EntryBoard, 0.5)]);
        Assert.True(verdict.Finding == Finding.Differs, verdict.Metrics[0].ToString());
        Assert.Equal("differs in entry board", verdict.Sentence);
        // A design that hooks more lies farther to the left: the measured ball enters on lower boards.
        Assert.True(verdict.Metrics[0].High < 0, verdict.Metrics[0].ToString());
    }

    [Fact]
    public void A_tolerance_narrower_than_the_interval_cannot_be_told() =>
        Assert.Equal(Finding.CannotTell, Verdict.Of(Fit, Shots, Start with { Friction = Truth }, [new(ShotMetric.EntryAngle, 1e-6)]).Finding);

    [Fact]
    public void One_shot_says_nothing_about_scatter()
    {
        var fit = TrackFit.Of([Shots[0]], Options(0.005, 0.004));
        Assert.Equal(Finding.CannotTell, Verdict.Of(fit, [Shots[0]], Start).Finding);
    }

    [Fact]
    public void Designs_that_end_in_the_gutter_are_told_and_judged()
    {
        // On a lane that is dry from the foul line on, a rough ball crosses over to the far gutter.
        FitShot Crossing(FitShot s) => s with { Ball = s.Ball with { Finish = Finish.Measured(2 * Micrometre) }, Lane = Lane.Regulation with { Oil = OilMap.Crowned(length: 10 * Foot, volume: 2 * Millilitre) } };
        MetricTolerance[] wide = [new(ShotMetric.EntryAngle, 20 * Degree)];
        var options = Start with { Friction = Truth };
        Assert.Empty(Verdict.Of(Fit, Shots, options, wide).Missed);
        Assert.Empty(Verdict.Of(Fit, Shots, options, wide).MissedSentence);

        var all = Verdict.Of(Fit, [.. Shots.Select(Crossing)], options, wide);
        Assert.Equal(8, all.Missed.Count);
        Assert.All(all.Missed, m => Assert.Equal((StopReason.Gutter, StopReason.HeadPin, true), (m.Designed, m.Measured, m.EndsOtherwise)));
        Assert.Equal(Finding.Differs, all.Finding);
        Assert.Equal("differs in where its shots end", all.Sentence);

        var some = Verdict.Of(Fit, [.. Shots.Select((s, i) => i is 1 or 4 ? Crossing(s) : s)], options, wide);
        Assert.Equal(6, some.Metrics[0].Shots);
        Assert.Equal(Finding.AsDesigned, some.Metrics[0].Finding);
        Assert.Equal(Finding.CannotTell, some.Finding);
        Assert.Equal("cannot tell from these shots: some end otherwise than designed, and the others alone are no fair sample", some.Sentence);
        Assert.Equal("shots 2 (Gutter), 5 (Gutter) came to the pins, and would not have as designed", some.MissedSentence);
        Assert.EndsWith(some.MissedSentence, some.ToString());
    }

    /// <summary>Two-sided 5 %, power 80 %, difference of one standard deviation: 17 of each group (J. Cohen, Statistical Power Analysis for the Behavioral Sciences, table 2.4.1, from memory); half of one: 64.</summary>
    [Theory]
    [InlineData(1, 17)]
    [InlineData(0.5, 64)]
    public void Shots_needed_agree_with_the_tables_of_power(double difference, int shots) =>
        Assert.InRange(TestDesign.ShotsOfEach(difference, 1, power: 0.8), shots - 1, shots);

    [Fact]
    public void Smaller_differences_and_wider_scatter_need_more_shots()
    {
        Assert.True(TestDesign.ShotsOfEach(0.1, 1) > TestDesign.ShotsOfEach(0.2, 1));
        Assert.Equal(2, TestDesign.ShotsOfEach(1, 0));
        var plans = TestDesign.Between(Drilled, Drilled with { Finish = Finish.Measured(1 * Micrometre) }, Oiled, Meant, Usual);
        var known = TestDesign.Between(Drilled, Drilled with { Finish = Finish.Measured(1 * Micrometre) }, Oiled, Meant, Usual with { LaunchAngle = 0.02 * Degree, Board = 0.05 });
        var (open, tracked) = (plans.Single(p => p.Metric == ShotMetric.EntryBoard), known.Single(p => p.Metric == ShotMetric.EntryBoard));
        Assert.Equal(open.Difference, tracked.Difference);
        Assert.True(tracked.ShotsOfEach < open.ShotsOfEach, $"{tracked} {open}");
    }
}
