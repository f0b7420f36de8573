using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using BallSim.Tests.Laws;
using static BallSim.Units;

namespace BallSim.Tests.Shots;

/// <summary>A throw always ends, says why, and leaves numbers that can be looked at.</summary>
public class StopTests
{
    private static readonly Ball Ordinary = Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0.05 * Inch, 0.01 * Inch, centreOfMass: new(0.4e-3, -0.5e-3, 0.3e-3));

    /// <summary>Any start that the types let pass: forwards, backwards and sideways, spins no hand can give, centres of mass far
    /// off.</summary>
    public sealed record Wild(Ball Ball, Lane Lane, InitialState Start, bool AllForces)
    {
        public override string ToString() => $"{Ball}; {Lane}; {Start}; d = {Ball.CentreOfMass}; q = {Start.Orientation}; v = {Start.Velocity}; ω = {Start.AngularVelocity}; all forces: {AllForces}";
    }

    public static class Wilds
    {
        public static Arbitrary<Wild> Wild() => (
            from ball in Worlds.Drilled
            from far in Gen.Frequency((3, Gen.Constant(ball.CentreOfMass)), (1, from d in Worlds.Direction from l in Worlds.Between(0, 0.02) select l * d))
            from bounded in Gen.Elements(true, false)
            from plane in Worlds.Plane
            let lane = bounded ? Lane.Regulation with { GivenFriction = plane.GivenFriction, Oil = plane.Oil } : plane
            from x in Worlds.Between(-0.52, 0.52)
            from y in Worlds.Between(0, 17)
            from vx in Worlds.Between(-20, 20)
            from vy in Worlds.Between(-20, 20)
            from slow in Gen.Elements(1.0, 0.1, 0.0)
            from spin in Worlds.Between(0, 120)
            from about in Worlds.Direction
            from q in Worlds.Orientation
            from loft in Gen.Elements(0.0, 0.0, 0.3, 20)
            from all in Gen.Elements(true, false)
            from hand in Worlds.AnyHand
            select new Wild(ball with { CentreOfMass = far }, lane, new InitialState
            {
                X = x,
                Y = y,
                VelocityX = slow * vx,
                VelocityY = slow * vy,
                Orientation = q,
                AngularVelocity = spin * about,
                // A loft is a distance down-lane: a ball that does not move that way never lands, and is refused.
                Loft = slow * vy > 0.1 ? loft : 0,
                Hand = hand,
            }, all)).ToArbitrary();
    }

    [Property(Arbitrary = [typeof(Wilds)], MaxTest = 200)]
    public void Every_throw_ends_with_a_reason_and_without_a_number_that_is_none(Wild w)
    {
        var options = new SimulatorOptions
        {
            Tolerance = 1e-6,
            MaxTime = 6,
            MaxSteps = 100_000,
            RollingResistance = w.AllForces,
            PivotingFriction = w.AllForces,
            MagnusForce = w.AllForces,
        };
        var shot = Simulator.Throw(w.Ball, w.Lane, w.Start, options);
        Assert.True(Enum.IsDefined(shot.StopReason));
        Assert.True(shot.Steps <= options.MaxSteps);
        Assert.True(shot.Duration <= options.MaxTime + 1e-9, $"ran to {shot.Duration} s");
        Assert.DoesNotContain("NaN", shot.ToString());
        // Six seconds take some thousands of steps at the very most.
        Assert.True(shot.StopReason != StopReason.StepLimit, $"gave up after {shot.Steps} steps at {shot.Duration} s, {shot.PhaseChanges.Count} changes of phase");
        for (var i = 0; i <= 20; i++)
        {
            var p = shot.At(Math.Min(shot.Duration * i / 20, shot.Duration));
            Assert.True(double.IsFinite(p.X + p.Y + p.VelocityX + p.VelocityY + p.AngularVelocity.Length + p.ContactForce.Length + p.Energy + p.Revolutions + p.Orientation.W), $"{p.Time} s: {p}");
        }
    }

    private static InitialState Down(double x = 0, double vx = 0, double vy = 8) => new() { X = x, VelocityX = vx, VelocityY = vy, AngularVelocity = new(-20, 5, 5) };

    [Fact]
    public void Gutter_with_its_place()
    {
        var shot = Simulator.Throw(Ordinary, Lane.Regulation, Down(0.3, 0.6));
        Assert.Equal(StopReason.Gutter, shot.StopReason);
        Assert.Equal(Lane.Regulation.Width / 2, shot.End.X, 1e-11);
        Assert.InRange(shot.End.Y, 1, 5);
        Assert.Contains("right gutter", shot.StopSentence);
        Assert.Contains("left gutter", Simulator.Throw(Ordinary, Lane.Regulation, Down(-0.3, -0.6)).StopSentence);
        Assert.False(shot.ReachedPins);
        Assert.Throws<InvalidOperationException>(() => shot.Entry);
    }

    [Fact]
    public void Lofted_over_the_edge_it_ends_at_the_edge()
    {
        var shot = Simulator.Throw(Ordinary, Lane.Regulation, Down(0.3, 1) with { Loft = 5 });
        Assert.Equal(StopReason.Gutter, shot.StopReason);
        Assert.Equal(Lane.Regulation.Width / 2, shot.End.X, 1e-11);
        Assert.Equal(ShotPhase.Loft, shot.End.Phase);
    }

    [Fact]
    public void Head_pin_at_the_touch()
    {
        var shot = Simulator.Throw(Ordinary, Lane.Regulation, Down() with { AngularVelocity = new(-20, 0, 0) });
        Assert.Equal(StopReason.HeadPin, shot.StopReason);
        var (x, y) = (shot.End.X, shot.End.Y - Lane.Regulation.Length);
        Assert.Equal(Ordinary.Radius + 4.766 * Inch / 2, Math.Sqrt(x * x + y * y), 1e-11);
    }

    [Fact]
    public void Passing_the_head_pin_at_its_line()
    {
        var shot = Simulator.Throw(Ordinary, Lane.Regulation, Down(0.4) with { AngularVelocity = new(-20, 0, 0) });
        Assert.Equal(StopReason.PassedHeadPin, shot.StopReason);
        Assert.Equal(Lane.Regulation.Length, shot.End.Y, 1e-9);
        Assert.False(shot.Entry.TouchesHeadPin);
    }

    [Fact]
    public void Foul_line_when_it_comes_back()
    {
        var start = new InitialState { VelocityY = 1, AngularVelocity = new(60, 0, 0) };
        var shot = Simulator.Throw(Ordinary, Lane.Regulation with { GivenFriction = FrictionMap.Constant(0.2) }, start);
        Assert.Equal(StopReason.FoulLine, shot.StopReason);
        Assert.Equal(0, shot.End.Y, 1e-8);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    public void Time_limit_on_the_instant(double loft)
    {
        var shot = Simulator.Throw(Ordinary, Lane.Unbounded(FrictionMap.Constant(0.1)), Down() with { Loft = loft }, new() { MaxTime = 1.5 });
        Assert.Equal(StopReason.TimeLimit, shot.StopReason);
        Assert.Equal(1.5, shot.Duration, 1e-12);
    }

    [Fact]
    public void Left_the_lane_when_a_far_offset_spins_fast()
    {
        // d ω² = 30 mm · (50/s)² = 75 m/s² against g: it jumps in the first turn.
        var ball = Ordinary with { CentreOfMass = new(0.03, 0, 0) };
        var shot = Simulator.Throw(ball, Lane.Unbounded(FrictionMap.Constant(0.1)), Down() with { AngularVelocity = new(-5, 50, 0) });
        Assert.Equal(StopReason.LeftLane, shot.StopReason);
        Assert.InRange(shot.Duration, 0, 2 * Math.PI / 50);
        Assert.Contains("left the lane", shot.StopSentence);
    }

    [Fact]
    public void Transition_limit()
    {
        // It rolls where the friction is high and slips again where it ends.
        var lane = Lane.Unbounded(FrictionMap.Zones((0, 0.3), (12, 0.0)));
        var throwing = Down(0.1) with { AngularVelocity = new(-55, 20, 5) };
        var free = Simulator.Throw(Ordinary, lane, throwing, new() { MaxTime = 3 });
        Assert.True(free.SlippedAgain > 0);
        var shot = Simulator.Throw(Ordinary, lane, throwing, new() { MaxTime = 3, MaxTransitions = 1 });
        Assert.Equal(StopReason.TransitionLimit, shot.StopReason);
        Assert.Equal(free.PhaseChanges[1].Time, shot.Duration, 1e-9);
    }

    [Fact]
    public void Step_limit() =>
        Assert.Equal(StopReason.StepLimit, Simulator.Throw(Ordinary, Lane.Unbounded(FrictionMap.Constant(0.1)), Down(), new() { MaxSteps = 10 }).StopReason);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_ball_at_rest_stays_at_rest(bool allForces)
    {
        var options = new SimulatorOptions { MaxTime = 2, RollingResistance = allForces, PivotingFriction = allForces };
        var ball = Ordinary with { CentreOfMass = Vector3D.Zero };
        var shot = Simulator.Throw(ball, Lane.Unbounded(FrictionMap.Constant(0.1)), new InitialState(), options);
        Assert.Equal(StopReason.TimeLimit, shot.StopReason);
        Assert.Equal(0, Math.Abs(shot.End.X) + Math.Abs(shot.End.Y) + shot.End.Speed + shot.End.SpinRate, 1e-12);
    }

    [Fact]
    public void A_step_that_came_to_no_number_is_none()
    {
        // A ball of feathers, as wide as a table: its first step overshot so far that the state was no number, and was taken for a good one.
        var ball = new Ball { Mass = 0.764, Radius = 0.655, Inertia = new(1.87e-4, 3.277e-4, 1.87e-4), Cover = Cover.Reactive };
        var start = new InitialState { AngularVelocity = new(-2.49177, -1.10272, -1.75335) };
        var shot = Simulator.Throw(ball, Lane.Unbounded(FrictionMap.Constant(0.1)), start, new() { Tolerance = 0.01, MaxTime = 1 });
        Assert.True(double.IsFinite(shot.End.X + shot.End.VelocityX + shot.End.SpinRate));
        Assert.Equal(StopReason.TimeLimit, shot.StopReason);
    }

    [Fact]
    public void A_run_that_ends_before_its_first_step_is_a_path_of_one_instant()
    {
        // A spin so small that rolling resistance turns about within a moment: of ten steps none is short enough for so small a tolerance.
        var bead = new Ball { Mass = 5.24, Radius = 0.02, Inertia = new(5.68e-12, 2.094e-11, 2.06e-11) };
        var start = new InitialState { X = -0.4, Y = 3, VelocityX = 10, VelocityY = -3.8, AngularVelocity = new(2.8e-6, 1.3e-6, -8e-9) };
        var shot = Simulator.Throw(bead, Lane.Unbounded(FrictionMap.Constant(0.3)), start, new() { Tolerance = 1e-13, MaxSteps = 10, AirDrag = false, RollingResistance = true, RollingResistanceCoefficient = 0.1, PivotingFriction = true });
        Assert.Equal(StopReason.StepLimit, shot.StopReason);
        Assert.Equal(0, shot.Duration);
        Assert.Equal((-0.4, 3.0), (shot.End.X, shot.End.Y));
        Assert.Equal(10, shot.End.VelocityX, 1e-12);
        Assert.Contains("was ended after 10 steps", shot.ToString());
        Assert.Equal(shot.Start, shot.Samples(2)[1]);
    }

    [Fact]
    public void A_ball_that_starts_at_the_pins_and_goes_nowhere_has_its_own_board_at_their_line()
    {
        var shot = Simulator.Throw(Ordinary with { CentreOfMass = Vector3D.Zero }, Lane.Regulation, new InitialState { X = 0.3, Y = 25 });
        Assert.Equal(StopReason.PassedHeadPin, shot.StopReason);
        Assert.Equal(Lane.Regulation.BoardAt(0.3), shot.Entry.BoardAtPinLine, 1e-12);
        Assert.DoesNotContain("NaN", shot.ToString());
    }
}
