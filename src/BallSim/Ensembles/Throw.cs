using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Ensembles;

/// <summary>One throw of an ensemble. Balls and lanes may differ from throw to throw; where many share one, give the same object: what follows from it is then worked out once.</summary>
/// <param name="Ball">The ball, drilled for its bowler (or the release names the axis itself).</param>
/// <param name="Lane">The lane.</param>
/// <param name="Release">The release.</param>
public readonly record struct Throw(Ball Ball, Lane Lane, Release Release)
{
    /// <summary>Ball, lane and release, each in the units of the trade.</summary>
    public override string ToString() => $"{Release}; {Ball}; {Lane}";
}
