using BallSim.Drilling;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>How near one ring of the track comes to one hole.</summary>
/// <param name="Hole">The hole.</param>
/// <param name="Revolution">The ring's number: which revolution since the landing, from 1.</param>
/// <param name="Clearance">Distance on the surface from the middle of the track to the hole's edge at the nearest, m; negative inside the hole.</param>
/// <param name="Distance">Distance of the ball from the foul line there, m.</param>
/// <param name="IsTouched">True if the contact patch, half as wide as <see cref="Track.ContactRadius"/> says, meets the edge.</param>
public readonly record struct HoleClearance(Hole Hole, int Revolution, double Clearance, double Distance, bool IsTouched)
{
    /// <summary>The clearance in words.</summary>
    public override string ToString()
    {
        var what = Clearance < 0 ? Invariant($"runs over the edge of the hole \"{Hole.Name}\", {-Clearance / Inch:F2} in into it,")
            : IsTouched ? $"touches the edge of the hole \"{Hole.Name}\""
            : Invariant($"stays {Clearance / Inch:F2} in clear of the hole \"{Hole.Name}\"");
        return Invariant($"the track {what} on revolution {Revolution}, {Distance / Foot:F1} ft from the foul line");
    }
}
