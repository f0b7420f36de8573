using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Fitting;

/// <summary>A tracked shot with what is known of it: the ball, the lane, and the release as the bowler meant it or a sensor saw it. What a fit does not move stays as it is here.</summary>
/// <param name="Track">The track.</param>
/// <param name="Ball">The ball.</param>
/// <param name="Lane">The lane.</param>
/// <param name="Release">The release; where a fit starts, and the middle of priors that name none.</param>
public sealed record FitShot(TrackedShot Track, Ball Ball, Lane Lane, Release Release)
{
    /// <summary>The track, and with what it was thrown.</summary>
    public override string ToString() => $"{Track}; {Release}";
}
