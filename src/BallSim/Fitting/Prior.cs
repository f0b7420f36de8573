namespace BallSim.Fitting;

/// <summary>What is known of a number before the fit: a normal distribution.</summary>
public readonly record struct Prior
{
    /// <summary>A prior.</summary>
    /// <param name="standardDeviation">Standard deviation, above 0, in the unit of the parameter.</param>
    /// <param name="mean">Mean, in the unit of the parameter; null: where the fit starts, which for a number of the release is what the shot's own release says.</param>
    public Prior(double standardDeviation, double? mean = null)
    {
        StandardDeviation = Check.Range(standardDeviation, 1e-15, 1e15, Quantity.Number);
        Mean = mean is { } m ? Check.Range(m, -1e15, 1e15, Quantity.Number, nameof(mean)) : null;
    }

    /// <summary>Standard deviation, in the unit of the parameter.</summary>
    public double StandardDeviation { get; }

    /// <summary>Mean, in the unit of the parameter; null: where the fit starts.</summary>
    public double? Mean { get; }

    /// <summary>Mean and standard deviation, in the unit of the parameter.</summary>
    public override string ToString() => FormattableString.Invariant($"{(Mean is { } mean ? mean.ToString("G4", System.Globalization.CultureInfo.InvariantCulture) : "start")} ± {StandardDeviation:G3}");
}
