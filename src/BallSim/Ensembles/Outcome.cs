using System.Globalization;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Ensembles;

/// <summary>
/// What an ensemble keeps of one shot; the terms are those of <see cref="Shots.Entry"/>, <see cref="Shots.Breakpoint"/> and <see cref="Shots.Shot"/>. A shot that did not reach the pins has its values where it ended.
/// </summary>
public readonly record struct Outcome
{
    /// <summary>Why the shot ended.</summary>
    public StopReason StopReason { get; init; }

    /// <summary>True if the ball reached the pins, touching the head pin or not.</summary>
    public bool ReachedPins => StopReason is StopReason.HeadPin or StopReason.PassedHeadPin;

    /// <summary>Time from the foul line, s.</summary>
    public double Time { get; init; }

    /// <summary>Centre across, m, positive to the right.</summary>
    public double X { get; init; }

    /// <summary>Centre down-lane, m.</summary>
    public double Distance { get; init; }

    /// <summary>Continuous board of the centre, counted from the right.</summary>
    public double Board { get; init; }

    /// <summary>Board at which the straight continuation crosses the line of the head pin; NaN where the ball does not move down-lane.</summary>
    public double BoardAtPinLine { get; init; }

    /// <summary>x less that of the pocket, m.</summary>
    public double Offset { get; init; }

    /// <summary>Direction of travel against the lane's axis, rad, positive towards the other side.</summary>
    public double Angle { get; init; }

    /// <summary>Speed of the centre, m/s.</summary>
    public double Speed { get; init; }

    /// <summary>Slip speed, m/s; 0 for a ball that rolls.</summary>
    public double SlipSpeed { get; init; }

    /// <summary>Spin rate, rad/s.</summary>
    public double SpinRate { get; init; }

    /// <summary>Axis rotation, rad.</summary>
    public double AxisRotation { get; init; }

    /// <summary>Axis tilt, rad.</summary>
    public double AxisTilt { get; init; }

    /// <summary>Turns since the foul line.</summary>
    public double Revolutions { get; init; }

    /// <summary>How far the spin axis has moved in the ball since the release, rad; NaN without spin. Times the radius it is the length that flare grows with.</summary>
    public double AxisMigration { get; init; }

    /// <summary>Board of the breakpoint.</summary>
    public double BreakpointBoard { get; init; }

    /// <summary>Distance of the breakpoint from the foul line, m.</summary>
    public double BreakpointDistance { get; init; }

    /// <summary>Distance of the first start of roll, m; NaN if the ball did not roll.</summary>
    public double RollDistance { get; init; }

    /// <summary>Board of the first start of roll; NaN if the ball did not roll.</summary>
    public double RollBoard { get; init; }

    /// <summary>Time of the first start of roll, s; NaN if the ball did not roll.</summary>
    public double RollTime { get; init; }

    /// <summary>How often the ball slipped again after it had rolled.</summary>
    public int SlippedAgain { get; init; }

    /// <summary>Oil that the cover took from the lane, m³.</summary>
    public double OilTakenUp { get; init; }

    /// <summary>Steps, rejected ones included.</summary>
    public int Steps { get; init; }

    /// <summary>In the units of the trade.</summary>
    public override string ToString() => ReachedPins
        ? string.Create(CultureInfo.InvariantCulture, $"board {Board:F1}, {Angle / Degree:F2} deg, {Speed / MilesPerHour:F1} mph, {Revolutions:F1} turns")
        : string.Create(CultureInfo.InvariantCulture, $"{StopReason} at {Distance / Foot:F1} ft, board {Board:F1}");
}
