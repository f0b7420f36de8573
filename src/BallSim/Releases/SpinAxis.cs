using System.Globalization;
using static BallSim.Units;

namespace BallSim.Releases;

/// <summary>Spin as a bowler counts it: how fast, and how the axis lies to the direction of travel and to the lane.</summary>
/// <param name="SpinRate">Size of the angular velocity, rad/s; not negative.</param>
/// <param name="AxisRotation">
/// Angle between the horizontal projection of the spin axis and the line square to the direction of travel, rad: 0 end over end, 90
/// degrees side roll that hooks away from
/// the hand's gutter, 180 backspin; in (-π, π].
/// </param>
/// <param name="AxisTilt">Elevation of the spin axis over the lane, rad, in [-π/2, π/2].</param>
/// <remarks>
/// With the travel e = v/|v|, the lane normal n, l = n × e, a = axis rotation, t = axis tilt and W = |ω|, a right-hander's
/// <code>
/// ω = W (cos a cos t l − sin a cos t e + sin t n)
/// a = atan2(−h ω·e, ω·l),   sin t = h ω·n/W        h = +1 right hand, −1 left hand
/// </code>
/// A left-hander's is the mirror image in x = 0. Angular velocity is a pseudovector: (ωx, ωy, ωz) becomes (ωx, −ωy, −ωz). Angles by the
/// trade-wide definition.
/// </remarks>
public readonly record struct SpinAxis(double SpinRate, double AxisRotation, double AxisTilt)
{
    /// <summary>The spin read from a motion.</summary>
    /// <param name="velocity">Velocity of the ball's centre in the lane frame, m/s; its horizontal part gives the travel, down-lane if it
    /// is zero.</param>
    /// <param name="angularVelocity">Angular velocity in the lane frame, rad/s; without spin both angles come out zero.</param>
    /// <param name="hand">The hand.</param>
    public static SpinAxis From(Vector3D velocity, Vector3D angularVelocity, Hand hand)
    {
        var h = hand == Hand.Right ? 1 : -1;
        var (e, l) = Travel(velocity);
        var (along, across, up) = (angularVelocity.Dot(e), angularVelocity.Dot(l), angularVelocity.Z);
        var level = Math.Sqrt(along * along + across * across);
        // atan2 for the tilt as well: asin loses half the digits near 90 degrees. Adding zero turns a negative zero into a plain one, so
        // that no spin reads 0 and not π.
        return new(angularVelocity.Length, Math.Atan2(-h * along + 0.0, across + 0.0), Math.Atan2(h * up, level));
    }

    /// <summary>
    /// The angular velocity in the lane frame, rad/s, of a ball that travels along a velocity: the inverse of <see cref="From"/>.
    /// </summary>
    /// <param name="velocity">Velocity of the ball's centre in the lane frame, m/s; its horizontal part gives the travel, down-lane if it
    /// is zero.</param>
    /// <param name="hand">The hand.</param>
    public Vector3D AngularVelocity(Vector3D velocity, Hand hand) => SpinRate * Direction(velocity, hand);

    /// <summary>The unit vector along the angular velocity; it exists without spin too.</summary>
    internal Vector3D Direction(Vector3D velocity, Hand hand)
    {
        var h = hand == Hand.Right ? 1 : -1;
        var (e, l) = Travel(velocity);
        var (sinA, cosA) = Math.SinCos(AxisRotation);
        var (sinT, cosT) = Math.SinCos(AxisTilt);
        return cosA * cosT * l - h * sinA * cosT * e + h * sinT * Vector3D.UnitZ;
    }

    /// <summary>Spin rate in turns a minute, angles in degrees.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{SpinRate / Rpm:F0} rpm, rotation {Math.Round(AxisRotation / Degree, 1) + 0.0:F1}°, tilt {AxisTilt / Degree:F1}°");

    private static (Vector3D E, Vector3D L) Travel(Vector3D velocity)
    {
        var level = velocity with { Z = 0 };
        var e = level.Length > 0 ? level.Unit : Vector3D.UnitY;
        return (e, new(-e.Y, e.X, 0));
    }
}
