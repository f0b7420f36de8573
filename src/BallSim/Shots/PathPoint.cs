using System.Globalization;
using BallSim.Releases;

namespace BallSim.Shots;

/// <summary>The ball at one instant of a shot. Vectors are in the lane frame (x right, y down-lane, z up) unless the name says otherwise; SI units.</summary>
public readonly record struct PathPoint
{
    /// <summary>Time since the release, s.</summary>
    public double Time { get; init; }

    /// <summary>How the ball moves.</summary>
    public ShotPhase Phase { get; init; }

    /// <summary>Place of the centre across the lane, m, positive to the right of its middle.</summary>
    public double X { get; init; }

    /// <summary>Place of the centre down-lane, m from the foul line.</summary>
    public double Y { get; init; }

    /// <summary>The continuous board under the centre, counted from the right.</summary>
    public double Board { get; init; }

    /// <summary>Velocity of the centre across, m/s.</summary>
    public double VelocityX { get; init; }

    /// <summary>Velocity of the centre down-lane, m/s.</summary>
    public double VelocityY { get; init; }

    /// <summary>Takes directions of the ball frame to the lane frame.</summary>
    public Rotation Orientation { get; init; }

    /// <summary>Angular velocity, rad/s.</summary>
    public Vector3D AngularVelocity { get; init; }

    /// <summary>Slip velocity of the contact point across, m/s; zero while rolling.</summary>
    public double SlipX { get; init; }

    /// <summary>Slip velocity of the contact point down-lane, m/s; zero while rolling.</summary>
    public double SlipY { get; init; }

    /// <summary>Force of the lane on the ball, N; z is the normal force, which is not the weight when the centre of mass is off centre.</summary>
    public Vector3D ContactForce { get; init; }

    /// <summary>Friction coefficient at the contact; while rolling the one at which the ball would start to slide. Zero in the air.</summary>
    public double Friction { get; init; }

    /// <summary>Oil film under the contact, m; zero on a lane of given friction and in the air.</summary>
    public double Film { get; init; }

    /// <summary>Oil film on the cover where it meets the lane, h_B, m; zero at the release (a wiped ball).</summary>
    public double CoverFilm { get; init; }

    /// <summary>Fresh fraction of the cover under the contact, 0 to 1: 1 where flare has moved the track onto dry cover, 0 where it runs in its own track.</summary>
    public double FreshCover { get; init; }

    /// <summary>
    /// Rate at which the cover takes oil off the lane, m³/s, negative where it leaves more than it takes: on a strip as wide as the contact, 2 r_c v_b (φ_s h_c - (1 - φ) h_B), v_b the speed at which the
    /// cover passes through the contact and h_c the film drawn into it. Zero in the air and on a lane of given friction.
    /// </summary>
    public double OilUptake { get; init; }

    /// <summary>The centre of mass from the centre of the ball, m.</summary>
    public Vector3D Offset { get; init; }

    /// <summary>Turns since the release: the integral of |ω| dt/2π.</summary>
    public double Revolutions { get; init; }

    /// <summary>Work of friction since the release, J, never positive: the integral of f · s dt, and of the small moments where they are switched on.</summary>
    public double FrictionWork { get; init; }

    /// <summary>Work of the air's drag since the release, J.</summary>
    public double DragWork { get; init; }

    /// <summary>Kinetic energy plus the potential -m g · G, J. It changes by friction and drag work alone.</summary>
    public double Energy { get; init; }

    /// <summary>Hand of the bowler: it tells which end of the spin axis is the positive axis point.</summary>
    public Hand Hand { get; init; }

    /// <summary>Speed of the centre, m/s.</summary>
    public double Speed => Math.Sqrt(VelocityX * VelocityX + VelocityY * VelocityY);

    /// <summary>Spin rate |ω|, rad/s.</summary>
    public double SpinRate => AngularVelocity.Length;

    /// <summary>Direction of travel, rad from straight down-lane, positive to the right.</summary>
    public double Heading => Math.Atan2(VelocityX, VelocityY);

    /// <summary>Slip speed of the contact point, m/s.</summary>
    public double SlipSpeed => Math.Sqrt(SlipX * SlipX + SlipY * SlipY);

    /// <summary>Normal force, N.</summary>
    public double NormalForce => ContactForce.Z;

    /// <summary>
    /// Where the spin axis leaves the ball on the side of the positive axis point, a unit vector in the ball frame: at release it is the positive axis point itself, and it wanders
    /// from there.
    /// </summary>
    public Vector3D SpinAxisInBall => Orientation.Inverse.Apply((Hand == Hand.Right ? AngularVelocity : -AngularVelocity).Unit);

    /// <summary>Axis rotation, rad: the angle between the horizontal projection of the spin axis and the line square to the direction of travel; 0 end over end, π/2 side roll.</summary>
    public double AxisRotation => SpinAxis.AxisRotation;

    /// <summary>Axis tilt, rad: elevation of the spin axis above the lane.</summary>
    public double AxisTilt => SpinAxis.AxisTilt;

    private SpinAxis SpinAxis => SpinAxis.From(new Vector3D(VelocityX, VelocityY, 0), AngularVelocity, Hand);

    /// <summary>Time, place and motion in the units of the trade.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Time:F3} s, {Y / Units.Foot:F1} ft, board {Board:F1}: {Phase}, {Speed / Units.MilesPerHour:F1} mph, {SpinAxis}, slip {SlipSpeed / Units.MilesPerHour:F1} mph");
}
