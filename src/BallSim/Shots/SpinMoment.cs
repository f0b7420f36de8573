using System.Globalization;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>A spinning ball at one instant.</summary>
public readonly record struct SpinMoment
{
    /// <summary>Time since the start, s.</summary>
    public double Time { get; init; }

    /// <summary>Orientation: ball frame to lane frame.</summary>
    public Rotation Orientation { get; init; }

    /// <summary>Angular velocity in the lane frame, rad/s.</summary>
    public Vector3D AngularVelocity { get; init; }

    /// <summary>Angular velocity in the ball frame, rad/s.</summary>
    public Vector3D AngularVelocityInBall { get; init; }

    /// <summary>
    /// Where the spin axis leaves the ball: the direction of ω in the ball frame, a unit vector (zero for a ball at rest).
    /// </summary>
    public Vector3D AxisInBall { get; init; }

    /// <summary>
    /// Angle between the spin axis, as a line, and the preferred axis, rad, 0 to π/2. Where the two greatest moments are equal every axis
    /// of their plane is preferred, and the angle is that to the plane; a ball with three equal moments prefers none, and the angle is 0.
    /// </summary>
    public double AngleToPreferredAxis { get; init; }

    /// <summary>Angular momentum of the ball and the rotor inside it, lane frame, kg m²/s.</summary>
    public Vector3D Momentum { get; init; }

    /// <summary>Kinetic energy of the ball and the rotor inside it, J.</summary>
    public double Energy { get; init; }

    /// <summary>Angular velocity of the rotor in the ball frame, rad/s; null without a rotor.</summary>
    public Vector3D? RotorAngularVelocityInBall { get; init; }

    /// <summary>In the units of the trade.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Time:F2} s: {AngularVelocity.Length / Rpm:F1} rpm, {AngleToPreferredAxis / Degree:F2} deg from the preferred axis");
}
