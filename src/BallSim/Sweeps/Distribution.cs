using System.Globalization;
using MathNet.Numerics.Statistics;

namespace BallSim.Sweeps;

/// <summary>What a metric does over many throws, in the metric's unit; over the throws that have a value.</summary>
public readonly record struct Distribution
{
    private Distribution(double[] sorted)
    {
        Count = sorted.Length;
        Mean = sorted.Mean();
        Deviation = sorted.StandardDeviation();
        Low = SortedArrayStatistics.Quantile(sorted, 0.05);
        Median = SortedArrayStatistics.Quantile(sorted, 0.5);
        High = SortedArrayStatistics.Quantile(sorted, 0.95);
    }

    /// <summary>The distribution of some numbers; those that are NaN do not count. Of none, everything is NaN.</summary>
    public static Distribution Of(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Where(v => !double.IsNaN(v)).Order()];
        return new(sorted);
    }

    /// <summary>How many values there are.</summary>
    public int Count { get; }

    /// <summary>Their mean.</summary>
    public double Mean { get; }

    /// <summary>Their standard deviation.</summary>
    public double Deviation { get; }

    /// <summary>Standard error of the mean: the deviation over the root of the count.</summary>
    public double MeanError => Deviation / Math.Sqrt(Count);

    /// <summary>A twentieth lies below.</summary>
    public double Low { get; }

    /// <summary>Half lies below.</summary>
    public double Median { get; }

    /// <summary>A twentieth lies above.</summary>
    public double High { get; }

    /// <summary>Mean, deviation and the middle nine tenths.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Mean:F2} ± {Deviation:F2} ({Low:F2} to {High:F2})");
}
