using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>A place of the bow tie, where rings of the track cross.</summary>
/// <param name="Direction">Unit vector from the centre of the ball, in the ball frame.</param>
/// <param name="Miss">Greatest distance on the surface by which any ring, taken as the circle that fits it, passes beside the place, m.</param>
public readonly record struct TrackCrossing(Vector3D Direction, double Miss)
{
    /// <summary>The direction, and the miss in inches.</summary>
    public override string ToString() => Invariant($"rings cross at {Direction}, all within {Miss / Inch:F2} in");
}
