using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>The ball changed from one way of moving to another.</summary>
/// <param name="From">Phase before.</param>
/// <param name="To">Phase after.</param>
/// <param name="Time">When, s.</param>
/// <param name="X">Across, m, positive to the right.</param>
/// <param name="Distance">Down-lane from the foul line, m.</param>
/// <param name="Board">Continuous board, counted from the right.</param>
public readonly record struct PhaseChange(ShotPhase From, ShotPhase To, double Time, double X, double Distance, double Board)
{
    /// <summary>In the units of the trade.</summary>
    public override string ToString() => Invariant($"{From} to {To} at {Distance / Foot:F1} ft, board {Board:F1}, {Time:F3} s");
}
