namespace BallSim.Fitting;

/// <summary>Numbers that the data cannot tell apart: they move the tracks alike, and the fit does not pretend.</summary>
/// <param name="Asked">The number that was asked for.</param>
/// <param name="Others">The numbers it cannot be told from.</param>
/// <param name="Correlation">
/// The correlation of the two estimates, -1 to 1, or the multiple correlation, 0 to 1, of the one with several others together: the share of its effect on the tracks, in the metric of the noise, that the others can stand in for.
/// </param>
/// <param name="Sentence">The finding in words.</param>
public sealed record Confounding(FitParameter Asked, IReadOnlyList<FitParameter> Others, double Correlation, string Sentence)
{
    /// <summary>The sentence.</summary>
    public override string ToString() => Sentence;
}
