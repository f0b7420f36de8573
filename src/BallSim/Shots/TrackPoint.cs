namespace BallSim.Shots;

/// <summary>One place of the track: where the contact and the spin axis are on the ball, and how far down the lane that was.</summary>
internal readonly record struct TrackPoint(Vector3D Contact, Vector3D SpinAxis, double Distance)
{
    // The contact lies straight below the centre: -n, seen from the ball.
    public static TrackPoint Of(PathPoint p) => new(-p.Orientation.Inverse.Apply(Vector3D.UnitZ), p.SpinAxisInBall, p.Y);
}
