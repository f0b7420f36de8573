using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// Where the ball stops skidding as the eye sees it: the turning rate (change of heading per metre of path, averaged over one revolution centred on the place) first reaches half its
/// maximum between landing and pins. It is another place than the start of roll: the ball hooks most while it still slides.
/// </summary>
/// <param name="Time">When, s.</param>
/// <param name="X">Across, m, positive to the right.</param>
/// <param name="Distance">Down-lane from the foul line, m.</param>
/// <param name="Board">Continuous board, counted from the right.</param>
/// <param name="GreatestTurningRate">The maximum, rad per metre of path.</param>
public readonly record struct EndOfSkid(double Time, double X, double Distance, double Board, double GreatestTurningRate)
{
    /// <summary>In the units of the trade.</summary>
    public override string ToString() => Invariant($"board {Board:F1} at {Distance / Foot:F1} ft (turns by up to {GreatestTurningRate / Degree * Foot:F2} deg/ft)");
}
