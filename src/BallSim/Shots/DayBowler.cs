using BallSim.Balls;
using BallSim.Releases;

namespace BallSim.Shots;

/// <summary>One who plays on a lane for a day: a ball, a line, and how much the hand scatters about it.</summary>
public sealed record DayBowler
{
    /// <summary>What the bowler is called; may be empty.</summary>
    public string Name { get; init; } = "";

    /// <summary>The ball, drilled for the bowler; it is wiped before every shot.</summary>
    public required Ball Ball { get; init => field = value ?? throw new ArgumentNullException(nameof(Ball)); }

    /// <summary>The release in the middle of the scatter. Its launch angle is where the first line is looked for.</summary>
    public required Release Release { get; init => field = value ?? throw new ArgumentNullException(nameof(Release)); }

    /// <summary>How much the releases differ from throw to throw; assumed numbers unless given.</summary>
    public Scatter Scatter { get; init => field = value ?? throw new ArgumentNullException(nameof(Scatter)); } = new();

    /// <summary>Name, ball and release.</summary>
    public override string ToString() => $"{(Name.Length == 0 ? "" : Name + ": ")}{Release}; {Ball}";
}
