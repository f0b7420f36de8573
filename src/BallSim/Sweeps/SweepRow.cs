using BallSim.Ensembles;

namespace BallSim.Sweeps;

/// <summary>One row of a sweep.</summary>
/// <param name="Row">Its number, from 0.</param>
/// <param name="Values">The factors' values, SI.</param>
/// <param name="Outcome">What came out; null for a failed row.</param>
/// <param name="Failure">Why there is no outcome; null if there is one. A ball that ends in the gutter is an outcome, not a failure.</param>
public sealed record SweepRow(int Row, IReadOnlyList<double> Values, Outcome? Outcome, string? Failure)
{
    /// <summary>The factors, and what came of them.</summary>
    public override string ToString() => FormattableString.Invariant($"row {Row}: {string.Join(", ", Values.Select(v => v.ToString("G6", System.Globalization.CultureInfo.InvariantCulture)))}: ") + (Failure ?? Outcome?.ToString());
}
