using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>The point of the path, foul line to pins, that is farthest towards the bowler's own gutter: the greatest hand · x, ends included.</summary>
/// <param name="Time">When, s.</param>
/// <param name="X">Across, m, positive to the right.</param>
/// <param name="Distance">Down-lane from the foul line, m.</param>
/// <param name="Board">Continuous board, counted from the right.</param>
/// <param name="IsEnd">True where it is an end of the path (a ball that never came back, or never went out) instead of a turning point.</param>
public readonly record struct Breakpoint(double Time, double X, double Distance, double Board, bool IsEnd)
{
    /// <summary>In the units of the trade.</summary>
    public override string ToString() => Invariant($"board {Board:F1} at {Distance / Foot:F1} ft{(IsEnd ? " (an end of the path)" : "")}");
}
