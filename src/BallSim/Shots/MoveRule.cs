using System.Globalization;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// When a bowler gives a line up: when the last entries lie off the pocket by more than a window on average. The new line is found by <see cref="Aim"/> on the lane as it is then: the target moves, the
/// feet stay. Moving after a few balls that miss to one side is common practice, no source; the numbers are assumed. Neglected: what a bowler reads from the pins, and moves of feet, speed or ball.
/// </summary>
public sealed record MoveRule
{
    /// <summary>How many entries are averaged, all since the last move, 1 to 100; 4, assumed. A ball that does not reach the pins has no entry; as many of those in a row also move.</summary>
    public int Entries { get; init => field = (int)Check.Range(value, 1, 100, Quantity.Number, nameof(Entries)); } = 4;

    /// <summary>How far off the pocket their mean may lie, m, 1 mm to 1 m; 2 in, assumed.</summary>
    public double Window { get; init => field = Check.Range(value, 1e-3, 1, Quantity.Length, nameof(Window)); } = 2 * Inch;

    /// <summary>The rule as a sentence, in inches.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"moves when the mean of {Entries} entries lies {Window / Inch:0.##} in off the pocket");
}
