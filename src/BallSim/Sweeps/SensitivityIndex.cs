using System.Globalization;

namespace BallSim.Sweeps;

/// <summary>What one factor has to do with the variance of a metric, with a confidence interval by bootstrap.</summary>
/// <param name="Name">The factor.</param>
/// <param name="First">First-order index: the share of the variance that would go if this factor alone were known. It is an estimate, and may fall a little below 0.</param>
/// <param name="FirstLow">Lower end of its interval.</param>
/// <param name="FirstHigh">Upper end of its interval.</param>
/// <param name="Total">Total index: the share that would stay if everything but this factor were known; above <paramref name="First"/> by what it does together with others.</param>
/// <param name="TotalLow">Lower end of its interval.</param>
/// <param name="TotalHigh">Upper end of its interval.</param>
public readonly record struct SensitivityIndex(string Name, double First, double FirstLow, double FirstHigh, double Total, double TotalLow, double TotalHigh)
{
    /// <summary>Both indices with their intervals.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Name}: first {First:F3} ({FirstLow:F3} to {FirstHigh:F3}), total {Total:F3} ({TotalLow:F3} to {TotalHigh:F3})");
}
