using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// The ball where it meets the pins: at the first instant at which the horizontal distance from its centre to the head pin's axis is R + 4.766/2 in (the pin as a cylinder of its belly
/// radius), before any impact. If the head pin is missed, at the pins' line, with <see cref="TouchesHeadPin"/> false.
/// </summary>
public readonly record struct Entry
{
    /// <summary>True at the touch of the head pin, false if it was missed and the values are those at the pins' line.</summary>
    public bool TouchesHeadPin { get; init; }

    /// <summary>Transit time from the foul line, s.</summary>
    public double Time { get; init; }

    /// <summary>Across, m, positive to the right.</summary>
    public double X { get; init; }

    /// <summary>Down-lane, m from the foul line.</summary>
    public double Distance { get; init; }

    /// <summary>Continuous board of the centre at the touch, counted from the right for both hands.</summary>
    public double Board { get; init; }

    /// <summary>
    /// Board at which the straight continuation of the path would cross the line of the head pin, about 0.15 m further on: the trade's 17.5 is such a board, and it is a little farther in
    /// than <see cref="Board"/>.
    /// </summary>
    public double BoardAtPinLine { get; init; }

    /// <summary>x less that of the pocket, m: positive lies to the right of it for both hands.</summary>
    public double Offset { get; init; }

    /// <summary>Entry angle, rad: the direction of travel of the centre against the lane's axis, positive towards the other side (a right-hander's ball moving left).</summary>
    public double Angle { get; init; }

    /// <summary>Speed of the centre, m/s.</summary>
    public double Speed { get; init; }

    /// <summary>Spin rate, rad/s.</summary>
    public double SpinRate { get; init; }

    /// <summary>Axis rotation, rad, by the direction of travel there.</summary>
    public double AxisRotation { get; init; }

    /// <summary>Axis tilt, rad.</summary>
    public double AxisTilt { get; init; }

    /// <summary>Turns since the foul line, loft included.</summary>
    public double Revolutions { get; init; }

    /// <summary>Slip speed of the contact point, m/s; zero for a ball that rolls.</summary>
    public double SlipSpeed { get; init; }

    /// <summary>In the units of the trade.</summary>
    public override string ToString() => Invariant($"board {Board:F1}, {Angle / Degree:F2} deg, {Speed / MilesPerHour:F1} mph, {SpinRate / Rpm:F0} rpm")
        + (TouchesHeadPin ? "" : " (head pin missed)");
}
