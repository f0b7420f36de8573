using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Tests.Laws;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;
using static BallSim.Units;
using Outcome = BallSim.Ensembles.Outcome;

namespace BallSim.Tests.Ensembles;

/// <summary>Many shots are the shots one by one: bit for bit in doubles, whatever runs beside them and on however many threads.</summary>
public class EnsembleTests
{
    private static readonly SimulatorOptions Coarse = new() { Tolerance = 1e-4, MaxTransitions = 60, MaxSteps = 20_000 };

    // Rows of all kinds: balls with and without offset, film and given friction, releases that gutter, stop and slip again.
    private static Gen<Throw[]> Rows(int count) =>
        from balls in Gen.ArrayOf(Worlds.Drilled, 3)
        from oils in Gen.ArrayOf(Worlds.Oil, 2)
        from given in Gen.Choose(4, 25)
        from releases in Gen.ArrayOf(Worlds.AnyRelease, count)
        from picks in Gen.ArrayOf(Gen.Choose(0, 8), count)
        let lanes = new[] { Lane.Regulation with { Oil = oils[0] }, Lane.Regulation with { Oil = oils[1] }, Lane.Regulation with { GivenFriction = FrictionMap.Constant(given / 100.0) } }
        select releases.Select((r, i) => new Throw(balls[picks[i] % 3], lanes[picks[i] / 3], r)).ToArray();

    [Property(MaxTest = 12)]
    public Property Side_by_side_is_bit_equal_to_one_by_one() => Prop.ForAll(Rows(40).ToArbitrary(), rows =>
    {
        var one = Ensemble.Throw(rows, new() { Shot = Coarse, SideBySide = false, Threads = 1 });
        var many = Ensemble.Throw(rows, new() { Shot = Coarse, Threads = 2 });
        Assert.Equal(one, many);
    });

    // Fine enough for the dips of the fresh cover to be foreseen: some lanes are near one, others far from it.
    [Property(MaxTest = 6)]
    public Property Side_by_side_is_bit_equal_to_one_by_one_at_the_tolerance_of_a_single_shot() => Prop.ForAll(Rows(20).ToArbitrary(), rows =>
    {
        var fine = Coarse with { Tolerance = 1e-6 };
        Assert.Equal(Ensemble.Throw(rows, new() { Shot = fine, SideBySide = false, Threads = 1 }), Ensemble.Throw(rows, new() { Shot = fine, Threads = 2 }));
    });

    [Property(MaxTest = 12)]
    public Property One_by_one_is_the_shot() => Prop.ForAll(Rows(6).ToArbitrary(), rows =>
    {
        var many = Ensemble.Throw(rows, new() { Shot = Coarse });
        foreach (var ((ball, lane, release), found) in rows.Zip(many))
        {
            var shot = Simulator.Throw(ball, lane, release, Coarse);
            Assert.Equal(shot.StopReason, found.StopReason);
            Assert.Equal(shot.Steps, found.Steps);
            Assert.Equal(shot.SlippedAgain, found.SlippedAgain);
            // But for the rounding of the kept path, whose end is a polynomial's.
            Assert.Equal(shot.End.X, found.X, 1e-12);
            Assert.Equal(shot.End.Y, found.Distance, 1e-12);
            Assert.Equal(shot.End.Time, found.Time, 1e-12);
            Assert.Equal(shot.End.Revolutions, found.Revolutions, 1e-11);
            Assert.Equal(shot.End.SpinRate, found.SpinRate, 1e-12);
            Assert.Equal(shot.StartOfRoll?.Distance ?? double.NaN, found.RollDistance, 1e-12);
            if (shot.ReachedPins)
            {
                Assert.Equal(shot.Entry.BoardAtPinLine, found.BoardAtPinLine, 1e-9);
                Assert.Equal(shot.Entry.Angle, found.Angle, 1e-11);
                Assert.Equal(shot.Entry.Offset, found.Offset, 1e-11);
            }
            // The turning point is sought on the polynomial here and on the velocity there.
            Assert.Equal(shot.Breakpoint.Board, found.BreakpointBoard, 2e-3);
            // A quadrature on the kept path there, a component of the state without error control here: at this tolerance they agree to a few per cent.
            Assert.Equal(shot.OilTakenUp, found.OilTakenUp, 0.04 * Math.Max(Math.Abs(shot.OilTakenUp), 1e-9));
        }
    });

    [Theory]
    [InlineData(1e-4)]
    [InlineData(1e-6)]
    public void Lanes_of_any_width_agree_to_the_last_bit(double tolerance)
    {
        var shot = Coarse with { Tolerance = tolerance };
        const int Few = 20;
        // The wide ones are emulated where the processor has none: slow, and the same numbers.
        var rows = Gen.Sample(Rows(24), 5, new Rnd(20261125, 9), 2).SelectMany(r => r).ToArray();
        var one = Ensemble.Throw(rows, new() { Shot = shot, SideBySide = false });
        foreach (var crew in new Crew[] { new Crew<BallSim.Spatial.Doubles4, BallSim.Spatial.Doubles4>(shot), new Crew<BallSim.Spatial.Doubles8, BallSim.Spatial.Doubles8>(shot) })
        {
            var found = new Outcome[rows.Length];
            // Chunk after chunk, of which some shots are left over for the next.
            var chunks = Enumerable.Range(0, (rows.Length + Few - 1) / Few).Select(k => new BallSim.Ensembles.Rows.Work(Few) { From = k * Few, Count = Math.Min(Few, rows.Length - k * Few) }).ToArray();
            foreach (var chunk in chunks)
            {
                new ThrowRows(rows, found).Fill(chunk.From, chunk.Balls.AsSpan(0, chunk.Count), chunk.Lanes.AsSpan(0, chunk.Count), chunk.Launches.AsSpan(0, chunk.Count));
                crew.Take(chunk);
            }
            Assert.Contains(chunks, c => c.Left > 0);
            crew.Drain();
            Assert.Equal(one, chunks.SelectMany(c => c.Outcomes.Take(c.Count)));
            crew.Dispose();
        }
    }

    [Fact]
    public void Floats_stay_near()
    {
        // An offset large enough for the ball to slip again on its way, not for it to hop; where it slips, a rounding moves the moment a little.
        var ball = OffsetBall with { CentreOfMass = 0.4 * OffsetBall.CentreOfMass };
        var lane = Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(0.03, 0.08, 8, 14) };
        var rows = Enumerable.Range(0, 400).Select(i => new Throw(ball, lane, Common with { Speed = 7.5 + 0.0025 * i, AxisRotation = (20 + 0.1 * i) * Degree })).ToArray();
        var exact = Ensemble.Throw(rows, new() { Shot = Coarse });
        var rough = Ensemble.Throw(rows, new() { Shot = Coarse, Precision = Precision.Single });
        Assert.Contains(exact, o => o.SlippedAgain > 0);
        Assert.All(exact.Zip(rough), pair => Assert.NotEqual(pair.First, pair.Second));
        foreach (var (a, b) in exact.Zip(rough))
        {
            Assert.Equal(a.StopReason, b.StopReason);
            Assert.Equal(a.X, b.X, 1e-4);
            Assert.Equal(a.Time, b.Time, 1e-4);
        }
    }

    /// <summary>A centre of mass so far off that the ball may hop, and releases that slip again and again: in floats one in some hundred of them took the other turn.</summary>
    [Fact]
    public void Where_floats_do_not_tell_the_shot_is_thrown_in_doubles()
    {
        var random = new Random(3);
        double Between(double a, double b) => a + (b - a) * random.NextDouble();
        Ball[] balls = [OffsetBall, OffsetBall with { CentreOfMass = 0.1 * OffsetBall.CentreOfMass }];
        var lanes = new[] { 0.04, 0.07 }.Select(mu => Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(mu, 0.2, 8, 11) }).Append(Lane.Regulation).ToArray();
        var rows = Enumerable.Range(0, 4000).Select(i => new Throw(balls[i % 5 == 0 ? 1 : 0], lanes[i % 3], new()
        {
            Speed = Between(4, 11), SpinRate = Between(1, 60), AxisInBall = Common.AxisInBall, AxisRotation = Between(-10, 100) * Degree, AxisTilt = Between(-5, 45) * Degree, Board = Between(5, 35), LaunchAngle = Between(-2, 2) * Degree,
        })).ToArray();
        var exact = Ensemble.Throw(rows, new() { Shot = Coarse });
        var rough = Ensemble.Throw(rows, new() { Shot = Coarse, Precision = Precision.Single });
        Assert.Equal(exact.Select(o => o.StopReason), rough.Select(o => o.StopReason));
        Assert.Contains(exact, o => o.StopReason == StopReason.LeftLane);
        Assert.Contains(exact, o => o.SlippedAgain > 8);
        // Who may hop is thrown in doubles alone, the others in floats.
        Assert.All(exact.Zip(rough).Where((_, i) => i % 5 != 0 && rows[i].Release.Speed > 7), pair => Assert.Equal(pair.First, pair.Second));
        Assert.Contains(exact.Zip(rough).Where((_, i) => i % 5 == 0), pair => pair.First != pair.Second);
    }

    private static readonly Ball OffsetBall = Ball.FromSpecification(
        weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, centreOfMass: new Vector3D(2.4, 1.0, -1.4) * Millimetre);

    private static readonly Release Common = new()
    {
        Board = 22, Speed = 8, SpinRate = 30, AxisInBall = new(0.6, 0.64, 0.48), AxisRotation = 45 * Degree, AxisTilt = 10 * Degree, LaunchAngle = 2 * Degree,
    };

    [Theory]
    [InlineData(0, true)]
    [InlineData(1e-6, false)]
    public void The_axis_of_a_ball_without_spin_has_no_way_to_go(double spinRate, bool none)
    {
        var outcome = Ensemble.Throw([new(OffsetBall, Lane.Regulation, Common with { SpinRate = spinRate })], new() { Shot = Coarse })[0];
        Assert.Equal(none, double.IsNaN(outcome.AxisMigration));
    }

    [Fact]
    public void Columns_are_the_releases_they_hold()
    {
        var (ball, common) = (OffsetBall, Common);
        double[] speeds = [7.5, 8, 8.5], boards = [20, 22, 24];
        var found = Ensemble.Throw(ball, Lane.Regulation, common, new() { Speed = speeds, Board = boards }, new() { Shot = Coarse });
        var rows = speeds.Zip(boards, (s, b) => new Throw(ball, Lane.Regulation, common with { Speed = s, Board = b })).ToArray();
        Assert.Equal(Ensemble.Throw(rows, new() { Shot = Coarse }), found);
        Assert.Contains("same length", Assert.Throws<ArgumentException>(() => Ensemble.Throw(ball, Lane.Regulation, common, new() { Speed = speeds, Board = [20] })).Message, StringComparison.Ordinal);
        Assert.Contains("row 1", Assert.Throws<ArgumentException>(() => Ensemble.Throw(ball, Lane.Regulation, common, new() { Speed = [8, 800, 8] })).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void It_stops_when_asked()
    {
        var ball = OffsetBall;
        using var source = new CancellationTokenSource();
        source.Cancel();
        var rows = new Throw[1000];
        Array.Fill(rows, new Throw(ball, Lane.Regulation, new Release { Board = 20, Speed = 8 }));
        Assert.ThrowsAny<OperationCanceledException>(() => Ensemble.Throw(rows, cancellation: source.Token));
    }

    [Fact]
    public void It_stops_on_its_way_when_asked()
    {
        var rows = new Throw[20 * ProcessorEngine.Chunk];
        Array.Fill(rows, new Throw(OffsetBall, Lane.Regulation, Common));
        using var source = new CancellationTokenSource();
        var most = 0;
        Assert.ThrowsAny<OperationCanceledException>(() => Ensemble.Throw(rows, new() { Threads = 1 }, new Told(n =>
        {
            most = n;
            source.Cancel();
        }), source.Token));
        Assert.InRange(most, 1, 2 * ProcessorEngine.Chunk);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Every_row_is_told_of_once(int threads)
    {
        // Two maps by turns, so that what is left over of one must be brought to its end for the other.
        Lane[] lanes = [Lane.Regulation, Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(0.04, 0.2, 8, 11) }, Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(0.05, 0.2, 9, 12) }];
        var rows = Enumerable.Range(0, 3 * ProcessorEngine.Chunk + 7).Select(i => new Throw(OffsetBall, lanes[i % 3], Common with { Speed = 7.5 + 0.002 * i })).ToArray();
        var told = new List<int>();
        var found = Ensemble.Throw(rows, new() { Shot = Coarse, Threads = threads }, new Told(n =>
        {
            lock (told)
            {
                told.Add(n);
            }
        }));
        Assert.Equal(rows.Length, told.Max());
        Assert.Equal(told.Count, told.Distinct().Count());
        Assert.Equal(Ensemble.Throw(rows, new() { Shot = Coarse, SideBySide = false }), found);
    }

    private sealed class Told(Action<int> tell) : IProgress<int>
    {
        public void Report(int value) => tell(value);
    }
}
