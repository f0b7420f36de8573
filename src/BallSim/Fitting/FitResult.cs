using System.Text;
using MathNet.Numerics.LinearAlgebra;
using static System.FormattableString;

namespace BallSim.Fitting;

/// <summary>What a fit found, and how far it can be trusted. Estimates stand in the order of the parameters, the shared ones first, then those of each shot.</summary>
public sealed record FitResult
{
    private readonly Matrix<double> covariance;
    private readonly int shared;
    private readonly int local;

    internal FitResult(Matrix<double> covariance, int shared, int local) => (this.covariance, this.shared, this.local) = (covariance, shared, local);

    /// <summary>All numbers found.</summary>
    public required IReadOnlyList<Estimate> Estimates { get; init; }

    /// <summary>The shots as fitted, in the order given.</summary>
    public required IReadOnlyList<FittedShot> Shots { get; init; }

    /// <summary>Every residual.</summary>
    public required IReadOnlyList<FitResidual> Residuals { get; init; }

    /// <summary>Residuals by stretches of ten feet.</summary>
    public required IReadOnlyList<ResidualBand> ResidualsByDistance { get; init; }

    /// <summary>What the data cannot separate; empty: everything asked for.</summary>
    public required IReadOnlyList<Confounding> Unseparated { get; init; }

    /// <summary>Sum of the squared residuals in units of the stated noise, priors included. With a robust loss each is multiplied by its weight, and the sum divided by what that takes off normal noise, so that it stays comparable with the degrees of freedom.</summary>
    public required double ChiSquare { get; init; }

    /// <summary>Measured numbers, each counted by its weight, and priors, less the numbers fitted.</summary>
    public required double DegreesOfFreedom { get; init; }

    /// <summary>Chi-square over degrees of freedom: about 1 if the model is right and the noise as stated.</summary>
    public double ReducedChiSquare => ChiSquare / DegreesOfFreedom;

    /// <summary>Probability of a chi-square at least as large from noise alone, 0 to 1. Below 0.001 the model, the lane or the stated noise is wrong; above 0.999 the noise is overstated. With a robust loss it is a guide, not exact, and outliers hardly count.</summary>
    public double Probability => DegreesOfFreedom > 0 ? 1 - MathNet.Numerics.Distributions.ChiSquared.CDF(DegreesOfFreedom, ChiSquare) : double.NaN;

    /// <summary>Whether the search came to its end.</summary>
    public required bool IsConverged { get; init; }

    /// <summary>How the search ended, in words.</summary>
    public required string Reason { get; init; }

    /// <summary>Steps of the search.</summary>
    public required int Iterations { get; init; }

    /// <summary>Times that all shots were thrown, each with all its derivatives.</summary>
    public required int Evaluations { get; init; }

    /// <summary>What was odd about the tracks, with the shot each remark belongs to.</summary>
    public required IReadOnlyList<(string ShotId, QualityNote Note)> Notes { get; init; }

    /// <summary>The estimate of a shared number, or of a shot's own.</summary>
    /// <param name="parameter">Which.</param>
    /// <param name="shot">Index of the shot, for a number that every shot has of its own.</param>
    /// <exception cref="ArgumentException">The fit did not look for it.</exception>
    public Estimate this[FitParameter parameter, int shot = 0] => Estimates[IndexOf(parameter, shot)];

    /// <summary>Covariance of two estimates, in the product of their units.</summary>
    /// <param name="i">Index in <see cref="Estimates"/>.</param>
    /// <param name="j">Index in <see cref="Estimates"/>.</param>
    public double Covariance(int i, int j) => covariance[i, j];

    /// <summary>Correlation of two estimates, -1 to 1.</summary>
    /// <param name="i">Index in <see cref="Estimates"/>.</param>
    /// <param name="j">Index in <see cref="Estimates"/>.</param>
    public double Correlation(int i, int j) => covariance[i, j] / Math.Sqrt(covariance[i, i] * covariance[j, j]);

    /// <summary>Correlation of two shared estimates, -1 to 1.</summary>
    public double Correlation(FitParameter first, FitParameter second) => Correlation(IndexOf(first, 0), IndexOf(second, 0));

    /// <summary>The shared estimates and the quality of the fit, line by line, in SI.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.AppendLine(Invariant($"{Shots.Count} shots, {Residuals.Count} numbers; {Reason} after {Iterations} steps; chi-square {ChiSquare:F1} on {DegreesOfFreedom:F1} degrees of freedom"));
        foreach (var estimate in Estimates.Take(shared))
        {
            text.AppendLine(estimate.ToString());
        }
        foreach (var one in Unseparated)
        {
            text.AppendLine(one.Sentence);
        }
        return text.ToString();
    }

    internal int SharedCount => shared;

    internal int LocalCount => local;

    private int IndexOf(FitParameter parameter, int shot)
    {
        Check.Range(shot, 0, Shots.Count - 1, Quantity.Number, nameof(shot));
        for (var i = 0; i < shared + local; i++)
        {
            if (Estimates[i].Parameter == parameter)
            {
                return i < shared ? i : i + shot * local;
            }
        }
        throw new ArgumentException($"the fit did not look for {parameter}; it looked for {string.Join(", ", Estimates.Take(shared + local).Select(e => e.Parameter))}", nameof(parameter));
    }
}
