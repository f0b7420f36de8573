using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Motion;

/// <summary>
/// A ball that rolls and loses its grip: what the contact cannot do it does not do. On ice nothing horizontal acts any more; a round ball across a slope slides by constant or known accelerations, in closed form. The beginning of slip is a
/// fixed point of the equations, passed by a construction (<see cref="BallSim.Motion.Run{T,TSurface,TRecorder}"/>): here its result is held to mechanics.
/// </summary>
public class BeginningOfSlipTests
{
    private const double Fall = 9.8;

    private static readonly Ball Round = new() { Mass = 6.8, Radius = 0.1085, Inertia = new(0.028, 0.028, 0.028) };

    private static readonly Ball Offset = Ball.FromSpecification(
        weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, centreOfMass: new Vector3D(2.4, 1.0, -1.4) * Millimetre);

    // Without oil and air, with a tolerance that leaves the rules of a step no room.
    private static readonly SimulatorOptions Bare = new() { AirDrag = false, CoverOil = false, Tolerance = 1e-6 };

    private static readonly double Ratio = Round.Inertia.Xx / (Round.Mass * Round.Radius * Round.Radius);

    private static InitialState Rolling(Ball ball, double vy, double vx = 0, double upright = 0) => new() { VelocityX = vx, VelocityY = vy, AngularVelocity = new(-vy / ball.Radius, vx / ball.Radius, upright) };

    private static Vector3D OfCentreOfMass(PathPoint p) => new Vector3D(p.VelocityX, p.VelocityY, 0) + p.AngularVelocity.Cross(p.Offset);

    private static double Upright(PathPoint p, Ball ball)
    {
        var (ω, i) = (p.Orientation.Inverse.Apply(p.AngularVelocity), ball.Inertia);
        return p.Orientation.Apply(new(i.Xx * ω.X + i.Xy * ω.Y + i.Xz * ω.Z, i.Xy * ω.X + i.Yy * ω.Y + i.Yz * ω.Z, i.Xz * ω.X + i.Yz * ω.Y + i.Zz * ω.Z)).Z;
    }

    [Theory]
    [InlineData(5.0, 0.0)]
    [InlineData(5.0, 2.0)]
    [InlineData(5.5, -1.0)]
    public void A_ball_that_rolls_onto_ice_keeps_the_horizontal_momentum_that_it_came_with(double vy, double vx)
    {
        // Grip for any demand, then none. On ice the normal force alone acts: the horizontal velocity of the centre of mass and the angular momentum about the normal through it stay, the energy too, and no work is done.
        var lane = Lane.Unbounded(FrictionMap.Zones((0, 2), (5, 0)));
        foreach (var phase in (double[])[0.0, 1.0, 2.0, 3.0, 4.0, 5.0])
        {
            var start = Rolling(Offset, vy, vx, 3) with { Orientation = Rotation.About(new(0.2, 0.5, 0.8), phase) };
            var shot = Simulator.Throw(Offset, lane, start, Bare with { MaxTime = 1.3, Tolerance = 1e-8 });
            var change = Assert.Single(shot.PhaseChanges, c => c.From == ShotPhase.Rolling);
            Assert.Equal(5, change.Distance, 1e-10);
            var last = shot.At(change.Time - 1e-9);
            Assert.Equal(ShotPhase.Rolling, last.Phase);
            Assert.True(double.Hypot(last.ContactForce.X, last.ContactForce.Y) > 0.1);
            foreach (var later in (double[])[1e-5, 1e-3, 0.05, 0.2])
            {
                var p = shot.At(change.Time + later);
                Assert.Equal(ShotPhase.Sliding, p.Phase);
                Assert.Equal(OfCentreOfMass(last).X, OfCentreOfMass(p).X, 1e-8);
                Assert.Equal(OfCentreOfMass(last).Y, OfCentreOfMass(p).Y, 1e-8);
                Assert.Equal(Upright(last, Offset), Upright(p, Offset), 2e-9);
                Assert.Equal(last.Energy, p.Energy, 1e-8 * Math.Abs(last.Energy));
            }
            Assert.Equal(0, shot.End.FrictionWork, 1e-9);
        }
    }

    [Theory]
    [InlineData(1, 0.01)]
    [InlineData(-1, 0.01)]
    [InlineData(1, 0.06)]
    [InlineData(-1, 0.0)]
    public void A_round_ball_across_a_slope_slides_by_what_friction_leaves_after_a_jump(int side, double mu)
    {
        // Gravity with a part g across: rolling, a = g/(1 + k), k = I/(m R²), for which the contact gives m k a. With less, a = g - μ G and R ω' = μ G/k: constant.
        const double g = 3, vy = 6, at = 5;
        var lane = Lane.Unbounded(FrictionMap.Zones((0, 1), (at, mu))) with { Gravity = new(side * g, 0, -Fall) };
        var shot = Simulator.Throw(Round, lane, Rolling(Round, vy), Bare with { MaxTime = 1.5 });
        var change = Assert.Single(shot.PhaseChanges, c => c.From == ShotPhase.Rolling);
        Assert.Equal(at / vy, change.Time, 1e-12);
        var (rolls, slides, spins) = (g / (1 + Ratio), g - mu * Fall, mu * Fall / Ratio);
        foreach (var later in (double[])[1e-5, 1e-3, 0.03, 0.3, 0.6])
        {
            var (t, p) = (change.Time, shot.At(change.Time + later));
            var slip = (slides - spins) * later;
            Assert.Equal(ShotPhase.Sliding, p.Phase);
            Assert.Equal(side * (rolls * t + slides * later), p.VelocityX, 1e-9);
            Assert.Equal(side * (rolls * t + spins * later) / Round.Radius, p.AngularVelocity.Y, 1e-8);
            Assert.Equal(side * slip, p.SlipX, 1e-9);
            Assert.Equal(side * (rolls * t * t / 2 + rolls * t * later + slides * later * later / 2), p.X, 1e-9);
            Assert.Equal(0, p.SlipY, 1e-9);
            Assert.Equal(vy, p.VelocityY, 1e-9);
            Assert.Equal(vy * p.Time, p.Y, 1e-9);
            Assert.Equal(-mu * Round.Mass * Fall * slip * later / 2, p.FrictionWork, 1e-8);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_round_ball_across_a_slope_slips_where_friction_has_fallen_to_its_demand_and_then_by_its_integral(int side)
    {
        // μ(y) = a + (b - a) u² (3 - 2 u), u = (y - y1)/L, at y = v t: v' = g - G μ, by Simpson's rule (exact for a cubic).
        const double g = 3, vy = 6, a = 0.4, b = 0.01, y1 = 3, length = 6;
        var lane = Lane.Unbounded(FrictionMap.Smoothstep(a, b, y1, y1 + length)) with { Gravity = new(side * g, 0, -Fall) };
        var shot = Simulator.Throw(Round, lane, Rolling(Round, vy), Bare with { MaxTime = 1.5 });
        double Mu(double t) => (vy * t - y1) / length is var u ? a + (b - a) * u * u * (3 - 2 * u) : 0;
        double Integral(double from, double to) => (to - from) / 6 * (Mu(from) + 4 * Mu((from + to) / 2) + Mu(to));
        var rolls = g / (1 + Ratio);
        var (low, high) = (y1 / vy, (y1 + length) / vy);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Mu(middle) * Fall > Ratio * rolls ? (middle, high) : (low, middle);
        }
        var change = Assert.Single(shot.PhaseChanges, c => c.From == ShotPhase.Rolling);
        Assert.Equal(low, change.Time, 1e-11);
        foreach (var later in (double[])[2e-3, 0.02, 0.1, 0.2])
        {
            var p = shot.At(low + later);
            var pressed = Fall * Integral(low, low + later);
            Assert.Equal(ShotPhase.Sliding, p.Phase);
            Assert.Equal(side * (rolls * low + g * later - pressed), p.VelocityX, 1e-8);
            Assert.Equal(side * (rolls * low + pressed / Ratio) / Round.Radius, p.AngularVelocity.Y, 1e-7);
            Assert.Equal(0, p.SlipY, 1e-9);
        }
    }

    [Fact]
    public void The_path_past_a_jump_holds_its_tolerance()
    {
        // An offset ball that lets go at a row with some grip left: the end of a path at 1e-6 m against one at 1e-10 m.
        var lane = Lane.Unbounded(FrictionMap.Zones((0, 2), (6, 0.002)));
        foreach (var phase in (double[])[0.5, 2.5, 4.5])
        {
            var start = Rolling(Offset, 5, 1) with { Orientation = Rotation.About(new(0.2, 0.5, 0.8), phase) };
            var (coarse, fine) = (Simulator.Throw(Offset, lane, start, Bare with { MaxTime = 2 }), Simulator.Throw(Offset, lane, start, Bare with { MaxTime = 2, Tolerance = 1e-10 }));
            Assert.Contains(fine.PhaseChanges, c => c.From == ShotPhase.Rolling && Math.Abs(c.Distance - 6) < 1e-9);
            Assert.Equal(fine.End.X, coarse.End.X, 3e-6);
            Assert.Equal(fine.End.Y, coarse.End.Y, 3e-6);
        }
    }

    [Fact]
    public void A_ball_put_down_without_slip_on_ice_keeps_the_momentum_that_it_was_given()
    {
        // It rolls in the instant in which it is put down, and the contact cannot hold it: from the start nothing horizontal acts.
        foreach (var phase in (double[])[0.0, 1.0, 2.0, 3.0, 4.0, 5.0])
        {
            var start = Rolling(Offset, 5, 1, 3) with { Orientation = Rotation.About(new(0.2, 0.5, 0.8), phase) };
            var shot = Simulator.Throw(Offset, Lane.Unbounded(FrictionMap.Constant(0)), start, Bare with { MaxTime = 0.5, Tolerance = 1e-8 });
            foreach (var t in (double[])[1e-4, 1e-2, 0.1, 0.4])
            {
                var p = shot.At(t);
                Assert.Equal(ShotPhase.Sliding, p.Phase);
                Assert.Equal(OfCentreOfMass(shot.Start).X, OfCentreOfMass(p).X, 1e-8);
                Assert.Equal(OfCentreOfMass(shot.Start).Y, OfCentreOfMass(p).Y, 1e-8);
                Assert.Equal(Upright(shot.Start, Offset), Upright(p, Offset), 2e-9);
                Assert.Equal(shot.Start.Energy, p.Energy, 1e-8 * Math.Abs(shot.Start.Energy));
            }
        }
    }

    [Theory]
    [InlineData(1e-2, false)]
    [InlineData(1e-3, false)]
    [InlineData(1e-2, true)]
    public void A_top_of_the_demand_well_inside_a_step_is_found_however_long_the_step(double tolerance, bool deep)
    {
        // The waves of a ball whose inertia is round and whose centre of mass lies off to one side go down to no demand at all: a quarter of a step beside a top some hundredths less is asked. Steps that begin and end with next to no demand are not looked into, as is known.
        var ball = deep ? Round with { CentreOfMass = new(0, 0.5 * Millimetre, 0) } : Offset;
        // Friction a little less than the top of the first wave of the demand: the ball slips on its way up to that. Where the top lies near the ends of a step it may be missed, as is known; not between, where the looks at quarters are on both sides of it.
        SimulatorOptions With(double t) => Bare with { Tolerance = t, MaxTime = 0.16, MaxSteps = 100_000 };
        var inside = 0;
        for (var k = 0; k < 32; k++)
        {
            var start = Rolling(ball, 6) with { Orientation = Rotation.About(Vector3D.UnitX, k * Math.PI / 16) * (deep ? Rotation.Identity : Rotation.About(new(0.2, 0.5, 0.8), 2.2)) };
            var held = Simulator.Throw(ball, Lane.Unbounded(FrictionMap.Constant(2)), start, With(1e-7));
            double Demand(double t) => held.At(t) is var p ? double.Hypot(p.ContactForce.X, p.ContactForce.Y) / p.NormalForce : 0;
            var (top, at) = (0.0, 0.0);
            for (var t = 0.0; t < (deep ? 0.08 : 0.12); t += 3e-4)
            {
                (top, at) = Demand(t) > top ? (Demand(t), t) : (top, at);
            }
            var steps = Simulator.Throw(ball, Lane.Unbounded(FrictionMap.Constant(2)), start, With(tolerance));
            var step = Enumerable.Range(0, steps.SegmentCount).Select(steps.Segment).First(s => s.EndTime > at);
            if ((at - step.StartTime) / (step.EndTime - step.StartTime) is not (> 0.2 and < 0.8) || Math.Max(Demand(step.StartTime), Demand(step.EndTime)) < 0.6 * top)
            {
                continue;
            }
            inside++;
            var shot = Simulator.Throw(ball, Lane.Unbounded(FrictionMap.Constant(top * (1 - 3e-3))), start, With(tolerance));
            var slip = shot.PhaseChanges.FirstOrDefault(c => c.From == ShotPhase.Rolling);
            Assert.True(slip.Time > 0 && slip.Time <= at, $"{k}: {slip.Time} of {at}, a step from {step.StartTime} to {step.EndTime}");
            Assert.Equal(1 - 3e-3, Demand(slip.Time) / top, 5e-4);
        }
        Assert.True(inside > (deep ? 5 : 12), $"{inside}");
    }

    [Fact]
    public void A_run_may_end_in_the_moment_in_which_slip_begins()
    {
        // Up to 0.6 ms past the limit of grip the ball is still rolled on (a thousandth of that past a jump), then slip has begun and its steps are short: an end may fall into each of these.
        foreach (var jump in (bool[])[false, true])
        {
            var lane = Lane.Unbounded(jump ? FrictionMap.Zones((0, 1), (5, 0.01)) : FrictionMap.Smoothstep(0.4, 0.01, 3, 9)) with { Gravity = new(3, 0, -Fall) };
            var whole = Simulator.Throw(Round, lane, Rolling(Round, 6), Bare with { MaxTime = 1.5 });
            var begins = Assert.Single(whole.PhaseChanges, c => c.From == ShotPhase.Rolling).Time;
            foreach (var later in (double[])[1e-7, 4e-7, 1e-6, 1e-4, 5e-4, 7e-4, 9e-4, 1.2e-3, 2e-3, 4e-3])
            {
                var shot = Simulator.Throw(Round, lane, Rolling(Round, 6), Bare with { MaxTime = begins + later });
                Assert.Equal(StopReason.TimeLimit, shot.StopReason);
                Assert.Equal(begins + later, shot.Duration, 1e-13);
                Assert.Equal(later < (jump ? 6e-7 : 6e-4) ? ShotPhase.Rolling : ShotPhase.Sliding, shot.End.Phase);
                Assert.Equal(6 * shot.Duration, shot.End.Y, 1e-9);
                var same = whole.At(begins + later);
                Assert.Equal(same.VelocityX, shot.End.VelocityX, 1e-9);
                Assert.Equal(same.X, shot.End.X, 1e-9);
                Assert.Equal(same.SlipX, shot.End.SlipX, 1e-8);
            }
        }
    }

    [Fact]
    public void Slip_that_begins_costs_some_dozens_of_steps()
    {
        // Its direction relaxes thousands of times a second at first: steps that had to follow that would be hundreds.
        foreach (var phase in (double[])[0.5, 2.5, 4.5])
        {
            var start = Rolling(Offset, 5, 1) with { Orientation = Rotation.About(new(0.2, 0.5, 0.8), phase) };
            var slips = Simulator.Throw(Offset, Lane.Unbounded(FrictionMap.Zones((0, 2), (2, 0.05))), start, Bare with { MaxTime = 0.5 });
            var begins = slips.PhaseChanges.Single(c => c.From == ShotPhase.Rolling).Time;
            var before = Simulator.Throw(Offset, slips.Lane, start, Bare with { MaxTime = begins });
            var after = Simulator.Throw(Offset, slips.Lane, start, Bare with { MaxTime = begins + 0.05 });
            Assert.InRange(after.Steps - before.Steps, 5, 40);
            Assert.InRange(slips.RejectedSteps, 0, 6);
        }
    }

    [Theory]
    [InlineData(1e-2)]
    [InlineData(1e-3)]
    public void Tops_of_the_demand_are_found_by_many_side_by_side_as_by_each_alone(double tolerance)
    {
        // Friction a little below the greatest ratio of force to press that the waves of a rolling ball ask: some tops fall on a look, some between.
        var ball = Round with { CentreOfMass = new(0, 0.5 * Millimetre, 0) };
        var options = Bare with { Tolerance = tolerance, MaxTime = 0.4 };
        var release = new Release { Board = 20, Speed = 6, SpinRate = 6 / ball.Radius, AxisInBall = Vector3D.UnitX };
        var held = Simulator.Throw(ball, Lane.Regulation with { GivenFriction = FrictionMap.Constant(2) }, release, options with { Tolerance = 1e-6 });
        var top = Enumerable.Range(0, 1000).Select(i => held.At(held.Duration * i / 3000)).Max(p => double.Hypot(p.ContactForce.X, p.ContactForce.Y) / p.NormalForce);
        foreach (var less in (double[])[1e-2, 4e-2])
        {
            var lane = Lane.Regulation with { GivenFriction = FrictionMap.Constant(top * (1 - less)) };
            Throw[] rows = [.. Enumerable.Range(0, 16).Select(i => new Throw(ball, lane, release with { RollPhase = i * Math.PI / 8 }))];
            var one = Ensemble.Throw(rows, new() { Shot = options, SideBySide = false, Threads = 1 });
            Assert.Equal(one, Ensemble.Throw(rows, new() { Shot = options, Threads = 1 }));
            Assert.Contains(one, o => o.SlippedAgain > 0);
        }
    }
}
