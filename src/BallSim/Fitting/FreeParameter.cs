namespace BallSim.Fitting;

/// <summary>A number that a fit moves: which, within which bounds, with what known beforehand.</summary>
public sealed record FreeParameter
{
    private readonly FitParameter parameter;

    /// <summary>A free number within the bounds that its kind allows.</summary>
    /// <param name="parameter">Which.</param>
    /// <param name="prior">What is known of it beforehand, or null.</param>
    public FreeParameter(FitParameter parameter, Prior? prior = null)
    {
        Check.That(Enum.IsDefined(parameter), $"parameter = {(int)parameter} is no parameter of a fit", nameof(parameter));
        this.parameter = parameter;
        Prior = prior;
        (Low, High) = ParameterFacts.Range(parameter);
        IsPerShot = ParameterFacts.BelongsToRelease(parameter);
    }

    /// <summary>Which number.</summary>
    public FitParameter Parameter => parameter;

    /// <summary>What is known of it beforehand; null: nothing but the bounds.</summary>
    public Prior? Prior { get; init; }

    /// <summary>Least value, in the unit of the parameter; the bounds of its kind are those of the type that carries it (such as 0.01 to 1 for <see cref="FitParameter.Dry"/>).</summary>
    public double Low { get; init => field = Check.Range(value, ParameterFacts.Range(parameter).Low, ParameterFacts.Range(parameter).High, ParameterFacts.Unit(parameter), nameof(Low)); }

    /// <summary>Greatest value, in the unit of the parameter.</summary>
    public double High { get; init => field = Check.Range(value, ParameterFacts.Range(parameter).Low, ParameterFacts.Range(parameter).High, ParameterFacts.Unit(parameter), nameof(High)); }

    /// <summary>Whether every shot has one of its own. By default the numbers of the release have, those of ball and lane have not; shots on different lanes may each have a friction of their own, and one bowler's a common tilt.</summary>
    public bool IsPerShot { get; init; }

    /// <summary>The parameter, its bounds and what is known of it.</summary>
    public override string ToString() => FitText.Of(Parameter) switch { var (unit, size) => FormattableString.Invariant($"{Parameter} from {Low / size:G4} to {High / size:G4}{unit}") + (Prior is { } known ? FormattableString.Invariant($", known to ± {known.StandardDeviation / size:G3}{unit}") : "") + (IsPerShot ? ", for each shot" : "") };
}
