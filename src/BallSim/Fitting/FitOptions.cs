using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Fitting;

/// <summary>What a fit looks for, and how.</summary>
public sealed record FitOptions
{
    /// <summary>
    /// The usual fit: the three numbers of the friction law that paths tell apart, and of each release the board, the launch angle, the speed, the spin rate, the axis rotation and the axis tilt, each with the bowler's
    /// scatter about the given release as its prior.
    /// </summary>
    /// <param name="scatter">How much the releases differ from the given one; null: the default scatter, assumed.</param>
    public static FitOptions For(Scatter? scatter = null) => new() { Parameters = [new(FitParameter.Dry), new(FitParameter.Floor), new(FitParameter.FilmScale), .. Release(scatter ?? new())] };

    /// <summary>The six numbers of a release, each with its prior; those without scatter are held.</summary>
    /// <param name="scatter">How much the releases differ from the given one.</param>
    public static IReadOnlyList<FreeParameter> Release(Scatter scatter)
    {
        ArgumentNullException.ThrowIfNull(scatter);
        (FitParameter Parameter, double Deviation)[] all =
        [
            (FitParameter.Board, scatter.Board), (FitParameter.LaunchAngle, scatter.LaunchAngle), (FitParameter.Speed, scatter.Speed),
            (FitParameter.SpinRate, scatter.SpinRate), (FitParameter.AxisRotation, scatter.AxisRotation), (FitParameter.AxisTilt, scatter.AxisTilt),
        ];
        return [.. all.Where(p => p.Deviation > 0).Select(p => new FreeParameter(p.Parameter, new Prior(p.Deviation)))];
    }

    /// <summary>What is to be found, at least one.</summary>
    public required IReadOnlyList<FreeParameter> Parameters
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            Check.That(value.Count > 0, "Parameters is empty; a fit needs something to find", nameof(Parameters));
            Check.That(value.DistinctBy(p => p.Parameter).Count() == value.Count, "Parameters names a parameter twice", nameof(Parameters));
            field = [.. value];
        }
    }

    /// <summary>How well the device measures.</summary>
    public TrackNoise Noise { get; init; } = new();

    /// <summary>True: the noise is only known up to a factor, and the spread of the residuals sets it; the covariance is scaled by chi-square over degrees of freedom. False: the noise is what it is said to be.</summary>
    public bool NoiseFromResiduals { get; init; }

    /// <summary>What outliers may do; <see cref="RobustLoss.Cauchy"/>.</summary>
    public RobustLoss Loss { get; init; } = RobustLoss.Cauchy;

    /// <summary>
    /// Whether the bias of second order is taken off the estimates; true. A path bends with the release, every shot brings a release of its own, and so what the bending does to the friction does not fade with more shots: from 18 shots it is a
    /// quarter of a standard error of <see cref="FitParameter.Dry"/> (computed, and counted on a thousand tracks). It takes priors at their word: truths scatter about their middles as they say. False: the values of the least misfit.
    /// </summary>
    public bool CorrectBias { get; init; } = true;

    /// <summary>How shots are computed: tolerance, small forces, and the friction where the fit starts. The tolerance, 1e-5 m here, must be well below the noise. On oil and with a fresh
    /// cover the search itself takes 1e-5 m at the finest: with the dips of the fresh cover as sharp as they are, slopes are not to be had.</summary>
    public SimulatorOptions Simulator { get; init => field = value ?? throw new ArgumentNullException(nameof(Simulator)); } = new() { Tolerance = 1e-5 };

    /// <summary>The search ends when the rest of the way is less than this share of a standard error, on average over the parameters, 1e-12 to 0.5; 0.03.</summary>
    public double Precision { get; init => field = Check.Range(value, 1e-12, 0.5, Quantity.Number, nameof(Precision)); } = 0.03;

    /// <summary>Steps after which the search is given up, 1 to 10 000; 60.</summary>
    public int MaxIterations { get; init => field = (int)Check.Range(value, 1, 10_000, Quantity.Number, nameof(MaxIterations)); } = 60;

    /// <summary>What is free, the noise and the loss.</summary>
    public override string ToString() => $"{string.Join(", ", Parameters.Select(p => p.Parameter))} free; noise {Noise}; {Loss}";
}
