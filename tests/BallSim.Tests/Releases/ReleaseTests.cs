using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using static BallSim.Units;

namespace BallSim.Tests.Releases;

public class ReleaseTests
{
    private static readonly Release Typical = new()
    {
        Speed = 18 * MilesPerHour,
        SpinRate = 350 * Rpm,
        AxisRotation = 60 * Degree,
        AxisTilt = 12 * Degree,
        Board = 26,
        LaunchAngle = 3 * Degree,
    };

    private static readonly Release Straight = new() { Speed = 8, SpinRate = 30 };

    private static Ball Undrilled => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch);

    private static Ball Drilled(Hand hand = Hand.Right) => Undrilled.Drill(
        new(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch, hand));

    [Fact]
    public void The_centre_starts_over_its_board_at_the_foul_line()
    {
        // This library's convention: board b has its centre at W/2 - (b - 1/2) W/39; 41.5 in and 39 boards.
        var state = Typical.StartOn(Lane.Regulation, Drilled());
        Assert.Equal((41.5 / 2 - 25.5 * 41.5 / 39) * Inch, state.X, 1e-15);
        Assert.Equal(0, state.Y);
        Assert.Equal(0, state.Loft);
    }

    [Fact]
    public void A_positive_launch_angle_points_to_the_gutter_of_the_hand()
    {
        var (right, left) = (Typical.StartOn(Lane.Regulation, Drilled()), Typical.StartOn(Lane.Regulation, Drilled(Hand.Left)));
        Assert.True(right.VelocityX > 0 && left.VelocityX < 0);
        Assert.Equal(18 * MilesPerHour, right.Speed, 1e-14);
        Assert.Equal(3 * Degree, Math.Atan2(right.VelocityX, right.VelocityY), 1e-15);
    }

    // This library's convention: forward roll points ω to the left, side roll backwards, for a right-hander; the mirror image for a left-hander.
    [Theory]
    [InlineData(Hand.Right, 0, 0, -1, 0, 0)]
    [InlineData(Hand.Right, 90, 0, 0, -1, 0)]
    [InlineData(Hand.Right, 0, 90, 0, 0, 1)]
    [InlineData(Hand.Left, 0, 0, -1, 0, 0)]
    [InlineData(Hand.Left, 90, 0, 0, 1, 0)]
    [InlineData(Hand.Left, 0, 90, 0, 0, -1)]
    public void Spin_points_where_the_definitions_say(Hand hand, double rotation, double tilt, double x, double y, double z)
    {
        var state = (Straight with { AxisRotation = rotation * Degree, AxisTilt = tilt * Degree }).StartOn(Lane.Regulation, Drilled(hand));
        Assert.True((state.AngularVelocity - 30 * new Vector3D(x, y, z)).Length < 1e-13);
    }

    [Fact]
    public void The_direction_of_travel_counts_and_not_the_lane()
    {
        // End over end at a launch angle: the spin axis is square to the travel.
        var state = (Straight with { LaunchAngle = 10 * Degree }).StartOn(Lane.Regulation, Drilled());
        Assert.Equal(0, state.AngularVelocity.Dot(state.Velocity), 1e-12);
    }

    [Fact]
    public void At_phase_zero_an_end_over_end_ball_has_its_grip_behind()
    {
        // Spin axis to the left, positive axis point on it; the grip centre is 5 in from that and, being on the plane square to the axis but for the
        // remainder of a quarter turn, points backwards.
        var ball = Drilled();
        var state = Straight.StartOn(Lane.Regulation, ball);
        var grip = state.Orientation.Apply(ball.Marks.GripCentre!.Value);
        Assert.Equal(0, grip.Z, 1e-15);
        Assert.True(grip.Y < 0);
        Assert.True((state.Orientation.Apply(ball.Marks.PositiveAxis!.Value) + Vector3D.UnitX).Length < 1e-15);
        // A quarter turn of end-over-end roll from behind carries it up: ω × (-y) = (-x) × (-y) = z.
        var later = (Straight with { RollPhase = 90 * Degree }).StartOn(Lane.Regulation, ball);
        Assert.True(later.Orientation.Apply(ball.Marks.GripCentre!.Value).Z > 0.9);
    }

    [Fact]
    public void An_axis_along_the_travel_puts_the_grip_below()
    {
        var ball = Drilled();
        var state = (Straight with { AxisRotation = 90 * Degree }).StartOn(Lane.Regulation, ball);
        var (grip, axis) = (state.Orientation.Apply(ball.Marks.GripCentre!.Value), state.AngularVelocity.Unit);
        var square = (grip - grip.Dot(axis) * axis).Unit;
        Assert.True((square + Vector3D.UnitZ).Length < 1e-12);
    }

    [Fact]
    public void A_release_may_name_another_axis_point_than_the_ball_was_drilled_for()
    {
        var ball = Drilled();
        var own = new PositiveAxisPoint(4 * Inch, -0.5 * Inch);
        var state = (Typical with { Axis = own }).StartOn(Lane.Regulation, ball);
        Assert.True((state.Orientation.Apply(own.DirectionOn(ball)) - state.AngularVelocity.Unit).Length < 1e-14);
        Assert.Equal(Typical.StartOn(Lane.Regulation, ball), (Typical with { Axis = new(5 * Inch, 0.5 * Inch) }).StartOn(Lane.Regulation, ball));
    }

    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(0, 1, 0)]
    [InlineData(0, 0, -1)]
    [InlineData(1, 2, 3)]
    public void An_undrilled_ball_spins_about_a_named_direction(double x, double y, double z)
    {
        var axis = new Vector3D(x, y, z);
        var state = (Typical with { AxisInBall = axis }).StartOn(Lane.Regulation, Undrilled);
        Assert.True((state.Orientation.Apply(axis.Unit) - state.AngularVelocity.Unit).Length < 1e-14);
    }

    [Fact]
    public void Likely_slips_are_named()
    {
        Refused(() => Typical with { Speed = 18 }, "Speed = 18 m/s is out of [0.5, 17.5] m/s; for miles an hour write 18 * MilesPerHour");
        Refused(() => Typical with { SpinRate = 350 }, "for turns a minute write 350 * Rpm");
        Refused(() => Typical with { AxisRotation = 45 }, "for degrees write 45 * Degree");
        Refused(() => Typical with { AxisTilt = 12 }, "for degrees write 12 * Degree");
        Refused(() => Typical with { LaunchAngle = 3 }, "for degrees write 3 * Degree");
        Refused(() => Typical with { Loft = 12 }, "for inches write 12 * Inch");
        Refused(() => Typical with { RollPhase = 90 }, "for degrees write 90 * Degree");
        Refused(() => Typical with { Board = double.NaN }, "Board is NaN");
        Refused(() => Typical with { SpinRate = -1 }, "SpinRate");
    }

    [Fact]
    public void What_the_ball_and_the_lane_cannot_serve_is_refused()
    {
        Refused(() => Typical.StartOn(Lane.Regulation, Undrilled), "AxisInBall");
        Refused(() => (Typical with { Board = 40 }).StartOn(Lane.Regulation, Drilled()), "Board = 40 boards is out of [0.5, 39.5] boards");
        Refused(() => (Typical with { Axis = new(5 * Inch, 0, Hand.Left) }).StartOn(Lane.Regulation, Drilled()), "Left hand");
        Refused(() => (Typical with { Axis = new(5 * Inch, 0) }).StartOn(Lane.Regulation, Undrilled), "no grip");
        Refused(() => (Typical with { Axis = new(5 * Inch, 0), AxisInBall = Vector3D.UnitX }).StartOn(Lane.Regulation, Drilled()), "both");
        var unbounded = Lane.Unbounded(FrictionMap.Constant(0.1));
        Assert.Equal(unbounded.PlaceOf(50), (Typical with { Board = 50 }).StartOn(unbounded, Drilled()).X);
    }

    [Fact]
    public void A_state_for_study_takes_any_finite_motion_and_no_other()
    {
        var state = new InitialState { VelocityY = 50, AngularVelocity = new(300, 0, -400), Orientation = new(-0.5, 0.5, 0.5, 0.5), Y = -3 };
        Assert.Equal(500, state.AngularVelocity.Length);
        Refused(() => state with { AngularVelocity = new(double.NaN, 0, 0) }, "AngularVelocity");
        Refused(() => state with { AngularVelocity = new(501, 0, 0) }, "AngularVelocity");
        Refused(() => state with { Orientation = default }, "length one");
        Refused(() => state with { VelocityX = double.PositiveInfinity }, "VelocityX");
    }

    [Fact]
    public void Text_is_in_the_units_of_the_trade()
    {
        Assert.Equal("18.00 mph, 350 rpm, rotation 60.0°, tilt 12.0°, board 26.0, launch 3.0°, loft 0.0 in", Typical.ToString());
        Assert.EndsWith("18.00 mph, 350 rpm, rotation 60.0°, tilt 12.0°, left hand", Typical.StartOn(Lane.Regulation, Drilled(Hand.Left)).ToString(), StringComparison.Ordinal);
    }

    private static void Refused(Func<object> build, string part) => Assert.Contains(part, Assert.ThrowsAny<ArgumentException>(build).Message);
}
