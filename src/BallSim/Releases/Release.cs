using System.Globalization;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using static BallSim.Units;

namespace BallSim.Releases;

/// <summary>What the hand does at the foul line: place, direction, speed, spin, and how the ball lies in the hand.</summary>
/// <remarks>
/// With the launch angle a towards the gutter of the hand, the speed V and h = +1 for a right-hander, −1 for a left-hander, the velocity
/// of the ball's centre is
/// <code>
/// v₀ = V (h sin a, cos a, 0)
/// </code>
/// and the spin follows from it as in <see cref="SpinAxis"/>. The body point that is the positive axis point lies on +ω for a
/// right-hander, on −ω for a left-hander. What
/// is left is the turn about that axis, <see cref="RollPhase"/>. The hand is that of the positive axis point.
/// </remarks>
public sealed record Release
{
    /// <summary>
    /// Board over which the ball's centre crosses the foul line, counted from the right edge for both hands, boards continuous; 20 is the
    /// middle. Checked against the lane by <see cref="StartOn"/>.
    /// </summary>
    public double Board { get; init => field = Check.Range(value, -1000, 1000, Quantity.Boards, nameof(Board)); } = 20;

    /// <summary>
    /// Direction of travel, rad, positive towards the gutter of the hand; -20 to 20 degrees, usually 0 to 4 (from memory).
    /// </summary>
    public double LaunchAngle { get; init => field = Check.Range(value, -20 * Degree, 20 * Degree, Quantity.Angle, nameof(LaunchAngle)); }

    /// <summary>Speed of the ball's centre at the foul line, m/s; 0.5 to 17.5 (1 to 39 mph), for a strong bowler 8.</summary>
    public required double Speed { get; init => field = Check.Range(value, 0.5, 17.5, Quantity.Speed, nameof(Speed)); }

    /// <summary>Spin rate, rad/s; 0 to 80 (764 rpm), for a strong bowler 30 to 46.</summary>
    public double SpinRate { get; init => field = Check.Range(value, 0, 80, Quantity.SpinRate, nameof(SpinRate)); }

    /// <summary>Axis rotation, rad: 0 end over end, 90 degrees side roll; -180 to 180 degrees, usually 30 to 70 (from memory).</summary>
    public double AxisRotation { get; init => field = Check.Range(value, -Math.PI, Math.PI, Quantity.Angle, nameof(AxisRotation)); }

    /// <summary>Axis tilt, the elevation of the spin axis over the lane, rad; -90 to 90 degrees, usually 10 to 20 (from memory).</summary>
    public double AxisTilt { get; init => field = Check.Range(value, -Math.PI / 2, Math.PI / 2, Quantity.Angle, nameof(AxisTilt)); }

    /// <summary>Distance the ball flies before it touches the lane, m; 0 to 3, usually 6 to 18 in (from memory).</summary>
    public double Loft { get; init => field = Check.Range(value, 0, 3, Quantity.Length, nameof(Loft)); }

    /// <summary>
    /// Turn of the ball about the spin axis at release, rad, right-handed about ω; -360 to 360 degrees. At 0 the grip centre is behind the
    /// ball: its part square to the
    /// axis points as far as it can against the travel, or down where the axis lies along the travel.
    /// </summary>
    public double RollPhase { get; init => field = Check.Range(value, -2 * Math.PI, 2 * Math.PI, Quantity.Angle, nameof(RollPhase)); }

    /// <summary>
    /// The bowler's positive axis point; null: the one the ball was drilled for. It may differ from that, not in the hand.
    /// </summary>
    public PositiveAxisPoint? Axis { get; init; }

    /// <summary>
    /// For study: the positive axis as a direction in the ball frame, in place of <see cref="Axis"/>; an undrilled ball needs it. The hand
    /// is then that of the ball's marks. A
    /// ball without a grip counts the roll phase from its pin.
    /// </summary>
    public Vector3D? AxisInBall { get; init => field = value is { } v ? Check.Direction(v, nameof(AxisInBall)) : null; }

    /// <summary>The state of a ball released so on a lane, its centre at the foul line.</summary>
    /// <param name="lane">The lane; it says where the board lies.</param>
    /// <param name="ball">The ball; its marks say where the positive axis is.</param>
    /// <exception cref="ArgumentException">The board is off the lane, or the ball has no positive axis to spin about.</exception>
    public InitialState StartOn(Lane lane, Ball ball)
    {
        ArgumentNullException.ThrowIfNull(lane);
        if (lane.HasEdges)
        {
            Check.Range(Board, 0.5, lane.Boards + 0.5, Quantity.Boards);
        }
        return StartAt(lane.PlaceOf(Board), ball);
    }

    /// <summary>The same for a place across the lane in m.</summary>
    internal InitialState StartAt(double x, Ball ball)
    {
        var start = LaunchAt(x, ball);
        return new()
        {
            X = start.X,
            VelocityX = start.Velocity.X,
            VelocityY = start.Velocity.Y,
            AngularVelocity = start.AngularVelocity,
            Orientation = start.Orientation,
            Loft = start.Loft,
            Hand = start.Hand,
        };
    }

    /// <summary>The same as plain numbers.</summary>
    internal Launch LaunchAt(double x, Ball ball)
    {
        ArgumentNullException.ThrowIfNull(ball);
        var hand = ball.Marks.Hand;
        var axis = PositiveAxisOn(ball);
        var h = hand == Hand.Right ? 1 : -1;
        var velocity = Speed * new Vector3D(h * Math.Sin(LaunchAngle), Math.Cos(LaunchAngle), 0);
        var spin = new SpinAxis(SpinRate, AxisRotation, AxisTilt);
        var spinDirection = spin.Direction(velocity, hand);
        var unturned = Unturned(ball, axis, h * spinDirection, velocity.Unit);
        return new(x, velocity, SpinRate * spinDirection, RollPhase == 0 ? unturned : Rotation.About(spinDirection, RollPhase) * unturned, Loft, hand);
    }

    /// <summary>The same over a board of a lane.</summary>
    /// <exception cref="ArgumentException">The board is off the lane, or the ball has no positive axis to spin about.</exception>
    internal Launch LaunchOn(Lane lane, Ball ball)
    {
        if (lane.HasEdges)
        {
            Check.Range(Board, 0.5, lane.Boards + 0.5, Quantity.Boards);
        }
        return LaunchAt(lane.PlaceOf(Board), ball);
    }

    /// <summary>The release in the units of the trade.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Speed / MilesPerHour:F2} mph, {new SpinAxis(SpinRate, AxisRotation, AxisTilt)}, board {Board:F1}, launch {LaunchAngle / Degree:F1}°, loft {Loft / Inch:F1} in");

    private Vector3D PositiveAxisOn(Ball ball)
    {
        Check.That(Axis is null || AxisInBall is null, "Axis and AxisInBall both name the positive axis; give one of them", nameof(AxisInBall));
        return AxisInBall ?? Axis?.DirectionOn(ball) ?? ball.Marks.PositiveAxis ?? throw new ArgumentException(
            "the ball has no positive axis point: drill it, ball.Drill(layout, grip, axisPoint), or name a direction in the ball for study, " +
            "release with { AxisInBall = ... }", nameof(ball));
    }

    // The orientation at roll phase 0: the axis in the ball goes to its place on the lane, and a reference in the ball (the grip centre)
    // as far behind as the axis allows.
    private static Rotation Unturned(Ball ball, Vector3D axis, Vector3D axisOnLane, Vector3D travel)
    {
        // A grip centre on the axis itself says nothing about the turn; then the pin does, and if that lies there too, the next axis of
        // the ball.
        var reference = Square(ball.Marks.GripCentre ?? ball.Marks.Pin, axis) ?? Square(ball.Marks.Pin, axis)
            ?? Square(Vector3D.UnitY, axis) ?? Square(Vector3D.UnitZ, axis)!.Value;
        var behind = Square(-travel, axisOnLane) ?? Square(-Vector3D.UnitZ, axisOnLane)!.Value;
        return Rotation.Between(axis, reference, axisOnLane, behind);
    }

    /// <summary>The unit vector of the part of a direction square to an axis; null where there is none to speak of.</summary>
    private static Vector3D? Square(Vector3D direction, Vector3D axis)
    {
        var across = axis.Cross(direction);
        return across.Length > 1e-9 ? across.Cross(axis).Unit : null;
    }
}
