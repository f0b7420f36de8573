using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>A bowler's change of line in the course of a day.</summary>
public sealed record DayMove
{
    /// <summary>Number of the last shot before it; 0: the line that was looked for before the day began.</summary>
    public required int After { get; init; }

    /// <summary>Place of the bowler in the plan's list, from 0.</summary>
    public required int Bowler { get; init; }

    /// <summary>Mean offset from the pocket that led to it, m, positive to the right; NaN if no ball reached the pins, or none was thrown yet.</summary>
    public required double MeanOffset { get; init; }

    /// <summary>Launch angle before, rad.</summary>
    public required double From { get; init; }

    /// <summary>Launch angle after, rad; the same as before where no line was found.</summary>
    public required double To { get; init; }

    /// <summary>True if a line to the pocket was found; if not, the bowler stays.</summary>
    public required bool IsFound { get; init; }

    /// <summary>Why none was found, as a sentence; empty if one was.</summary>
    public required string Reason { get; init; }

    /// <summary>How far the target moves towards the bowler's own gutter, rad; negative: inward.</summary>
    public double Move => To - From;

    /// <summary>In the units of the trade.</summary>
    public override string ToString() => Invariant($"after shot {After}: ")
        + (IsFound ? Invariant($"launch {From / Degree:F2} to {To / Degree:F2} deg") : $"stays; {Reason}");
}
