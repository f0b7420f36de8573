namespace BallSim.Shots;

/// <summary>One candidate thrown: on the bowler's line as it is, and on a line moved so that the ball enters at the pocket.</summary>
public sealed record ComparisonRow
{
    /// <summary>What was thrown.</summary>
    public required Candidate Candidate { get; init; }

    /// <summary>The shot on the line as given.</summary>
    public required Shot SameLine { get; init; }

    /// <summary>The shot on the moved line, or the reason why no line reaches the pocket.</summary>
    public required AimedShot ReAimed { get; init; }

    /// <summary>
    /// How much the bowler's scatter moves the entry of the re-aimed shot; null without one, or if scattered throws miss the pins.
    /// </summary>
    public required EntrySpread? Spread { get; init; }

    /// <summary>
    /// True if the entry angle of the re-aimed shot lies within the bowler's own scatter of that of the best row: the larger of the two
    /// rows' standard deviations. False for the best row itself and for rows without a re-aimed shot.
    /// </summary>
    public bool IsWithinScatter { get; init; }

    /// <summary>
    /// How far the line moved, rad: launch angle found less launch angle given, positive towards the bowler's own gutter; NaN without a
    /// re-aimed shot.
    /// </summary>
    public double LineMove => ReAimed.IsFound ? ReAimed.Release.LaunchAngle - Candidate.Release.LaunchAngle : double.NaN;

    /// <summary>
    /// Sentences about holes that the track meets, <see cref="Track.Warnings"/>: of the re-aimed shot, or of that on the given line where no line reaches the pocket.
    /// </summary>
    public IReadOnlyList<string> TrackWarnings => (ReAimed.Shot ?? SameLine).Track.Warnings(Candidate.Holes);

    /// <summary>
    /// How far the entry angle of the re-aimed shot lies outside the band of <see cref="Comparison"/>, rad: zero inside, positive infinity
    /// without a re-aimed shot.
    /// </summary>
    public double DistanceFromBand => ReAimed.Shot is { } shot
        ? Math.Max(0, Math.Max(Comparison.LowestGoodAngle - shot.Entry.Angle, shot.Entry.Angle - Comparison.HighestGoodAngle))
        : double.PositiveInfinity;

    /// <summary>The candidate, and how it must be thrown.</summary>
    public override string ToString() => $"{Candidate}: {ReAimed}";
}
