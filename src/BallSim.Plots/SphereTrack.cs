using BallSim.Shots;

namespace BallSim.Plots;

/// <summary>
/// What a shot drew on the ball: where the lane touched the cover, turn by turn, and where the spin axis left the ball. Directions in the ball frame. The charts know a track only in this form.
/// </summary>
/// <param name="Rings">The turns in order.</param>
/// <param name="Axis">The spin axis on the side of the positive axis point, from the release to the end.</param>
internal sealed record SphereTrack(IReadOnlyList<SphereRing> Rings, IReadOnlyList<Vector3D> Axis)
{
    // Closer than a line is wide on the screen.
    private const int PlacesPerTurn = 72;

    /// <summary>Read off a shot's path. In loft the ball does not touch the lane: those turns draw nothing.</summary>
    public static SphereTrack Of(Shot shot)
    {
        var count = Math.Max(2, (int)Math.Ceiling(shot.End.Revolutions * PlacesPerTurn));
        PathPoint[] path = [.. Enumerable.Range(0, count + 1).Select(i => shot.At(shot.Duration * i / count)).Where(p => p.Phase != ShotPhase.Loft)];
        var rings = new List<SphereRing>();
        foreach (var turn in path.GroupBy(p => (int)Math.Floor(p.Revolutions)))
        {
            PathPoint[] points = [.. turn];
            if (points.Length > 1)
            {
                rings.Add(new(turn.Key + 1, 2 * points.Count(p => p.Phase == ShotPhase.Rolling) > points.Length, points[0].Y, points[^1].Y, [.. points.Select(p => p.Orientation.Inverse.Apply(-Vector3D.UnitZ))]));
            }
        }
        return new(rings, [.. path.Select(p => p.SpinAxisInBall)]);
    }
}
