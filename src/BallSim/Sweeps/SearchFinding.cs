namespace BallSim.Sweeps;

/// <summary>One candidate of the trade-off: no other that was tried is as good in every goal and better in one.</summary>
/// <param name="Values">The factors' values, SI, in their order.</param>
/// <param name="Goals">What it reaches of each goal, by fresh throws, with the interval those leave.</param>
public sealed record SearchFinding(IReadOnlyList<double> Values, IReadOnlyList<GoalValue> Goals)
{
    /// <summary>The goals reached.</summary>
    public override string ToString() => string.Join(", ", Goals);
}
