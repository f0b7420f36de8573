using BallSim.Friction;
using MathNet.Numerics.LinearAlgebra;
using static System.FormattableString;

namespace BallSim.Fitting;

/// <summary>
/// Which shared numbers the data cannot tell apart, from the information that the tracks alone carry about them: the slopes, with the shots' own numbers eliminated (their priors count as knowledge, those of the shared numbers do not).
/// </summary>
/// <remarks>
/// For a pair, the correlation of the two estimates is minus the cosine of the angle between their columns once all others are eliminated; it needs no inverse, and is -1 or 1 exactly where the two act through one number, as c_s and h_p do
/// through (F3). Where a number is asked for that stands in for the friction law's fitted ones (the viscosity, the pores), it is held against those that the fit did not free, together: fitted alone it would only take up their error.
/// </remarks>
internal static class Separation
{
    /// <summary>From this correlation on two numbers count as one.</summary>
    public const double Limit = 0.98;

    private static readonly FitParameter[] Law = [FitParameter.Dry, FitParameter.Floor, FitParameter.FilmScale];

    public static bool StandsInForLaw(FitParameter p) => p is FitParameter.Viscosity or FitParameter.Pores;

    /// <summary>Numbers of the law that a fit holds and that a number asked for may stand in for.</summary>
    public static FitParameter[] Shadows(IEnumerable<FreeParameter> shared)
    {
        var free = shared.Select(p => p.Parameter).ToArray();
        // c_s and h_p are one number: the one is no shadow of the other, else the pores could never be asked for.
        return free.Any(StandsInForLaw) ? [.. Law.Where(p => !free.Contains(p) && !(p == FitParameter.FilmScale && free.Contains(FitParameter.Pores)))] : [];
    }

    /// <summary>The information about the shared numbers with those of the shots eliminated, their priors kept.</summary>
    public static Matrix<double> Information(Matrix<double> all, int shared, int local)
    {
        var s = all.SubMatrix(0, shared, 0, shared);
        for (var from = shared; local > 0 && from < all.RowCount; from += local)
        {
            var b = all.SubMatrix(0, shared, from, local);
            s -= b * Ridged(all.SubMatrix(from, local, from, local)).Cholesky().Solve(b.Transpose());
        }
        return s;
    }

    public static IEnumerable<Confounding> Pairs(Matrix<double> information, FreeParameter[] shared)
    {
        for (var i = 0; i < shared.Length; i++)
        {
            for (var j = i + 1; j < shared.Length; j++)
            {
                var m = Eliminated(information, [i, j]);
                var correlation = -m[0, 1] / Math.Sqrt(m[0, 0] * m[1, 1]);
                if (Math.Abs(correlation) >= Limit)
                {
                    var (a, b) = (shared[i].Parameter, shared[j].Parameter);
                    yield return new(a, [b], Math.Clamp(correlation, -1, 1), Invariant($"{a} and {b} cannot be separated: they move the tracks alike (correlation {Math.Clamp(correlation, -1, 1):F4}); hold one of them"));
                }
            }
        }
    }

    /// <summary>Numbers asked for against the law's held ones; the information has the columns of the shared numbers, then those of the shadows.</summary>
    public static IEnumerable<Confounding> StandIns(Matrix<double> information, FreeParameter[] shared, FitParameter[] shadows)
    {
        for (var i = 0; i < shared.Length && shadows.Length > 0; i++)
        {
            if (!StandsInForLaw(shared[i].Parameter))
            {
                continue;
            }
            // What is left of the number's effect when the other free ones are eliminated, and when the shadows are as well.
            var free = Enumerable.Range(0, shared.Length).ToArray();
            var before = Eliminated(information.SubMatrix(0, shared.Length, 0, shared.Length), [i])[0, 0];
            var after = Eliminated(information, [i])[0, 0];
            var multiple = Math.Sqrt(Math.Clamp(1 - after / before, 0, 1));
            if (multiple >= Limit)
            {
                yield return new(shared[i].Parameter, shadows, multiple, Invariant($"{shared[i].Parameter} cannot be told from {string.Join(", ", shadows)}, which the fit holds: together they move the tracks as it does (multiple correlation {multiple:F4}), and its value would only stand in for their error"));
            }
        }
    }

    /// <summary>The information about some numbers with all others eliminated.</summary>
    private static Matrix<double> Eliminated(Matrix<double> information, int[] kept)
    {
        int[] others = [.. Enumerable.Range(0, information.RowCount).Except(kept)];
        var k = Matrix<double>.Build.Dense(kept.Length, kept.Length, (i, j) => information[kept[i], kept[j]]);
        if (others.Length == 0)
        {
            return k;
        }
        var b = Matrix<double>.Build.Dense(kept.Length, others.Length, (i, j) => information[kept[i], others[j]]);
        var o = Matrix<double>.Build.Dense(others.Length, others.Length, (i, j) => information[others[i], others[j]]);
        return k - b * Ridged(o).LU().Solve(b.Transpose());
    }

    private static Matrix<double> Ridged(Matrix<double> m)
    {
        var r = m.Clone();
        for (var i = 0; i < r.RowCount; i++)
        {
            r[i, i] = r[i, i] > 0 ? r[i, i] * (1 + 1e-12) : 1;
        }
        return r;
    }
}
