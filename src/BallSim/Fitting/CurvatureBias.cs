using BallSim.Shots;
using MathNet.Numerics.LinearAlgebra;

namespace BallSim.Fitting;

/// <summary>
/// The bias that a model which bends gives to the least misfit, to second order. Fᵢ are the second derivatives of the i-th computed number and Jᵢ its first ones, in units of its noise, C is the covariance, H⁻¹ the inverse of the matrix of the normal equations, ψ̄' the mean
/// curvature of the loss (1 with least squares), and Q picks the parameters that have a prior:
/// <code>b = ψ̄' H⁻¹ Σᵢ { Jᵢ [-½ tr(Fᵢ C) + tr(Fᵢ Q H⁻¹)] + Fᵢ Q H⁻¹ Jᵢ }</code>
/// The first term is the bias of M. J. Box (J. R. Stat. Soc. B 33 (1971) 171, from memory), of measured numbers that scatter about a truth that is fixed. The other two are there because a truth with a prior is not fixed: it scatters about the middle of the prior, and the slopes at the truth
/// scatter with it, together with how far the prior pulls (our own derivation: the search's equation expanded to second order about the truth, E of H⁻¹ P ζ with ζ the way from the prior's middle to the truth).
/// </summary>
/// <remarks>
/// <para>Every shot brings a release of its own that is hardly known, so that neither part fades against the standard errors of the friction as shots are added. Taking the average over the releases in place of their best values would do the same as taking off this.</para>
/// <para>Second derivatives are differences over whole standard errors along the principal axes of C, f(p + l) - 2 f(p) + f(p - l), so that they are what the estimates meet, and the error of the solver is small beside them. They take plain throws, without derivatives:
/// 2 n² of them at most for n numbers of a shot, about as long as the search.</para>
/// </remarks>
internal sealed class CurvatureBias
{
    private readonly ShotBlocks blocks;
    private readonly SimulatorOptions options;
    private readonly double[] at;
    private readonly Matrix<double> covariance, inverse;

    private CurvatureBias(ShotBlocks blocks, SimulatorOptions options, double[] at, Matrix<double> covariance, Matrix<double> inverse) =>
        (this.blocks, this.options, this.at, this.covariance, this.inverse) = (blocks, options, at, covariance, inverse);

    /// <summary>The bias of every parameter; zeros where a shot beside the fit has no answer.</summary>
    /// <param name="blocks">The problem.</param>
    /// <param name="shots">Its shots.</param>
    /// <param name="options">How shots are computed.</param>
    /// <param name="found">The least misfit.</param>
    /// <param name="covariance">C.</param>
    /// <param name="inverse">H⁻¹.</param>
    /// <param name="curvature">ψ̄'.</param>
    public static double[] Of(ShotBlocks blocks, IReadOnlyList<FitShot> shots, SimulatorOptions options, ArrowSolution found, Matrix<double> covariance, Matrix<double> inverse, double curvature)
    {
        var bias = new CurvatureBias(blocks, options, found.Values, covariance, inverse);
        var pull = Vector<double>.Build.Dense(found.Values.Length);
        for (var s = 0; s < shots.Count; s++)
        {
            if (!bias.Add(pull, s, shots[s], found.Rows[s]))
            {
                return new double[found.Values.Length];
            }
        }
        return (curvature * (inverse * pull)).ToArray();
    }

    // The sum in braces over one shot's numbers.
    private bool Add(Vector<double> pull, int s, FitShot shot, BlockRows rows)
    {
        var (shared, local) = (blocks.SharedCount, blocks.Local.Length);
        int[] own = [.. Enumerable.Range(0, shared), .. Enumerable.Range(shared + s * local, local)];
        var root = Root(own);
        // In the coordinates of the root L, p = L x: F becomes Lᵀ F L, and Q H⁻¹ becomes L⁻¹ Q H⁻¹ L⁻ᵀ.
        var known = Matrix<double>.Build.Dense(own.Length, own.Length, (i, j) => HasPrior(i) ? inverse[own[i], own[j]] : 0);
        var back = root.Inverse();
        var hidden = back * known * back.Transpose();
        if (Bends(s, shot, own, root, mixed: Enumerable.Range(0, own.Length).Any(HasPrior)) is not { } bends)
        {
            return false;
        }
        var turned = Vector<double>.Build.Dense(own.Length);
        for (var k = 0; k < bends.Length; k++)
        {
            var slope = Vector<double>.Build.Dense(own.Length, i => rows.Slopes[k, i]);
            var along = -0.5 * bends[k].Trace() + (bends[k] * hidden).Trace();
            turned += bends[k] * (hidden * root.TransposeThisAndMultiply(slope));
            for (var i = 0; i < own.Length; i++)
            {
                pull[own[i]] += along * slope[i];
            }
        }
        turned = back.TransposeThisAndMultiply(turned);
        for (var i = 0; i < own.Length; i++)
        {
            pull[own[i]] += turned[i];
        }
        return true;
    }

    private bool HasPrior(int i) => (i < blocks.SharedCount ? blocks.Shared[i] : blocks.Local[i - blocks.SharedCount]).Prior is not null;

    // Lᵀ Fᵢ L of every number of one shot; beside the diagonal only where it is asked for.
    private Matrix<double>[]? Bends(int s, FitShot shot, int[] own, Matrix<double> root, bool mixed)
    {
        var seen = blocks.Observations[s];
        var shared = blocks.SharedCount;
        double[]? Computed(Vector<double> aside)
        {
            double[] there = [.. own.Select((i, k) => at[i] + aside[k])];
            return PlainPath.Of(shot, options, blocks.ValuesAt(s, there.AsSpan(0, shared), there.AsSpan(shared)), seen);
        }
        var bends = Array.ConvertAll(seen, _ => Matrix<double>.Build.Dense(own.Length, own.Length));
        if (Computed(Vector<double>.Build.Dense(own.Length)) is not { } middle)
        {
            return null;
        }
        for (var i = 0; i < own.Length; i++)
        {
            for (var j = i; j >= (mixed ? 0 : i); j--)
            {
                var aside = i == j ? root.Column(i) : root.Column(i) + root.Column(j);
                if (Computed(aside) is not { } up || Computed(-aside) is not { } down)
                {
                    return null;
                }
                for (var k = 0; k < bends.Length; k++)
                {
                    bends[k][i, j] = (seen[k].Off(up[k], middle[k]) + seen[k].Off(down[k], middle[k])) / seen[k].Deviation;
                }
            }
        }
        // What bends along the sum of two axes is what bends along each, and twice what they do together.
        foreach (var bend in bends)
        {
            for (var i = 0; mixed && i < own.Length; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    bend[i, j] = bend[j, i] = 0.5 * (bend[i, j] - bend[i, i] - bend[j, j]);
                }
            }
        }
        return bends;
    }

    // A root of the covariance of some parameters: eigenvectors in units of their standard errors.
    private Matrix<double> Root(int[] of)
    {
        double[] error = [.. of.Select(i => Math.Sqrt(covariance[i, i]))];
        var unit = Matrix<double>.Build.Dense(of.Length, of.Length, (i, j) => covariance[of[i], of[j]] / (error[i] * error[j])).Evd(Symmetricity.Symmetric);
        return Matrix<double>.Build.Dense(of.Length, of.Length, (i, k) => error[i] * unit.EigenVectors[i, k] * Math.Sqrt(Math.Max(1e-12, unit.EigenValues[k].Real)));
    }
}
