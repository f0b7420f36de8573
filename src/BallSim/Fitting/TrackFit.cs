using BallSim.Shots;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using static BallSim.Units;

namespace BallSim.Fitting;

/// <summary>
/// Fits tracked shots: what cannot be known beforehand, the friction of this lane and the releases of these shots, from where the ball was seen. The model is the library's own equations of motion, and their sensitivities come from the same
/// run, on numbers that carry derivatives.
/// </summary>
/// <remarks>
/// The misfit is the sum of the losses of all residuals in units of the stated noise, and of the squared distances from the priors. The covariance is that of an M-estimate, H⁻¹ M H⁻¹ with H = ψ̄' JᵀJ and M = mean(ψ²) JᵀJ over the measured
/// numbers (P. J. Huber, Ann. Stat. 1 (1973) 799, from memory), priors added to both: with least squares it is (JᵀJ)⁻¹. It takes the noise as independent and as large as stated, unless <see cref="FitOptions.NoiseFromResiduals"/>.
/// The values are those of the least misfit less their bias from the bending of the model (<see cref="FitOptions.CorrectBias"/>); residuals and chi-square are those of the least misfit itself.
/// </remarks>
public static class TrackFit
{
    private const double Band = 10 * Foot;

    // The rough search: so much coarser, and ended so many standard errors before its goal.
    private const double RoughTolerance = 10;
    private const double RoughPrecision = 0.3;

    // The fresh fraction of the cover has narrow dips, and a slope through a dip is worse than the value: measured, the misfit stops falling some hundredths of a standard error from where the slopes say.
    private const double SolverFloor = 0.15;

    // The finest tolerance here at which stages leave the dips out and steps make them whole: sharp ones leave the slopes to chance (measured at 1e-6: standard errors a quarter off; at 1e-8 the search ended beside the least misfit).
    private const double FinestMended = 1e-5;

    /// <summary>Fits shots together.</summary>
    /// <param name="shots">The shots, at least one.</param>
    /// <param name="options">What to look for.</param>
    /// <param name="cancellation">Stops the fit.</param>
    /// <exception cref="ArgumentException">There is no shot, or a shot has nothing measured, or a bound or a prior leaves no place to start.</exception>
    public static FitResult Of(IReadOnlyList<FitShot> shots, FitOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(shots);
        ArgumentNullException.ThrowIfNull(options);
        Check.That(shots.Count > 0, "there is no shot to fit", nameof(shots));
        var asked = options.Simulator;
        if (asked.CoverOil && asked.FreshCover && shots.Any(s => s.Lane.GivenFriction is null))
        {
            options = options with { Simulator = asked with { Tolerance = Math.Max(FinestMended, asked.Tolerance) } };
        }
        var blocks = new ShotBlocks(shots, options.Parameters, options.Noise, options.Simulator);
        var (low, high) = (Along(blocks, shots.Count, (p, _) => p.Low), Along(blocks, shots.Count, (p, _) => p.High));
        for (var i = 0; i < low.Length; i++)
        {
            Check.That(low[i] < high[i], $"a bound leaves no room: [{Check.Text(low[i])}, {Check.Text(high[i])}]", nameof(options));
        }
        var rough = Rough(shots, options, low, high, cancellation);
        if (!double.IsFinite(rough.Cost))
        {
            throw new ArgumentException($"the fit cannot start: {rough.Reason}; give a release or a friction nearer to the shots", nameof(shots));
        }
        var search = new ArrowLeastSquares(blocks, low, high, options.Precision, SolverFloor, options.MaxIterations);
        var solution = search.Minimise(rough.Values, options.Loss, cancellation);
        solution = solution with { Iterations = rough.Iterations + solution.Iterations, Evaluations = rough.Evaluations + solution.Evaluations };
        return Told(blocks, shots, options, asked, search, solution, low, high);
    }

    // Most of the way with coarse throws, from where the tracks point; if that leads nowhere, from the releases as given. Cauchy's loss may have several minima: Huber's leads to the right one.
    private static ArrowSolution Rough(IReadOnlyList<FitShot> shots, FitOptions options, double[] low, double[] high, CancellationToken cancellation)
    {
        var coarse = options.Simulator with { Tolerance = Math.Min(1e-2, RoughTolerance * options.Simulator.Tolerance) };
        var blocks = new ShotBlocks(shots, options.Parameters, options.Noise, coarse);
        var search = new ArrowLeastSquares(blocks, low, high, Math.Max(RoughPrecision, options.Precision), RoughPrecision, options.MaxIterations);
        var loss = options.Loss == RobustLoss.Cauchy ? RobustLoss.Huber : options.Loss;
        var found = search.Minimise(Along(blocks, shots.Count, (p, s) => s >= 0 ? StartingLine.Of(shots[s], p.Parameter) ?? blocks.Before(s, p) : blocks.Before(0, p)), loss, cancellation);
        if (!found.IsConverged)
        {
            var other = search.Minimise(Along(blocks, shots.Count, (p, s) => blocks.Before(Math.Max(s, 0), p)), loss, cancellation);
            found = other.Cost < found.Cost ? other : found;
        }
        return found;
    }

    // A number for every parameter of the fit: shared ones first (shot -1), then shot by shot.
    private static double[] Along(ShotBlocks blocks, int shots, Func<FreeParameter, int, double> value) =>
        [.. blocks.Shared.Select(p => value(p, -1)), .. Enumerable.Range(0, shots).SelectMany(s => blocks.Local.Select(p => value(p, s)))];

    private static FitResult Told(ShotBlocks blocks, IReadOnlyList<FitShot> shots, FitOptions options, SimulatorOptions asked, ArrowLeastSquares search, ArrowSolution found, double[] low, double[] high)
    {
        var (shared, local) = (blocks.SharedCount, blocks.Local.Length);
        var residuals = Residuals(blocks, shots, options, found);
        double chiSquare = residuals.Sum(r => r.Weight * r.Standardised * r.Standardised) / Loss.MeanWeightedSquare(options.Loss), freedom = residuals.Sum(r => r.Weight) - found.Values.Length;
        foreach (var rows in found.Rows)
        {
            for (var k = 0; k < rows.Count; k++)
            {
                if (!rows.IsObservation[k])
                {
                    chiSquare += rows.Residuals[k] * rows.Residuals[k];
                    freedom++;
                }
            }
        }
        var (covariance, inverse, curvature) = Covariance(search, found, options.Loss);
        if (options.NoiseFromResiduals && freedom > 0)
        {
            covariance *= chiSquare / freedom;
        }
        var unseparated = Unseparated(blocks, shots, options, search, found);
        bool AtBound(int i) => found.Values[i] <= low[i] || found.Values[i] >= high[i];
        // Where the data leave a direction open there is no neighbourhood to look at.
        var bias = options.CorrectBias && unseparated.Length == 0 && !Enumerable.Range(0, found.Values.Length).Any(AtBound)
            ? CurvatureBias.Of(blocks, shots, options.Simulator, found, covariance, inverse, curvature)
            : new double[found.Values.Length];
        double[] values = [.. found.Values.Select((v, i) => Math.Clamp(v - bias[i], low[i], high[i]))];
        var lost = unseparated.SelectMany(c => Separation.StandsInForLaw(c.Asked) && c.Others.Count != 1 ? [c.Asked] : c.Others.Where(o => blocks.Shared.Any(p => p.Parameter == o)).Append(c.Asked)).ToHashSet();
        var coverage = options.NoiseFromResiduals && freedom > 0 ? StudentT.InvCDF(0, 1, freedom, 0.975) : Normal.InvCDF(0, 1, 0.975);
        Estimate Made(int i)
        {
            var p = i < shared ? blocks.Shared[i] : blocks.Local[(i - shared) % local];
            var determined = !lost.Contains(p.Parameter) || p.IsPerShot;
            return new()
            {
                Parameter = p.Parameter,
                ShotId = i < shared ? null : shots[(i - shared) / local].Track.Id,
                Value = values[i],
                Bias = bias[i],
                StandardError = determined ? Math.Sqrt(covariance[i, i]) : double.PositiveInfinity,
                IsDetermined = determined,
                IsAtBound = AtBound(i),
                Coverage = coverage,
            };
        }
        return new(covariance, shared, local)
        {
            Estimates = [.. Enumerable.Range(0, found.Values.Length).Select(Made)],
            Shots = [.. shots.Select((shot, s) => FittedShot.Of(shot, asked, blocks.ValuesAt(s, values.AsSpan(0, shared), values.AsSpan(shared + s * local, local))))],
            Residuals = residuals,
            ResidualsByDistance = Bands(residuals),
            Unseparated = unseparated,
            ChiSquare = chiSquare,
            DegreesOfFreedom = freedom,
            IsConverged = found.IsConverged,
            Reason = found.Reason,
            Iterations = found.Iterations,
            Evaluations = found.Evaluations,
            Notes = [.. shots.SelectMany((shot, s) => shot.Track.Notes.Concat(blocks.Notes[s]).Select(n => (shot.Track.Id, n)))],
        };
    }

    private static FitResidual[] Residuals(ShotBlocks blocks, IReadOnlyList<FitShot> shots, FitOptions options, ArrowSolution found)
    {
        List<FitResidual> all = [];
        for (var s = 0; s < shots.Count; s++)
        {
            for (var k = 0; k < blocks.Observations[s].Length; k++)
            {
                var (o, r) = (blocks.Observations[s][k], found.Rows[s].Residuals[k]);
                // Where only the time is known, the nominal speed says about where.
                var distance = o.Point.Distance ?? shots[s].Release.Speed * o.Point.Time!.Value;
                all.Add(new(shots[s].Track.Id, o.Point.Line, distance, o.Quantity, -r * o.Deviation, -r, Loss.Weight(options.Loss, r)));
            }
        }
        return [.. all];
    }

    private static ResidualBand[] Bands(FitResidual[] residuals) =>
    [
        .. from r in residuals
           group r by (r.Quantity, Band: (int)Math.Floor(r.Distance / Band)) into band
           orderby band.Key.Quantity, band.Key.Band
           let weight = band.Sum(r => r.Weight)
           select new ResidualBand(band.Key.Band * Band, (band.Key.Band + 1) * Band, band.Key.Quantity, band.Count(),
               band.Sum(r => r.Weight * r.Value) / weight, Math.Sqrt(band.Sum(r => r.Weight * r.Standardised * r.Standardised) / weight)),
    ];

    // With H⁻¹ and the mean curvature ψ̄' of the loss.
    private static (Matrix<double> Covariance, Matrix<double> Inverse, double Curvature) Covariance(ArrowLeastSquares search, ArrowSolution found, RobustLoss loss)
    {
        double curvature = 0, square = 0;
        var count = 0;
        foreach (var rows in found.Rows)
        {
            for (var k = 0; k < rows.Count; k++)
            {
                if (rows.IsObservation[k])
                {
                    var r = rows.Residuals[k];
                    curvature += Loss.Curvature(loss, r);
                    square += Math.Pow(Loss.Weight(loss, r) * r, 2);
                    count++;
                }
            }
        }
        if (loss == RobustLoss.LeastSquares)
        {
            var exact = Inverse(search.Information(found.Rows, (_, _) => 1));
            return (exact, exact, 1);
        }
        (curvature, square) = (Math.Max(curvature / count, 0.1), square / count);
        var inverse = Inverse(search.Information(found.Rows, (_, isObservation) => isObservation ? curvature : 1));
        // Never less than the stated noise would give: few residuals may be small by chance.
        return (inverse * search.Information(found.Rows, (_, isObservation) => isObservation ? Math.Max(square, Loss.MeanPull(loss)) : 1) * inverse, inverse, curvature);
    }

    private static Matrix<double> Inverse(Matrix<double> information)
    {
        // In units in which the diagonal is one; a hair on it keeps what the data cannot separate from dividing by zero, and makes its error enormous.
        var scale = Vector<double>.Build.Dense(information.RowCount, i => 1 / Math.Sqrt(Math.Max(information[i, i], 1e-300)));
        var d = Matrix<double>.Build.DiagonalOfDiagonalVector(scale);
        var unit = d * information * d + 1e-13 * Matrix<double>.Build.DenseIdentity(information.RowCount);
        return d * unit.Cholesky().Solve(Matrix<double>.Build.DenseIdentity(information.RowCount)) * d;
    }

    private static Confounding[] Unseparated(ShotBlocks blocks, IReadOnlyList<FitShot> shots, FitOptions options, ArrowLeastSquares search, ArrowSolution found)
    {
        if (blocks.SharedCount == 0)
        {
            return [];
        }
        // The tracks' own information: rows of measured numbers and of the shots' priors, not those of the shared ones.
        var rows = found.Rows[..shots.Count];
        var information = Separation.Information(search.Information(rows, (r, isObservation) => isObservation ? Loss.Weight(options.Loss, r) : 1), blocks.SharedCount, blocks.Local.Length);
        List<Confounding> all = [.. Separation.Pairs(information, blocks.Shared)];
        var shadows = shots.All(s => s.Lane.GivenFriction is null) ? Separation.Shadows(blocks.Shared) : [];
        if (shadows.Length > 0)
        {
            all.AddRange(Separation.StandIns(WithShadows(blocks, shots, options, found, shadows), blocks.Shared, shadows));
        }
        return [.. all];
    }

    // The same information with the columns of numbers that the fit holds behind those of the shared ones.
    private static Matrix<double> WithShadows(ShotBlocks blocks, IReadOnlyList<FitShot> shots, FitOptions options, ArrowSolution found, FitParameter[] shadows)
    {
        FreeParameter[] shared = [.. blocks.Shared.Select(p => p with { Prior = null }), .. shadows.Select(p => new FreeParameter(p))];
        var wider = new ShotBlocks(shots, [.. shared, .. blocks.Local], options.Noise, options.Simulator);
        var (count, local) = (shared.Length, blocks.Local.Length);
        double[] at = [.. found.Values[..blocks.SharedCount], .. shadows.Select(p => wider.Before(0, new FreeParameter(p))), .. found.Values[blocks.SharedCount..]];
        BlockRows[] rows = [.. Enumerable.Range(0, wider.BlockCount).Select(b => new BlockRows(wider.RowCount(b), count, wider.LocalCount(b)))];
        for (var b = 0; b < rows.Length; b++)
        {
            wider.Evaluate(b, at.AsSpan(0, count), at.AsSpan(count + b * local, local), rows[b]);
        }
        var search = new ArrowLeastSquares(wider, at, at, options.Precision, SolverFloor, 1);
        return Separation.Information(search.Information(rows, (r, isObservation) => isObservation ? Loss.Weight(options.Loss, r) : 1), count, local);
    }
}
