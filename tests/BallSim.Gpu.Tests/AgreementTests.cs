using BallSim.Benchmarks;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Shots;

namespace BallSim.Gpu.Tests;

/// <summary>
/// The kernels, run by ILGPU on the processor, give the answers of the processor's engine: balls with and without an offset centre of mass, both hands, film and given friction, loft, ends of all kinds, in one ensemble.
/// ILGPU runs the .NET methods here, not what a card runs; that is shown on a card.
/// </summary>
public sealed class AgreementTests : IDisposable
{
    private const int Many = 100;

    private static readonly EnsembleOptions Coarse = new() { Shot = new() { Tolerance = 1e-4, MaxSteps = 20_000, MaxTransitions = 60 } };

    private static readonly Throw[] Kinds = Scenarios.OfAllKinds(Many);

    private readonly GpuEngine engine = GpuEngine.Emulated();

    public void Dispose() => engine.Dispose();

    [Fact]
    public void The_shots_are_of_all_kinds()
    {
        var outcomes = Ensemble.Throw(Kinds, Coarse);
        Assert.Contains(outcomes, o => o.ReachedPins);
        Assert.Contains(outcomes, o => o.StopReason == StopReason.Gutter);
        Assert.Contains(outcomes, o => o.SlippedAgain > 0);
        Assert.Contains(outcomes, o => !double.IsNaN(o.RollDistance));
        Assert.Contains(Kinds, k => k.Ball.Marks.Hand == Hand.Left);
        Assert.Contains(Kinds, k => k.Release.Loft > 0);
        Assert.True(Kinds.DistinctBy(k => k.Lane).Count() > 4 && Kinds.DistinctBy(k => k.Ball).Count() > 3);
    }

    [Fact]
    public void In_doubles_they_are_those_of_the_processor() => Assert.Equal(Ensemble.Throw(Kinds, Coarse), Ensemble.Throw(Kinds, Coarse with { Engine = engine }));

    [Fact]
    public void Columns_of_outcomes_are_those_of_the_processor()
    {
        double[] x = new double[Many], roll = new double[Many];
        var reasons = new StopReason[Many];
        Ensemble.ThrowInto(Kinds, new() { X = x, RollDistance = roll, StopReason = reasons }, Coarse with { Engine = engine });
        Assert.Equal(Ensemble.Throw(Kinds, Coarse).Select(o => (o.X, o.RollDistance, o.StopReason)), x.Zip(roll, reasons));
    }

    [Fact]
    public void In_doubles_where_the_dips_of_the_fresh_cover_are_foreseen_too()
    {
        var fine = Coarse with { Shot = Coarse.Shot with { Tolerance = 1e-6 } };
        var throws = Scenarios.Alike(20, Scenarios.Oiled);
        Assert.Equal(Ensemble.Throw(throws, fine), Ensemble.Throw(throws, fine with { Engine = engine }));
    }

    // A bin and the next do not lead to any place of it: it is the processor's.
    [Fact]
    public void A_map_with_intervals_of_very_unequal_width_too()
    {
        var lane = Lane.Regulation with { GivenFriction = FrictionMap.FromTable([0, 10, 14], [-0.5, 0.1, 0.1 + 2e-5, 0.1 + 4e-5, 0.5], new[,] { { 0.04, 0.04, 0.05, 0.06, 0.06 }, { 0.04, 0.05, 0.06, 0.07, 0.08 }, { 0.18, 0.18, 0.19, 0.2, 0.2 } }) };
        Assert.False(LaneOnDevice.Takes(lane));
        Assert.True(LaneOnDevice.Takes(ReleaseSet.Lane) && LaneOnDevice.Takes(Scenarios.Oiled));
        Throw[] throws = [.. Scenarios.Alike(4, lane), .. Scenarios.Alike(4, ReleaseSet.Lane)];
        Assert.Equal(Ensemble.Throw(throws, Coarse), Ensemble.Throw(throws, Coarse with { Engine = engine }));
    }

    [Fact]
    public void In_doubles_on_a_lane_with_slopes_too()
    {
        // One tilted, one measured with a hollow in it.
        var hollow = Topography.FromHeights([0, 6, 12, 19], [1, 20, 39], new[,] { { 0, 0, 0 }, { 0, -5e-4, 0 }, { 0, -1e-3, 0 }, { 0, 0, 0 } });
        Throw[] Throws(Topography a, Topography b) => [.. Scenarios.Alike(10, Scenarios.Oiled with { Topography = a }), .. Scenarios.Alike(10, ReleaseSet.Lane with { Topography = b })];
        var throws = Throws(Topography.Tilted(1e-3, -5e-4), hollow);
        var level = Ensemble.Throw(Throws(Topography.Flat, Topography.Flat), Coarse);
        var found = Ensemble.Throw(throws, Coarse with { Engine = engine });
        Assert.Equal(Ensemble.Throw(throws, Coarse), found);
        Assert.NotEqual(level, found);
    }

    [Fact]
    public void In_floats_they_are_near_and_end_alike()
    {
        var pairs = Ensemble.Throw(Kinds, Coarse).Zip(Ensemble.Throw(Kinds, Coarse with { Engine = engine, Precision = Precision.Single })).ToArray();
        Assert.All(pairs, p => Assert.Equal(p.First.StopReason, p.Second.StopReason));
        // The few others meet an event, such as another slip, on one side of it only.
        Assert.True(pairs.Count(p => Math.Abs(p.First.X - p.Second.X) > 1e-4) <= Many / 20);
        Assert.Contains(pairs, p => p.First.X != p.Second.X);
        // A ball that may hop is no matter for floats.
        var inDoubt = pairs.Where((_, i) => Doubt.Of(Kinds[i].Ball, Kinds[i].Lane, Kinds[i].Release.LaunchOn(Kinds[i].Lane, Kinds[i].Ball))).ToArray();
        Assert.NotEmpty(inDoubt);
        Assert.All(inDoubt, p => Assert.Equal(p.First, p.Second));
    }

    [Fact]
    public void Shots_that_slip_again_seldom_need_the_kernel_of_rare_events()
    {
        // That kernel takes milliseconds however few they are; this is what keeps a card fast.
        var all = Scenarios.Alike(400, ReleaseSet.Lane);
        var throws = all.Zip(Ensemble.Throw(all, Coarse)).Where(p => p.Second.SlippedAgain > 0).Select(p => p.First).ToArray();
        Assert.True(throws.Length > 10);
        var times = engine.Timed(throws, Coarse with { Precision = Precision.Single }, rounds: 1);
        Assert.True(times.Near >= times.Slipping && times.Slipping >= throws.Length, times.ToString());
        Assert.True(times.Rare <= 1, times.ToString());
    }

    [Fact]
    public void In_floats_no_ball_sticks_and_slips_on_for_ever()
    {
        // The slip at its start is smaller than what floats lose of it; handed over too early it was none at once, fifteen times in a thousand of these.
        var fine = Coarse with { Shot = Coarse.Shot with { Tolerance = 1e-5 } };
        var throws = Scenarios.OfAllKinds(300);
        var pairs = Ensemble.Throw(throws, fine).Zip(Ensemble.Throw(throws, fine with { Engine = engine, Precision = Precision.Single })).ToArray();
        Assert.DoesNotContain(pairs, p => p.Second.StopReason == StopReason.TransitionLimit && p.First.StopReason != StopReason.TransitionLimit);
    }

    [Fact]
    public void Chunks_change_nothing()
    {
        using var small = GpuEngine.Emulated(mostShots: 18);
        var told = new Told();
        var some = Kinds[..50];
        Assert.Equal(Ensemble.Throw(some, Coarse), Ensemble.Throw(some, Coarse with { Engine = small }, told));
        Assert.Equal(3, told.Values.Count);
        Assert.Equal(some.Length, told.Values.Max());
        Assert.Empty(Ensemble.Throw([], Coarse with { Engine = small }));
    }

    [Fact]
    public void A_shot_that_slips_but_once_slides_and_rolls_in_one_round()
    {
        var throws = Scenarios.Alike(24, ReleaseSet.Lane);
        var outcomes = Ensemble.Throw(throws, Coarse);
        Throw[] plain = [.. throws.Where((_, i) => outcomes[i].SlippedAgain == 0 && outcomes[i].ReachedPins && !double.IsNaN(outcomes[i].RollDistance))];
        Assert.True(plain.Length > 10);
        var together = engine.Timed(plain, Coarse, rounds: 1);
        Assert.Equal(0, together.Slipping);
        // The end of slip and the end of the run.
        Assert.Equal((2 * plain.Length) + together.Near, together.EventCount);
        var alone = plain.Select(shot => engine.Timed([shot], Coarse, rounds: 1)).ToArray();
        // What comes near the limit of grip and rolls on needs a round more each time.
        Assert.All(alone, times => Assert.Equal(1 + times.Near, times.Rounds));
        Assert.True(alone.Count(times => times.Near == 0) > 10);
        Assert.Equal(alone.Max(times => times.Rounds), together.Rounds);
    }

    [Theory]
    // Many rows make larger chunks, which few slow shots hold up less; few rows make one.
    [InlineData(100, 1 << 20, 100)]
    [InlineData(1_000_000, 1 << 20, 1 << 18)]
    [InlineData(8_000_000, 1 << 20, 500_000)]
    [InlineData(100_000_000, 1 << 20, 1 << 20)]
    [InlineData(100_000_000, 1 << 16, 1 << 16)]
    [InlineData(0, 256, 1)]
    public void Chunks_are_a_part_of_the_ensemble(int rows, int most, int shots) => Assert.Equal(shots, GpuEngine.ShotsOfChunk(rows, most));

    [Fact]
    public void Chunks_leave_most_of_the_memory_to_others()
    {
        const long Gigabyte = 1 << 30;
        Assert.Equal(1 << 20, GpuEngine.MostShotsIn(128 * Gigabyte, 128 * Gigabyte, 1));
        // A card of eight gigabytes: two of them for six chunks; the processor's sixteen for four cards.
        Assert.InRange(GpuEngine.MostShotsIn(8 * Gigabyte, 128 * Gigabyte, 1), 1 << 18, 1 << 19);
        Assert.InRange(GpuEngine.MostShotsIn(128 * Gigabyte, 16 * Gigabyte, 4), 1 << 17, 1 << 18);
        Assert.Equal(1 << 14, GpuEngine.MostShotsIn(Gigabyte / 8, Gigabyte, 1));
    }

    [Fact]
    public void Shots_left_over_are_thrown_on_the_processor()
    {
        var left = new Told();
        using var hasty = GpuEngine.Emulated(left: (4, left.Report));
        var there = Ensemble.Throw(Kinds, Coarse);
        Assert.Equal(there, Ensemble.Throw(Kinds, Coarse with { Engine = hasty }));
        // Four that go on, and four that wait for a rare event.
        Assert.All(left.Values, n => Assert.InRange(n, 0, 8));
        var before = left.Values.Sum();
        Assert.True(before > 0);
        // In floats those left over are the processor's doubles.
        var here = Ensemble.Throw(Kinds, Coarse with { Engine = hasty, Precision = Precision.Single });
        Assert.True(left.Values.Sum() > before);
        Assert.True(there.Zip(here).Count(p => p.First == p.Second) >= left.Values.Sum() - before);
        Assert.NotEqual(there, here);
    }

    [Fact]
    public void Cancelled_it_stops_between_chunks()
    {
        using var small = GpuEngine.Emulated(mostShots: 10);
        using var source = new CancellationTokenSource();
        var told = new Told(_ => source.Cancel());
        Assert.ThrowsAny<OperationCanceledException>(() => Ensemble.Throw(Scenarios.Alike(10 * (GpuEngine.ChunksAtATime + 6), ReleaseSet.Lane), Coarse with { Engine = small }, told, source.Token));
        // The chunk that told, and at most those that were on their way beside it.
        Assert.InRange(told.Values.Max(), 10, 10 * GpuEngine.ChunksAtATime);
        Assert.ThrowsAny<OperationCanceledException>(() => Ensemble.Throw(Kinds, Coarse with { Engine = small }, null, new CancellationToken(canceled: true)));
    }

    [Fact]
    public void A_wrong_row_is_told_as_on_the_processor()
    {
        var wrong = Kinds.ToArray();
        wrong[60] = wrong[60] with { Release = wrong[60].Release with { Board = 39.9 } };
        var there = Assert.ThrowsAny<ArgumentException>(() => Ensemble.Throw(wrong, Coarse));
        var here = Assert.ThrowsAny<ArgumentException>(() => Ensemble.Throw(wrong, Coarse with { Engine = engine }));
        Assert.Equal((there.GetType(), there.Message), (here.GetType(), here.Message));
        Assert.Contains("60", here.Message);
    }
}
