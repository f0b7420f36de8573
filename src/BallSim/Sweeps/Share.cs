using System.Globalization;
using MathNet.Numerics.Distributions;

namespace BallSim.Sweeps;

/// <summary>How many of a number of independent throws did something, and within which bounds the true share lies.</summary>
/// <remarks>
/// Wilson's interval (Wilson, J. Am. Stat. Assoc. 22 (1927) 209): with p = hits/n and the normal quantile z of the confidence,
/// <code>
/// (p + z²/2n ± z √(p (1 - p)/n + z²/4n²)) / (1 + z²/n)
/// </code>
/// Its coverage swings about the nominal one and comes near it on average; at shares next to 0 and 1 too it stays within [0, 1].
/// </remarks>
public readonly record struct Share
{
    /// <summary>A share from its counts.</summary>
    /// <param name="hits">How many did.</param>
    /// <param name="count">Out of how many, 1 or more.</param>
    /// <param name="confidence">Confidence of the interval, 0.5 to 0.9999.</param>
    public Share(int hits, int count, double confidence = 0.95)
    {
        Check.Range(count, 1, int.MaxValue, Quantity.Number);
        Check.Range(hits, 0, count, Quantity.Number);
        Check.Range(confidence, 0.5, 0.9999, Quantity.Number);
        (Hits, Count, Confidence) = (hits, count, confidence);
        double n = count, p = hits / n, z = Normal.InvCDF(0, 1, 0.5 + confidence / 2), z2 = z * z;
        var middle = (p + z2 / (2 * n)) / (1 + z2 / n);
        var half = z * Math.Sqrt(p * (1 - p) / n + z2 / (4 * n * n)) / (1 + z2 / n);
        (Low, High) = (hits == 0 ? 0 : Math.Max(0, middle - half), hits == count ? 1 : Math.Min(1, middle + half));
    }

    /// <summary>How many did.</summary>
    public int Hits { get; }

    /// <summary>Out of how many.</summary>
    public int Count { get; }

    /// <summary>Confidence of the interval.</summary>
    public double Confidence { get; }

    /// <summary>The share seen, in [0, 1].</summary>
    public double Value => Count == 0 ? double.NaN : (double)Hits / Count;

    /// <summary>Lower end of the interval.</summary>
    public double Low { get; }

    /// <summary>Upper end of the interval.</summary>
    public double High { get; }

    /// <summary>In per cent, with the interval.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{100 * Value:F1} % ({100 * Low:F1} to {100 * High:F1} %)");
}
