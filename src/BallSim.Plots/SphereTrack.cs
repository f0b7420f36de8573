using BallSim.Shots;

namespace BallSim.Plots;

/// <summary>
/// What a shot drew on the ball: where the lane touched the cover, turn by turn, and where the spin axis left the ball. Directions in the ball frame. The charts know a track only in this form.
/// </summary>
/// <param name="Rings">The turns in order.</param>
/// <param name="Axis">The spin axis on the side of the positive axis point, from the release to the end.</param>
internal sealed record SphereTrack(IReadOnlyList<SphereRing> Rings, IReadOnlyList<Vector3D> Axis)
{
    // The axis nods within a turn: this many places to a turn show it.
    private const int AxisPlacesPerTurn = 24;

    /// <summary>Read off a shot's track. In loft the ball does not touch the lane: those turns draw nothing.</summary>
    public static SphereTrack Of(Shot shot)
    {
        SphereRing[] rings = [.. shot.Track.Rings.Select(ring => new SphereRing(ring.Number, shot.AtDistance((ring.StartDistance + ring.EndDistance) / 2).Phase == ShotPhase.Rolling, ring.StartDistance, ring.EndDistance, ring.Points))];
        var count = Math.Max(2, (int)Math.Ceiling(shot.End.Revolutions * AxisPlacesPerTurn));
        return new(rings, [.. Enumerable.Range(0, count + 1).Select(i => shot.At(Math.Min(shot.Duration * i / count, shot.Duration))).Where(p => p.Phase != ShotPhase.Loft).Select(p => p.SpinAxisInBall)]);
    }
}
