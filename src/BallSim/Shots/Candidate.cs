using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Shots;

/// <summary>
/// One row of a comparison before anything is thrown: a drilled ball, a lane and a release, and what each part is called.
/// </summary>
/// <param name="Ball">The ball, drilled and finished.</param>
/// <param name="Lane">The lane with its oil.</param>
/// <param name="Release">The release.</param>
public sealed record Candidate(Ball Ball, Lane Lane, Release Release)
{
    /// <summary>What the ball is called; empty where nothing else is compared with it.</summary>
    public string BallName { get; init; } = "";

    /// <summary>What the layout is called.</summary>
    public string LayoutName { get; init; } = "";

    /// <summary>What the finish is called.</summary>
    public string FinishName { get; init; } = "";

    /// <summary>What the release is called.</summary>
    public string ReleaseName { get; init; } = "";

    /// <summary>What the lane is called.</summary>
    public string LaneName { get; init; } = "";

    /// <summary>The holes of the ball, in its frame; empty if they are not known. The track is held against them.</summary>
    public IReadOnlyList<Hole> Holes { get; init; } = [];

    /// <summary>The names that are there, one after the other.</summary>
    public override string ToString() =>
        string.Join(", ", new[] { BallName, LayoutName, FinishName, ReleaseName, LaneName }.Where(name => name.Length > 0));
}
