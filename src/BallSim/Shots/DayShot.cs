using BallSim.Releases;

namespace BallSim.Shots;

/// <summary>One row of a day on a lane. A throw that came to nothing has its row too, with the reason.</summary>
public sealed record DayShot
{
    /// <summary>Number in the day, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Game and frame, from 1.</summary>
    public required int Game { get; init; }

    /// <summary>Frame in the game, 1 to 10.</summary>
    public required int Frame { get; init; }

    /// <summary>True for the second ball of a frame.</summary>
    public required bool IsSecondBall { get; init; }

    /// <summary>Place of the bowler in the plan's list, from 0.</summary>
    public required int Bowler { get; init; }

    /// <summary>The bowler's line: the release without the scatter.</summary>
    public required Release Line { get; init; }

    /// <summary>How it was thrown, or null if the scatter led to no possible release.</summary>
    public Release? Thrown { get; init; }

    /// <summary>Why the shot ended, or null if it was not thrown.</summary>
    public StopReason? StopReason { get; init; }

    /// <summary>What became of it, as a sentence: the stop, or why it was not thrown.</summary>
    public required string Sentence { get; init; }

    /// <summary>Where and how the ball met the pins, or null if it did not reach them.</summary>
    public Entry? Entry { get; init; }

    /// <summary>Oil taken up, m³.</summary>
    public double TakenUp { get; init; }

    /// <summary>Oil laid down again, m³.</summary>
    public double LaidDown { get; init; }

    /// <summary>What the cover gained by its own history, m³; see <see cref="LaneWear.CoverGain"/>.</summary>
    public double CoverGain { get; init; }

    /// <summary>Wanted but not there, m³; see <see cref="LaneWear.Withheld"/>.</summary>
    public double Withheld { get; init; }

    /// <summary>Oil on the lane after the shot, m³.</summary>
    public required double OilLeft { get; init; }

    /// <summary>What became of it.</summary>
    public override string ToString() => FormattableString.Invariant($"shot {Number}, game {Game}, bowler {Bowler}: {Sentence}");
}
