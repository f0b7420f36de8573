using static System.FormattableString;

namespace BallSim.Fitting;

/// <summary>One metric, designed against measured. Units are those of the metric.</summary>
public sealed record MetricVerdict
{
    /// <summary>The metric.</summary>
    public required ShotMetric Metric { get; init; }

    /// <summary>Mean over the shots of what the design would have done with the releases as fitted.</summary>
    public required double Designed { get; init; }

    /// <summary>Mean over the shots of the fitted paths.</summary>
    public required double Measured { get; init; }

    /// <summary>Lower end of the interval of measured less designed.</summary>
    public required double Low { get; init; }

    /// <summary>Upper end of the interval of measured less designed.</summary>
    public required double High { get; init; }

    /// <summary>Standard deviation of the difference from shot to shot; it holds what the fit leaves open of each release.</summary>
    public required double ShotToShot { get; init; }

    /// <summary>Standard error of the mean from what all shots have in common, the fitted friction above all.</summary>
    public required double FromFit { get; init; }

    /// <summary>What counts as the same.</summary>
    public required double Tolerance { get; init; }

    /// <summary>Shots that have the metric, as designed and as measured.</summary>
    public required int Shots { get; init; }

    /// <summary>By the rule of <see cref="Verdict"/>.</summary>
    public Finding Finding => !(Low > double.NegativeInfinity) ? Finding.CannotTell
        : Low >= -Tolerance && High <= Tolerance ? Finding.AsDesigned
        : Low > Tolerance || High < -Tolerance ? Finding.Differs : Finding.CannotTell;

    /// <summary>In the units of the trade.</summary>
    public override string ToString()
    {
        var (name, unit, size) = FitText.Of(Metric);
        return Invariant($"{name}: designed {Designed / size:F2}{unit}, measured {Measured / size:F2}{unit}, difference {Low / size:+0.00;-0.00;0.00} to {High / size:+0.00;-0.00;0.00}{unit}, tolerance {Tolerance / size:F2}{unit}: {FitText.Of(Finding)}");
    }
}
