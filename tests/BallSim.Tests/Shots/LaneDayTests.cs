using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Shots;

public class LaneDayTests
{
    private static readonly SimulatorOptions Coarse = new() { Tolerance = 1e-4 };

    private static DayBowler Bowler(string name, Hand hand, double spin, Scatter? scatter = null) => new()
    {
        Name = name,
        Ball = (Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch) with { Cover = Cover.Reactive })
            .LayOut(new Layout(4 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch, hand)),
        Release = new Release
        {
            Board = hand == Hand.Right ? 29 : 11, LaunchAngle = 4 * Degree, Speed = 18.5 * MilesPerHour, SpinRate = spin * Rpm, AxisRotation = 55 * Degree, AxisTilt = 13 * Degree,
        },
        Scatter = scatter ?? new(),
    };

    private static DayPlan Plan { get; } = new()
    {
        Lane = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) },
        Bowlers = [Bowler("first", Hand.Right, 380), Bowler("second", Hand.Right, 330), Bowler("third", Hand.Left, 350)],
        Games = 1,
    };

    // The long day once, for what several tests look at.
    private static readonly Lazy<LaneDay> Day = new(() => LaneDay.Play(Plan with { Games = 5, MostShots = 200 }, new SimulatorOptions { Tolerance = 1e-9 }));

    [Fact]
    public void Over_two_hundred_shots_the_lane_loses_what_the_covers_gain()
    {
        var day = Day.Value;
        Assert.Equal(200, day.Shots.Count);
        var lost = day.Before.Volume - day.After.Volume;
        Assert.Equal(lost, day.Shots.Sum(s => s.TakenUp - s.LaidDown), 1e-12 * day.Before.Volume);
        Assert.Equal(0, day.Shots.Sum(s => s.Withheld));
        Assert.True(Math.Abs(day.Imbalance) <= 1e-6 * lost, $"{day.Imbalance / lost:E2} of {lost / Millilitre:F3} mL");
        Assert.All(day.Shots, s => Assert.True(Math.Abs(s.TakenUp - s.LaidDown - s.CoverGain) <= 1e-6 * s.TakenUp, $"shot {s.Number}: {(s.TakenUp - s.LaidDown - s.CoverGain) / s.TakenUp:E2}"));
        Assert.Equal(day.After.Volume, day.Shots[^1].OilLeft);
        Assert.Equal(day.After.Volume, day.After.Oil.Volume, 1e-12 * day.Before.Volume);
    }

    [Fact]
    public void Entries_drift_across_and_bowlers_move_after_their_balls()
    {
        // Common practice, no source: as the oil goes, the same line enters farther across, left for a right-hander; targets move inward or stay.
        var day = Day.Value;
        Assert.All(day.Bowlers.Where(b => b.Bowler < 2), b => Assert.True(b.Drift is null or > 2, $"bowler {b.Bowler} drifts by {b.Drift}"));
        Assert.True(day.Bowlers[2].Drift is null or < -1, $"the left-hander drifts by {day.Bowlers[2].Drift}");
        Assert.All(day.Moves.Take(3), m => Assert.True(m is { After: 0, IsFound: true } && double.IsNaN(m.MeanOffset)));
        Assert.Contains(day.Moves, m => m.After > 0 && m.IsFound);
        foreach (var move in day.Moves.Where(m => m.After > 0 && !double.IsNaN(m.MeanOffset)))
        {
            // What the rule says: the mean of this bowler's last four entries.
            var entries = day.Shots.Where(s => s.Number <= move.After && s.Bowler == move.Bowler && s.Entry is not null).TakeLast(4).ToArray();
            Assert.Equal(entries.Average(s => s.Entry!.Value.Offset), move.MeanOffset, 1e-15);
            Assert.True(Math.Abs(move.MeanOffset) > new MoveRule().Window);
            Assert.Equal(move.To, day.Shots.First(s => s.Number > move.After && s.Bowler == move.Bowler).Line.LaunchAngle);
        }
        Assert.Equal(day.Moves.Count(m => m.After > 0), day.Bowlers.Sum(b => b.Moves));
        Assert.Contains("200 shots took", day.ToString());
    }

    [Fact]
    public void The_same_seed_is_the_same_day_whatever_else_runs_and_another_is_not()
    {
        var plan = Plan with { MostShots = 24 };
        var days = new LaneDay[3];
        Parallel.For(0, 3, i => days[i] = LaneDay.Play(i < 2 ? plan : plan with { Seed = 2 }, Coarse));
        Assert.Equal(days[0].Shots, days[1].Shots);
        Assert.Equal(days[0].After, days[1].After);
        Assert.NotEqual(days[0].After, days[2].After);
        // A day without moves has the same hands.
        var still = LaneDay.Play(plan with { Moves = null, AimsFirst = false }, Coarse);
        Assert.All(still.Shots.Zip(days[0].Shots), p => Assert.Equal(p.First.Thrown!.Speed, p.Second.Thrown!.Speed));
        Assert.Empty(still.Moves);
    }

    [Fact]
    public void Bowlers_take_the_frames_in_turn()
    {
        var day = LaneDay.Play(Plan with { MostShots = 11, AimsFirst = false, Moves = null }, Coarse);
        Assert.Equal([0, 1, 2, 0, 0, 1, 1, 2, 2, 0, 1], day.Shots.Select(s => s.Bowler));
        Assert.Equal([1, 1, 1, 2, 2, 2, 2, 2, 2, 3, 3], day.Shots.Select(s => s.Frame));
        Assert.Equal([4, 6, 8], day.Shots.Where(s => s.IsSecondBall).Select(s => s.Number - 1));
        Assert.Equal(45, Plan.Shots);
        Assert.Equal(30, (Plan with { SecondBallEvery = 0 }).Shots);
        Assert.Equal(39, (Plan with { SecondBallEvery = 3 }).Shots);
    }

    [Fact]
    public void What_fails_keeps_its_row()
    {
        // Feet that scatter by eight boards from board 3 leave the lane now and then, and some balls find the gutter.
        var wild = Bowler("wild", Hand.Right, 300, new Scatter { Board = 8 });
        var day = LaneDay.Play(Plan with { Bowlers = [wild with { Release = wild.Release with { Board = 3, LaunchAngle = 0 } }], AimsFirst = false, Moves = new() { Entries = 2 } }, Coarse);
        Assert.Equal(15, day.Shots.Count);
        var refused = day.Shots.Where(s => s.Thrown is null).ToArray();
        Assert.NotEmpty(refused);
        Assert.All(refused, s => Assert.True(s is { StopReason: null, Entry: null, TakenUp: 0 } && s.Sentence.Contains("Board = ")));
        Assert.Contains(day.Shots, s => s.StopReason == StopReason.Gutter && s is { Entry: null, TakenUp: > 0 });
        Assert.All(day.Shots.Where(s => s.Thrown is not null), s => Assert.NotEmpty(s.Sentence));
    }

    [Fact]
    public void A_day_tells_how_far_it_is_and_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        var told = new List<int>();
        var progress = new Told(n =>
        {
            told.Add(n);
            if (n == 3)
            {
                stop.Cancel();
            }
        });
        Assert.Throws<OperationCanceledException>(() => LaneDay.Play(Plan with { AimsFirst = false }, Coarse, progress, stop.Token));
        Assert.Equal([1, 2, 3], told);
    }

    [Fact]
    public void A_plan_that_cannot_be_played_is_refused_before_the_first_throw()
    {
        Assert.Contains("no pins", Assert.Throws<ArgumentException>(() => LaneDay.Play(Plan with { Lane = Lane.Unbounded(OilMap.Dry) })).Message);
        Assert.Contains("no oil to wear", Assert.Throws<ArgumentException>(() => LaneDay.Play(Plan with { Lane = Lane.Regulation with { GivenFriction = FrictionMap.Constant(0.1) } })).Message);
        Assert.Contains("Bowlers.Count = 0".Split('.')[1], Assert.Throws<ArgumentOutOfRangeException>(() => Plan with { Bowlers = [] }).Message);
        var off = Plan.Bowlers[0] with { Release = Plan.Bowlers[0].Release with { Board = 50 } };
        Assert.Contains("Board = 50", Assert.Throws<ArgumentOutOfRangeException>(() => LaneDay.Play(Plan with { Bowlers = [off] })).Message);
    }

    private sealed class Told(Action<int> told) : IProgress<int>
    {
        public void Report(int value) => told(value);
    }
}
