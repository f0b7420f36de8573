using BallSim.Releases;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>What came of aiming: the release that enters at the pocket and its shot, or the reason why there is none.</summary>
public sealed record AimedShot
{
    internal AimedShot(Release release, Shot? shot, string reason, int throws) => (Release, Shot, Reason, Throws) = (release, shot, reason, throws);

    /// <summary>The release with the launch angle found; the given one where none was found.</summary>
    public Release Release { get; }

    /// <summary>The shot that enters at the pocket, or null.</summary>
    public Shot? Shot { get; }

    /// <summary>True if a launch angle was found.</summary>
    public bool IsFound => Shot is not null;

    /// <summary>Why no launch angle was found, as a sentence; empty if one was.</summary>
    public string Reason { get; }

    /// <summary>How many throws the search took.</summary>
    public int Throws { get; }

    /// <summary>In the units of the trade.</summary>
    public override string ToString() => Shot is null ? Reason : Invariant($"launched at {Release.LaunchAngle / Degree:F2} deg: {Shot.Entry}");
}
