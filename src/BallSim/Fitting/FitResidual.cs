namespace BallSim.Fitting;

/// <summary>What is left between the fitted path and one measured number.</summary>
/// <param name="ShotId">The shot.</param>
/// <param name="Line">Line of the file, or 0.</param>
/// <param name="Distance">Where, m down-lane by the fitted path.</param>
/// <param name="Quantity">What was measured.</param>
/// <param name="Value">Measured less fitted, in SI.</param>
/// <param name="Standardised">The same in units of the stated noise.</param>
/// <param name="Weight">How much the point counts, 0 to 1: near 0 it was taken for an outlier.</param>
public readonly record struct FitResidual(string ShotId, int Line, double Distance, FitQuantity Quantity, double Value, double Standardised, double Weight)
{
    /// <summary>Where, and how much, in the units of the trade.</summary>
    public override string ToString() => FitText.Of(Quantity) switch { var (unit, size) => FormattableString.Invariant($"shot {ShotId} at {Distance / Units.Foot:F1} ft: {Quantity} off by {Value / size:+0.0;-0.0;0.0}{unit} ({Standardised:+0.0;-0.0;0.0} standard deviations, weight {Weight:F2})") };
}
