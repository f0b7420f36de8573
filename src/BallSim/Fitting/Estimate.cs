using static System.FormattableString;

namespace BallSim.Fitting;

/// <summary>What a fit found for one number.</summary>
public readonly record struct Estimate
{
    /// <summary>Which number.</summary>
    public FitParameter Parameter { get; init; }

    /// <summary>The shot it belongs to, or null where all shots share it.</summary>
    public string? ShotId { get; init; }

    /// <summary>The value at the end of the fit, in the unit of the parameter. It says nothing where <see cref="IsDetermined"/> is false.</summary>
    public double Value { get; init; }

    /// <summary>
    /// The bias of second order that was taken off the value of the least misfit, in the unit of the parameter. Where it is as large as the standard error, the model bends too much for either to be trusted. Zero where it was not
    /// worked out: <see cref="FitOptions.CorrectBias"/> is false, a number stands at a bound or cannot be told from others, or the neighbourhood of the fit has shots that do not come as far as their tracks.
    /// </summary>
    public double Bias { get; init; }

    /// <summary>Standard error with everything known, priors included, in the unit of the parameter; infinite where the data cannot separate the number from another.</summary>
    public double StandardError { get; init; }

    /// <summary>False where the data cannot separate the number from others; <see cref="FitResult.Unseparated"/> says from which.</summary>
    public bool IsDetermined { get; init; }

    /// <summary>True where the value stands at a bound: the error and the interval are then not those of the data.</summary>
    public bool IsAtBound { get; init; }

    /// <summary>Half the width of the 95 % interval in standard errors: 1.960, or Student's where the noise is taken from the residuals.</summary>
    public double Coverage { get; init; }

    /// <summary>Lower end of the 95 % interval.</summary>
    public double Low95 => Value - Coverage * StandardError;

    /// <summary>Upper end of the 95 % interval.</summary>
    public double High95 => Value + Coverage * StandardError;

    /// <summary>Name, value and standard error, in SI.</summary>
    public override string ToString() => $"{Parameter}{(ShotId is null ? "" : $" of {ShotId}")} "
        + (!IsDetermined ? "cannot be told" : FitText.Of(Parameter) switch { var (unit, size) => Invariant($"{Value / size:G4} ± {StandardError / size:G2}{unit}{(IsAtBound ? " (at its bound)" : "")}") });
}
