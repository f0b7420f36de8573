using MathNet.Numerics.LinearAlgebra;
using static System.FormattableString;

namespace BallSim.Fitting;

/// <summary>
/// Levenberg's and Marquardt's method on a problem in blocks. The normal equations have the shape of an arrow,
/// <code>
/// | A   B₁ ... Bₙ |
/// | B₁ᵀ C₁        |      so that  (A - Σ Bᵢ Cᵢ⁻¹ Bᵢᵀ) δ = -(g - Σ Bᵢ Cᵢ⁻¹ gᵢ),   δᵢ = -Cᵢ⁻¹ (gᵢ + Bᵢᵀ δ)
/// | Bₙᵀ         Cₙ|
/// </code>
/// and cost as much as the number of blocks, not its cube. Damping adds λ times the diagonal (Marquardt); λ follows the gain as in H. B. Nielsen, Damping Parameter in Marquardt's Method, IMM-REP-1999-05 (from memory).
/// </summary>
/// <remarks>
/// <para>Why not MathNet.Numerics' own minimizer, whose linear algebra this uses: it asks for residuals and for slopes in separate calls, where one throw yields both and is all the cost; it knows no blocks; its bounds bend the parameters, so
/// that the covariance it reports is not that of the data; and a step that leads into the gutter, where there are no residuals, ends it instead of being shortened. The tests hold the two against each other on certified data.</para>
/// <para>Stops when a step with next to no damping promises to move the parameters by less than <c>precision</c> standard errors on average: gᵀH⁻¹g ≤ precision² · count · cost per degree of freedom, the relative offset of D. M. Bates and D. G. Watts, Technometrics 23 (1981) 179 (from
/// memory). A bound that the gradient pushes against holds its parameter. Where slopes carry an error of their
/// own, as those of an adaptive solver do, a step that promises less than <c>floor</c> in the same measure and does not lower the misfit ends the search as well.</para>
/// </remarks>
internal sealed class ArrowLeastSquares(IResidualBlocks problem, double[] low, double[] high, double precision, double floor, int maxIterations)
{
    private const double FirstDamping = 1e-3;
    private const double LittleDamping = 1e-1;
    private const double MostDamping = 1e14;

    // Near the minimum the misfit is flat to its last digits, while the gradient still points: a step that raises it by no more than this is taken.
    private const double Rounding = 1e-13;
    private const int MostIdle = 50;

    private readonly int shared = problem.SharedCount;
    private readonly int total = problem.SharedCount + Enumerable.Range(0, problem.BlockCount).Sum(problem.LocalCount);

    public ArrowSolution Minimise(double[] start, RobustLoss loss, CancellationToken cancellation)
    {
        var at = start.Zip(low.Zip(high), (v, b) => Math.Clamp(v, b.First, b.Second)).ToArray();
        var (rows, trialRows) = (NewRows(), NewRows());
        var evaluations = 1;
        if (!Evaluate(at, rows, out var failed))
        {
            return new(at, rows, double.PositiveInfinity, 0, 1, false, $"the start has no answer: {failed}");
        }
        var cost = Cost(rows, loss);
        var (damping, growth) = (FirstDamping, 2.0);
        var observations = rows.Sum(r => r.Count);
        var idle = 0;
        var system = new NormalEquations(problem, shared);
        for (var iteration = 1; iteration <= maxIterations; iteration++)
        {
            cancellation.ThrowIfCancellationRequested();
            system.Fill(rows, loss);
            var held = system.Held(at, low, high);
            var perFreedom = 2 * cost / Math.Max(1, observations - total) + 1e-300;
            while (true)
            {
                var step = Inside(system, damping, [.. held], at);
                var trial = at.Zip(step, (v, s) => v + s).ToArray();
                var promised = system.Promise(step);
                var still = promised <= 0.5 * precision * precision * total * perFreedom || IsRounding(step, at);
                if (damping <= LittleDamping && still)
                {
                    // The step is taken if it helps; that it hardly can is what ends the search.
                    var better = Evaluate(trial, trialRows, out _) && Cost(trialRows, loss) <= cost;
                    evaluations++;
                    return new(better ? trial : at, better ? trialRows : rows, better ? Cost(trialRows, loss) : cost, iteration, evaluations, true, "converged");
                }
                evaluations++;
                if (Evaluate(trial, trialRows, out failed) && Cost(trialRows, loss) is var next && next <= cost * (1 + Rounding) && promised > 0)
                {
                    idle = next < cost * (1 - Rounding) ? 0 : idle + 1;
                    if (idle > MostIdle)
                    {
                        return new(trial, trialRows, next, iteration, evaluations, true, "converged to rounding");
                    }
                    var gain = (cost - next) / promised;
                    damping = Math.Max(1e-12, damping * Math.Max(1.0 / 10, 1 - Math.Pow(2 * Math.Clamp(gain, 0, 1) - 1, 3)));
                    growth = 2;
                    (at, cost) = (trial, next);
                    (rows, trialRows) = (trialRows, rows);
                    break;
                }
                if (failed is null && promised <= 0.5 * floor * floor * total * perFreedom)
                {
                    // Slopes and misfit disagree by the error of the solver; nothing finer is to be had.
                    return new(at, rows, cost, iteration, evaluations, true, "converged to the error of the solver");
                }
                damping *= growth;
                growth *= 2;
                if (damping > MostDamping)
                {
                    return new(at, rows, cost, iteration, evaluations, false, "no step lowers the misfit" + (failed is null ? "" : $"; the last one tried had no answer: {failed}"));
                }
            }
        }
        return new(at, rows, cost, maxIterations, evaluations, false, Invariant($"not converged after {maxIterations} iterations"));
    }

    // The step, kept inside the bounds: it ends nine tenths of the way to the first; a number that is all but there already is held, and the others move without it.
    private double[] Inside(NormalEquations system, double damping, bool[] held, double[] at)
    {
        while (true)
        {
            var step = system.Solve(damping, held);
            double share = 1;
            var first = -1;
            for (var i = 0; i < total; i++)
            {
                var room = step[i] > 0 ? high[i] - at[i] : low[i] - at[i];
                if (Math.Abs(step[i]) > Math.Abs(room) && Math.Abs(room) / Math.Abs(step[i]) is var part && part < share)
                {
                    (share, first) = (part, i);
                }
            }
            if (first < 0)
            {
                return step;
            }
            if (share > 0.1)
            {
                return [.. step.Select(s => 0.9 * share * s)];
            }
            held[first] = true;
        }
    }

    /// <summary>JᵀWJ of all parameters, with a weight for each row.</summary>
    public Matrix<double> Information(BlockRows[] rows, Func<double, bool, double> weight)
    {
        var h = Matrix<double>.Build.Dense(total, total);
        var from = shared;
        for (var b = 0; b < rows.Length; b++)
        {
            var r = rows[b];
            int Place(int column) => column < shared ? column : from + column - shared;
            for (var k = 0; k < r.Count; k++)
            {
                var w = weight(r.Residuals[k], r.IsObservation[k]);
                for (var i = 0; i < shared + r.Local && w != 0; i++)
                {
                    for (var j = 0; j < shared + r.Local; j++)
                    {
                        h[Place(i), Place(j)] += w * r.Slopes[k, i] * r.Slopes[k, j];
                    }
                }
            }
            from += r.Local;
        }
        return h;
    }

    private BlockRows[] NewRows() => [.. Enumerable.Range(0, problem.BlockCount).Select(b => new BlockRows(problem.RowCount(b), shared, problem.LocalCount(b)))];

    private bool Evaluate(double[] at, BlockRows[] rows, out string? failed)
    {
        failed = null;
        var from = shared;
        for (var b = 0; b < rows.Length; b++)
        {
            if (!problem.Evaluate(b, at.AsSpan(0, shared), at.AsSpan(from, rows[b].Local), rows[b]))
            {
                failed = problem.ToString();
                return false;
            }
            from += rows[b].Local;
        }
        return true;
    }

    private static double Cost(BlockRows[] rows, RobustLoss loss)
    {
        double cost = 0;
        foreach (var r in rows)
        {
            for (var k = 0; k < r.Count; k++)
            {
                cost += Loss.Of(r.IsObservation[k] ? loss : RobustLoss.LeastSquares, r.Residuals[k]);
            }
        }
        return double.IsNaN(cost) ? double.PositiveInfinity : cost;
    }

    private static bool IsRounding(double[] step, double[] at) => step.Zip(at).All(s => Math.Abs(s.First) <= 1e-15 * Math.Abs(s.Second));
}
