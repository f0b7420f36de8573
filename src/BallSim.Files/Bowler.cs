using BallSim.Drilling;
using BallSim.Releases;

namespace BallSim.Files;

/// <summary>
/// The bowler of a scenario: where the spin axis leaves the ball, the measures of the hand, and how much the releases scatter.
/// </summary>
public sealed record Bowler
{
    /// <summary>What the bowler is called; may be empty.</summary>
    public string Name { get; init; } = "";

    /// <summary>The positive axis point; its hand is the bowler's hand.</summary>
    public required PositiveAxisPoint Axis { get; init; }

    /// <summary>The measures of the hand; a fingertip grip if none is given.</summary>
    public Grip Grip { get; init; } = Grip.Fingertip;

    /// <summary>How much the releases differ from throw to throw; assumed numbers unless given.</summary>
    public Scatter Scatter { get; init; } = new();

    /// <summary>Name, axis, grip and scatter.</summary>
    public override string ToString() => $"{Name}: axis {Axis}; {Grip}; {Scatter}";
}
