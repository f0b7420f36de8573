using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;
using static BallSim.Units;

namespace BallSim.Tests.Motion;

/// <summary>Where a driver goes another way than down the lane on level ground: over hills while it rolls, back, across, through the air to the last step that it may take; each against mechanics or against the same shot alone.</summary>
public class CornersOfARunTests
{
    private static readonly Ball Round = new() { Mass = 6.8, Radius = 0.1085, Inertia = new(0.028, 0.028, 0.028) };

    private static readonly Ball Offset = Ball.FromSpecification(
        weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, centreOfMass: new Vector3D(0.4, 0.3, -0.5) * Millimetre);

    private static readonly double Ratio = Round.Inertia.Xx / (Round.Mass * Round.Radius * Round.Radius);

    private static readonly SimulatorOptions Bare = new() { AirDrag = false, CoverOil = false };

    private static readonly Topography Hills = Topography.FromHeights([0, 6, 12, 19], [1, 13, 27, 39], new[,] { { 0, 0.01, 0, 0 }, { 0, 0, 0.01, 0 }, { 0.01, 0, 0, 0.01 }, { 0, 0.01, 0, 0 } });

    // A step is planned by the turn at its start, where there is none: what it gains in a long step of a coarse tolerance must not carry it out of what rotation vectors hold.
    [Theory]
    [InlineData(0.1, 12)]
    [InlineData(0.25, 10)]
    [InlineData(0.5, 10)]
    [InlineData(1, 12)]
    public void A_ball_without_spin_is_not_turned_too_far_in_one_step(double mu, double speed)
    {
        var ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch);
        var start = new InitialState { VelocityX = 0.3, VelocityY = speed, Orientation = Rotation.About(new(1, 2, 3), 0.7) };
        Shot Thrown(double tolerance) => Simulator.Throw(ball, Lane.Unbounded(FrictionMap.Constant(mu)), start, Bare with { Tolerance = tolerance, MaxTime = 0.7 });
        var exact = Thrown(1e-9).End;
        foreach (var tolerance in new[] { 9.9e-3, 3e-3, 1e-3, 1e-4 })
        {
            var shot = Thrown(tolerance);
            var turns = Enumerable.Range(0, shot.SegmentCount).Select(i => 2 * Math.PI * (shot.At(i, 1).Revolutions - shot.At(i, 0).Revolutions));
            Assert.InRange(turns.Max(), 0, 4.8);
            Assert.InRange((shot.End.AngularVelocity - exact.AngularVelocity).Length, 0, 0.015);
        }
    }

    [Fact]
    public void A_ball_that_rolls_over_hills_trades_height_for_speed()
    {
        var lane = Lane.Regulation with { GivenFriction = FrictionMap.Constant(1), Topography = Hills };
        foreach (var ball in (Ball[])[Round, Offset])
        {
            var shot = Simulator.Throw(ball, lane, new InitialState { X = 0.05, VelocityY = 5, AngularVelocity = new(-5 / ball.Radius, 0, 2) }, Bare with { Tolerance = 1e-8 });
            Assert.Empty(shot.PhaseChanges.Skip(1));
            var (least, most) = (double.MaxValue, 0.0);
            for (var i = 0; i <= 50; i++)
            {
                var p = shot.At(shot.Duration * i / 50);
                Assert.Equal(ShotPhase.Rolling, p.Phase);
                Assert.Equal(shot.Start.Energy, p.Energy, 1e-8 * Math.Abs(shot.Start.Energy));
                (least, most) = (Math.Min(least, p.Speed), Math.Max(most, p.Speed));
            }
            // A centimetre of height: g h/(1 + k) of v²/2.
            Assert.True(most - least > 5e-3);
        }
    }

    [Fact]
    public void Steps_through_the_air_count_and_are_bounded_as_any()
    {
        // 120 rad/s for two seconds turn the ball by more than ninety steps may.
        var start = new InitialState { VelocityY = 8, AngularVelocity = new(-100, 50, 40), Loft = 17 };
        var free = Simulator.Throw(Round, Lane.Regulation, start);
        Assert.Equal(17.0 / 8, free.PhaseChanges[0].Time, 1e-12);
        foreach (var most in (int[])[10, 17, 40])
        {
            var shot = Simulator.Throw(Round, Lane.Regulation, start, new() { MaxSteps = most });
            Assert.Equal((StopReason.StepLimit, most, ShotPhase.Loft), (shot.StopReason, shot.Steps, shot.End.Phase));
            Assert.Equal(8 * shot.Duration, shot.End.Y, 1e-12);
            Assert.Empty(shot.PhaseChanges);
        }
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.3)]
    public void A_ball_with_back_spin_comes_back_over_the_foul_line(double mu)
    {
        // Sliding forward it is slowed by μ g until it rolls: backwards if R ω k > v. The slip v + R ω falls by μ g (1 + 1/k).
        const double v = 1.5, spin = 60;
        var slip = v + Round.Radius * spin;
        var a = mu * StandardGravity;
        var rolls = slip / (a * (1 + 1 / Ratio));
        var (back, place) = (v - a * rolls, v * rolls - a * rolls * rolls / 2);
        Assert.True(back < 0);
        var shot = Simulator.Throw(Round, Lane.Regulation with { GivenFriction = FrictionMap.Constant(mu) }, new InitialState { X = 0.1, VelocityY = v, AngularVelocity = new(spin, 0, 0) }, Bare with { Tolerance = 2e-7 });
        Assert.Equal(StopReason.FoulLine, shot.StopReason);
        // Nanometres beyond the line, that a ball which starts on it does not end there.
        Assert.Equal(-1e-9, shot.End.Y, 1e-12);
        var still = place > 0 ? rolls + place / -back : (v + Math.Sqrt(v * v)) / a;
        Assert.Equal(still, shot.Duration, 1e-7);
        Assert.Equal(0.1, shot.End.X, 1e-12);
        // Constant accelerations ask for few steps, through the rest at the turn as well.
        Assert.InRange(shot.Steps, 1, 90);
        Assert.Equal(place > 0 ? ShotPhase.Rolling : ShotPhase.Sliding, shot.End.Phase);
        if (place > 0)
        {
            var change = Assert.Single(shot.PhaseChanges);
            Assert.Equal(rolls, change.Time, 1e-8);
            Assert.Equal(back, shot.End.VelocityY, 1e-8);
            // The work of friction is what the kinetic energy lost.
            Assert.Equal(-slip * slip / 2 * Round.Mass * Ratio / (1 + Ratio), shot.End.FrictionWork, 1e-6);
        }
    }

    [Theory]
    [InlineData(0.001)]
    [InlineData(0.123)]
    [InlineData(0.9)]
    public void Time_is_up_to_the_instant(double time)
    {
        // The path between the ends of steps is of lower order than the ends.
        const double Fine = 2e-7;
        foreach (var mu in (double[])[0.05, 0.5])
        {
            var lane = Lane.Regulation with { GivenFriction = FrictionMap.Constant(mu) };
            var start = new InitialState { VelocityY = 6, AngularVelocity = new(-20, 10, 5) };
            var (shot, whole) = (Simulator.Throw(Offset, lane, start, new() { MaxTime = time, Tolerance = Fine }), Simulator.Throw(Offset, lane, start, new() { Tolerance = Fine }));
            Assert.Equal(StopReason.TimeLimit, shot.StopReason);
            Assert.Equal(time, shot.Duration, 1e-13);
            // The time that was asked for is the end, whichever side of it the last instant is rounded to; farther there is nothing.
            Assert.Equal(shot.End.Y, shot.At(time).Y, 1e-11);
            Assert.Throws<ArgumentOutOfRangeException>(() => shot.At(time + 1e-9));
            var same = whole.At(time);
            Assert.Equal(same.X, shot.End.X, 1e-8);
            Assert.Equal(same.Y, shot.End.Y, 1e-8);
            Assert.Equal(same.AngularVelocity.X, shot.End.AngularVelocity.X, 1e-5);
            Assert.Equal(same.FrictionWork, shot.End.FrictionWork, 1e-5);
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Slow_balls_that_turn_across_or_back_are_the_same_side_by_side(bool film)
    {
        // Where a ball goes more across than down, or hardly down at all, its steps go by time, and the lanes leave it to itself.
        var lane = film ? Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 5 * Millilitre) } : Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(0.2, 0.1, 1, 5) };
        Throw[] rows =
        [
            .. from i in Enumerable.Range(0, 24)
               select new Throw(Offset, lane, new Release
               {
                   Board = 4 + i * 7 % 30, Speed = 0.6 + 0.1 * i, SpinRate = 20 + i * 11 % 40, AxisRotation = (i % 3 == 0 ? 60 + 4 * i : i % 3 == 1 ? -60 - 5 * i : 150 + i) * Degree, AxisTilt = (i * 5 % 30) * Degree, LaunchAngle = (i % 9 - 3) * Degree,
                   AxisInBall = new(0.6, 0.64, 0.48),
               }),
        ];
        var options = new SimulatorOptions { Tolerance = 1e-4 };
        var one = Ensemble.Throw(rows, new() { Shot = options, SideBySide = false, Threads = 1 });
        Assert.Equal(one, Ensemble.Throw(rows, new() { Shot = options, Threads = 1 }));
        foreach (var (row, o) in rows.Zip(one))
        {
            var shot = Simulator.Throw(row.Ball, row.Lane, row.Release, options);
            Assert.Equal((shot.StopReason, shot.Steps), (o.StopReason, o.Steps));
            Assert.Equal(shot.End.X, o.X, 1e-12);
        }
        Assert.Contains(one, o => o.StopReason == StopReason.FoulLine);
        Assert.Contains(one, o => o.StopReason == StopReason.Gutter);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_ball_that_gains_speed_goes_on_in_the_row_where_it_is(int way)
    {
        // Slow steps go by time and look the row up; past half a metre per second they go by distance, in one row: that under the ball, not one of before. Ice lies behind the ball and, if it starts before it, nothing here may see it.
        const double v = 0.3, at = 0.9, weak = 0.02, strong = 0.3;
        var lane = Lane.Unbounded(FrictionMap.Zones((0, 0), (0.5, weak), (1, strong)));
        // Sliding with top spin: v² grows by 2 μ G over a way.
        var start = new InitialState { Y = at, VelocityY = v, AngularVelocity = new(way * -80, 0, 0) };
        var shot = Simulator.Throw(Round, lane, start, Bare with { MaxTime = 0.9, Tolerance = 1e-9 });
        if (way < 0)
        {
            // And one with back spin is stopped in the weak zone, goes back onto the ice, and straight on there.
            var (rest, back) = (v * v / (2 * weak * StandardGravity), 0.0);
            Assert.True(rest > 0.1);
            back = Math.Sqrt(v * v - 2 * weak * StandardGravity * 0.1);
            var (first, beyond) = ((v - back) / (weak * StandardGravity), back * back / (2 * strong * StandardGravity));
            var turned = first + 2 * back / (strong * StandardGravity);
            Assert.Equal(1, shot.At(first).Y, 1e-6);
            Assert.Equal(1 + beyond, shot.At(first + back / (strong * StandardGravity)).Y, 1e-6);
            Assert.Equal(1, shot.At(turned).Y, 1e-5);
            return;
        }
        var faster = Math.Sqrt(v * v + 2 * weak * StandardGravity * (1 - at));
        Assert.InRange(faster, v, 0.5);
        var enters = (faster - v) / (weak * StandardGravity);
        foreach (var later in (double[])[0.01, 0.05, 0.1, 0.3])
        {
            var p = shot.At(enters + later);
            Assert.Equal(ShotPhase.Sliding, p.Phase);
            Assert.Equal(faster + strong * StandardGravity * later, p.VelocityY, 1e-5);
            Assert.Equal(1 + faster * later + strong * StandardGravity * later * later / 2, p.Y, 1e-5);
        }
        // Rolling down a slope, with ice behind.
        var slope = Lane.Unbounded(FrictionMap.Zones((0, 0), (0.5, 1))) with { Gravity = new(0, 1, -9.8) };
        var rolls = Simulator.Throw(Round, slope, new InitialState { Y = at, VelocityY = v, AngularVelocity = new(-v / Round.Radius, 0, 0) }, Bare with { MaxTime = 2 });
        Assert.Equal(ShotPhase.Rolling, rolls.At(1.9).Phase);
        Assert.All(rolls.PhaseChanges, c => Assert.Equal(0, c.Time));
        Assert.Equal(v + 2 / (1 + Ratio), rolls.End.VelocityY, 1e-7);
        Assert.Equal(at + 2 * v + 2 / (1 + Ratio), rolls.End.Y, 1e-7);
        // And up it: to rest, and down again, all by time in the end.
        var up = Simulator.Throw(Round, slope with { Gravity = new(0, -1, -9.8) }, new InitialState { Y = at, VelocityY = 1, AngularVelocity = new(-1 / Round.Radius, 0, 0) }, Bare with { MaxTime = 2 });
        Assert.Equal(1 - 2 / (1 + Ratio), up.End.VelocityY, 1e-7);
        Assert.Equal(at + 2 - 2 / (1 + Ratio), up.End.Y, 1e-7);
    }

    [Fact]
    public void A_fast_top_in_the_air_keeps_its_momentum_and_its_energy()
    {
        // Five hundred rad/s about no principal axis, at a tolerance for which the first step is too long: the steps taken again are no part of the way.
        var ball = Offset with { CentreOfMass = Vector3D.Zero };
        var start = new InitialState { VelocityX = 0.2, VelocityY = 8, AngularVelocity = new(300, -250, 280), Loft = 3 };
        var shot = Simulator.Throw(ball, Lane.Regulation, start, new() { Tolerance = 1e-13, MaxTime = 0.06, MaxSteps = 100_000 });
        Assert.Equal((StopReason.TimeLimit, ShotPhase.Loft), (shot.StopReason, shot.End.Phase));
        Assert.Equal(0.06, shot.Duration, 1e-13);
        Assert.True(shot.RejectedSteps > 0);
        Assert.Equal(shot.Steps - shot.RejectedSteps, shot.SegmentCount);
        for (var i = 1; i <= 30; i++)
        {
            var p = shot.At(0.06 * i / 30);
            Assert.Equal(shot.Start.Energy, p.Energy, 1e-11 * shot.Start.Energy);
            var (from, to) = (Momentum(shot.Start, ball), Momentum(p, ball));
            Assert.True((to - from).Length < 1e-11 * from.Length);
            Assert.Equal(8 * p.Time, p.Y, 1e-12);
        }
        // And lands when it is there.
        var landed = Simulator.Throw(ball, Lane.Regulation, start with { Loft = 0.4 }, new() { Tolerance = 1e-13, MaxTime = 0.051, MaxSteps = 100_000 });
        Assert.Equal(0.05, landed.PhaseChanges[0].Time, 1e-12);
    }

    private static Vector3D Momentum(PathPoint p, Ball ball)
    {
        var (ω, i) = (p.Orientation.Inverse.Apply(p.AngularVelocity), ball.Inertia);
        return p.Orientation.Apply(new(i.Xx * ω.X + i.Xy * ω.Y + i.Xz * ω.Z, i.Xy * ω.X + i.Yy * ω.Y + i.Yz * ω.Z, i.Xz * ω.X + i.Yz * ω.Y + i.Zz * ω.Z));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_count_of_steps_ends_a_run_at_any_step_taken_or_not(bool rolls)
    {
        // Sliding onto a rise of friction, or rolling through oil with its dips of the fresh cover: some steps are too long and taken again, and on one of those the count may end as on any other.
        var ball = rolls ? Offset with { CentreOfMass = Vector3D.Zero } : Offset;
        var lane = rolls ? Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 3 * Millilitre) } : Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(0.02, 0.4, 1, 1.2) };
        var start = new InitialState { X = 0.05, VelocityY = 5, AngularVelocity = rolls ? new(-5 / Offset.Radius, 0, 5) : new(-20, 10, 5), Orientation = Rotation.About(new(0.2, 0.5, 0.8), 1) };
        var before = 0;
        var onRejected = 0;
        for (var most = 10; most <= 70; most++)
        {
            var shot = Simulator.Throw(ball, lane, start, new() { Tolerance = 1e-10, MaxSteps = most });
            Assert.Equal((StopReason.StepLimit, most), (shot.StopReason, shot.Steps));
            Assert.Equal(rolls ? ShotPhase.Rolling : ShotPhase.Sliding, shot.End.Phase);
            onRejected += most > 10 && shot.RejectedSteps > before ? 1 : 0;
            before = shot.RejectedSteps;
            Assert.InRange(shot.SegmentCount, most - before, most - before + 1);
        }
        Assert.True(onRejected > 0);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_shot_left_and_taken_up_again_by_another_run_is_the_same_to_the_last_bit(bool film)
    {
        var lane = film ? Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) } : Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(0.04, 0.2, 8, 11) };
        var options = new SimulatorOptions { Tolerance = 1e-4 };
        if (film)
        {
            LeftAndTakenUp(new FilmSurface<Real, MapOfReal>(Contact.Of(Offset, lane).Law<Real>(options.Friction), new(lane.Oil.Map)), lane, options);
        }
        else
        {
            LeftAndTakenUp(new GivenSurface<Real, MapOfReal>(new(lane.GivenFriction!.Map)), lane, options);
        }
    }

    private static void LeftAndTakenUp<TSurface>(TSurface surface, Lane lane, SimulatorOptions options)
        where TSurface : struct, ISurface<Real>
    {
        var body = Simulator.BodyOf(Offset, lane, options);
        var start = new Release { Board = 22, Speed = 7.6, SpinRate = 32, AxisRotation = 50 * Degree, AxisTilt = 12 * Degree, LaunchAngle = 2 * Degree, AxisInBall = new(0.6, 0.64, 0.48) }.StartOn(lane, Offset);
        Run<Real, TSurface, Tally<Real>> Fresh() => new(body, surface, Simulator.BoundsOf(Offset, lane, options), options.Tolerance, new Tally<Real>(1.0, start.X));
        Run<Real, TSurface, Tally<Real>> Begun()
        {
            var run = Fresh();
            run.Ended = run.Begin(start.X, start.Y, start.VelocityX, start.VelocityY, start.Orientation.Spatial, start.AngularVelocity.Spatial, start.Loft);
            return run;
        }
        var (whole, handed) = (Begun(), Begun());
        var (most, phases) = (0, new HashSet<BallSim.Motion.Phase>());
        while (whole.Ended == Ending.None)
        {
            whole.Ended = whole.Continue();
            handed.Ended = handed.Continue();
            if (handed.Ended == Ending.None)
            {
                phases.Add(handed.Phase);
                Moving<Real> between = default;
                handed.Leave(ref between);
                handed = Fresh();
                handed.Resume(between);
            }
            Assert.Equal((whole.Ended, whole.Phase, whole.Steps, whole.Rejected, whole.Transitions), (handed.Ended, handed.Phase, handed.Steps, handed.Rejected, handed.Transitions));
            Assert.Equal(Numbers(whole.Last), Numbers(handed.Last));
            most++;
        }
        Assert.Equal(2, phases.Count);
        Assert.True(most > 10);
    }

    private static double[] Numbers(State<Real> s) =>
        [s.Time, s.X, s.Y, s.VelocityX, s.VelocityY, s.MomentumX, s.MomentumY, s.MomentumZ, s.TurnX, s.TurnY, s.TurnZ, s.CoverFilm, s.Revolutions, s.FrictionWork, s.DragWork, s.OilTaken];

    /// <summary>Downhill friction may hardly exceed what rolling asks for, and slip fades slowly however little it is. A few centimetres before the pin it was followed in steps of nanoseconds: thousands of them.</summary>
    [Fact]
    public void Slip_that_fades_slowly_just_before_the_pin_takes_few_steps()
    {
        const double Down = 1, Onto = 9.75, Slip = 1e-8, Fall = 2e-3;
        // Of the slip: ds/dt = g sin - μ g cos (1 + m R²/I).
        var mu = (Down + Fall) / (Onto * (1 + 1 / Ratio));
        var lane = Lane.Regulation with { GivenFriction = FrictionMap.Constant(mu), Gravity = new(0, Down, -Onto) };
        var shot = Simulator.Throw(Round, lane, new InitialState { X = 0.16, Y = 18.2, VelocityY = 6, AngularVelocity = new(-(6 - Slip) / Round.Radius, 0, 0) }, Bare with { Tolerance = 1e-4 });
        Assert.Equal(StopReason.HeadPin, shot.StopReason);
        Assert.Equal(ShotPhase.Rolling, shot.End.Phase);
        Assert.InRange(shot.Steps, 1, 30);
    }

    /// <summary>A bead as light as air that leaves over the foul line at once, across it, in steps of next to nothing.</summary>
    [Theory]
    [InlineData(1e-6)]
    [InlineData(2.8e-8)]
    public void A_run_that_ends_where_it_begins_does_not_end_before(double tolerance)
    {
        var bead = new Ball { Mass = 1e-3, Radius = 0.7168324427864037, Inertia = new(2.10905e-06, 1.03633e-05, 1.03633e-05) };
        for (var k = 0; k < 400; k++)
        {
            var lane = Lane.Regulation with { GivenFriction = FrictionMap.Constant(0.005 * k) };
            var shot = Simulator.Throw(bead, lane, new InitialState { X = -0.5, VelocityX = 10, VelocityY = -6.61656, AngularVelocity = new(7.8039, -26.2742, 9.22018) }, new() { Tolerance = tolerance, RollingResistance = k % 2 == 0 });
            Assert.InRange(shot.Duration, 0, 1);
        }
    }

    [Fact]
    public void A_ball_that_turns_back_meets_the_zones_again()
    {
        // Back spin keeps the friction towards the bowler: down the lane and back it is the same motion, mirrored in time. Fast in the weak zone, by distance; slow and back in the strong one, by time; and by time out of it again.
        const double v = 1, weak = 0.02, strong = 0.3, edge = 0.5;
        var lane = Lane.Regulation with { GivenFriction = FrictionMap.Zones((0, weak), (edge, strong)) };
        var shot = Simulator.Throw(Round, lane, new InitialState { VelocityY = v, AngularVelocity = new(70, 0, 0) }, Bare with { Tolerance = 1e-8 });
        var (g, there) = (StandardGravity, Math.Sqrt(v * v - 2 * weak * StandardGravity * edge));
        Assert.True(there > 0.5);
        var (first, second) = ((v - there) / (weak * g), there / (strong * g));
        Assert.Equal((StopReason.FoulLine, ShotPhase.Sliding), (shot.StopReason, shot.End.Phase));
        Assert.Equal(2 * (first + second), shot.Duration, 1e-5);
        Assert.Equal(-v, shot.End.VelocityY, 1e-5);
        Assert.Equal(edge + there * there / (2 * strong * g), shot.At(first + second).Y, 1e-6);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Rolling_loses_what_its_resistances_take(bool air)
    {
        // Both small moments many times their usual size, on a lane that holds the ball: it rolls all the way, and what it loses is work of those moments and of the drag.
        var options = new SimulatorOptions { AirDrag = air, Tolerance = 1e-9, RollingResistance = true, RollingResistanceCoefficient = 0.02, PivotingFriction = true };
        foreach (var ball in (Ball[])[Round, Offset])
        {
            var shot = Simulator.Throw(ball, Lane.Unbounded(FrictionMap.Constant(1)), new InitialState { VelocityX = 0.5, VelocityY = 5, AngularVelocity = new(-5 / ball.Radius, 0.5 / ball.Radius, 15) }, options with { MaxTime = 1.5 });
            Assert.All(shot.PhaseChanges, c => Assert.Equal(0, c.Time));
            for (var i = 1; i <= 20; i++)
            {
                var p = shot.At(1.499 * i / 20);
                Assert.Equal(ShotPhase.Rolling, p.Phase);
                Assert.Equal(shot.Start.Energy + p.FrictionWork + p.DragWork, p.Energy, 1e-8 * shot.Start.Energy);
            }
            Assert.True(shot.End.FrictionWork < -5);
            Assert.Equal(air, shot.End.DragWork < -0.1);
            if (ball == Round && !air)
            {
                // A moment c N R against the turn slows a round ball by c g/(1 + k), along its way.
                var fall = 0.02 * StandardGravity / (1 + Ratio) * 1.5;
                Assert.Equal(shot.Start.Speed - fall, shot.End.Speed, 1e-6);
                Assert.Equal(shot.Start.Heading, shot.End.Heading, 1e-9);
            }
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Over_many_rows_shots_side_by_side_are_those_alone(bool rolls)
    {
        // The end of a step on a row is right but for rounding, which must bring nobody into the row before.
        var lane = Lane.Regulation with { GivenFriction = FrictionMap.Zones([.. Enumerable.Range(0, 26).Select(i => (0.1 + 0.7 * i, 0.02 + (rolls ? 0.4 : 0.05) * (1 + i % 2)))]) };
        Throw[] rows =
        [
            .. from i in Enumerable.Range(0, rolls ? 12 : 5)
               let speed = 5 + 0.3 * i
               select new Throw(Offset, lane, new Release { Board = 18 + i % 4, Speed = speed, SpinRate = rolls ? speed / Offset.Radius : 10 + 2 * i, AxisRotation = rolls ? 0 : 0.5, AxisInBall = new(0.6, 0.64, 0.48) }),
        ];
        var options = new SimulatorOptions { Tolerance = 1e-4 };
        var one = Ensemble.Throw(rows, new() { Shot = options, SideBySide = false, Threads = 1 });
        Assert.Equal(one, Ensemble.Throw(rows, new() { Shot = options, Threads = 1 }));
        // A row is a step or two; a slip that begins again, a few dozen.
        Assert.All(one, o => Assert.InRange(o.Steps, 20, rolls ? 150 : 600));
        foreach (var (row, o) in rows.Zip(one))
        {
            Assert.Equal(Simulator.Throw(row.Ball, row.Lane, row.Release, options).Steps, o.Steps);
        }
        Assert.Equal(rolls, one.All(o => o.RollTime < 1e-3));
    }
}
