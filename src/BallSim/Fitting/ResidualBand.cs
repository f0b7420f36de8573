namespace BallSim.Fitting;

/// <summary>The residuals of a stretch of lane: a mean that is not near zero means that the model's path is of another shape than the tracks.</summary>
/// <param name="From">Beginning of the stretch, m.</param>
/// <param name="To">End of the stretch, m.</param>
/// <param name="Quantity">What was measured.</param>
/// <param name="Count">How many residuals.</param>
/// <param name="Mean">Weighted mean of measured less fitted, in SI.</param>
/// <param name="RootMeanSquare">Weighted root mean square, in units of the stated noise; 1 is as good as the noise.</param>
public readonly record struct ResidualBand(double From, double To, FitQuantity Quantity, int Count, double Mean, double RootMeanSquare)
{
    /// <summary>Where, and how much, in the units of the trade.</summary>
    public override string ToString() => FitText.Of(Quantity) switch { var (unit, size) => FormattableString.Invariant($"{From / Units.Foot:F0} to {To / Units.Foot:F0} ft: {Quantity} off by {Mean / size:+0.0;-0.0;0.0}{unit} in the mean, {RootMeanSquare / size:F1}{unit} root mean square, of {Count}") };
}
