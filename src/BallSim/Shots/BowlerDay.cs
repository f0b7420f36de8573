using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// One bowler's day in short: the first line without scatter, on the lane as it was before the day and as it is after it. The difference is what the lane did, with no luck of the hand in it.
/// </summary>
/// <param name="Bowler">Place of the bowler in the plan's list, from 0.</param>
/// <param name="Shots">Shots thrown.</param>
/// <param name="Moves">Moves in the course of the day, the line looked for before it not counted.</param>
/// <param name="OilTaken">Oil taken off the lane, m³: taken up less laid down.</param>
/// <param name="EntryBefore">The first line on the lane before the day, or null if it does not reach the pins.</param>
/// <param name="EntryAfter">The same on the lane after it, or null.</param>
public sealed record BowlerDay(int Bowler, int Shots, int Moves, double OilTaken, Entry? EntryBefore, Entry? EntryAfter)
{
    /// <summary>How many boards to the left the entry of the first line has drifted, or null where one of the two is missing. Earlier hook moves a right-hander's entry left, a left-hander's right.</summary>
    public double? Drift => EntryAfter?.Board - EntryBefore?.Board;

    /// <summary>Shots, moves, the oil, and the entry before and after.</summary>
    public override string ToString() => Invariant($"bowler {Bowler}: {Shots} shots, {Moves} {(Moves == 1 ? "move" : "moves")}, {OilTaken / Microlitre:F1} µL of oil; ") + (EntryBefore is { } before && EntryAfter is { } after ? Invariant($"entry on board {before.Board:F1}, afterwards {after.Board:F1}") : "no entry to compare");
}
