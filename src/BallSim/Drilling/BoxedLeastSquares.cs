using MathNet.Numerics.LinearAlgebra;

namespace BallSim.Drilling;

/// <summary>Depths within bounds whose balance comes nearest to the one aimed at, in the sense of least squares.</summary>
internal static class BoxedLeastSquares
{
    private const int Steps = 20;

    /// <summary>
    /// Every depth lies free, on its lower or on its upper bound: at most 27 problems without bounds, each by Gauss-Newton steps, cut off
    /// at the bounds. The shares are nearly straight, so that few steps do.
    /// </summary>
    public static double[] Of(HoleShare[] shares, double[] undrilled, double?[] aim, IReadOnlyList<double> least, IReadOnlyList<double> greatest)
    {
        var count = shares.Length;
        var rows = Enumerable.Range(0, 3).Where(i => aim[i] is not null).ToArray();
        Vector<double> Off(double[] x) => Vector<double>.Build.DenseOfEnumerable(
            rows.Select(i => undrilled[i] - Enumerable.Range(0, count).Sum(k => shares[k].At(x[k], i)) - aim[i]!.Value));
        var (best, bestMiss) = (Array.Empty<double>(), double.PositiveInfinity);
        for (var choice = 0; choice < (int)Math.Pow(3, count); choice++)
        {
            var places = Enumerable.Range(0, count).Select(k => choice / (int)Math.Pow(3, k) % 3).ToArray();
            var free = Enumerable.Range(0, count).Where(k => places[k] == 2).ToArray();
            var x = Enumerable.Range(0, count).Select(k => places[k] switch { 0 => least[k], 1 => greatest[k], _ => (least[k] + greatest[k]) / 2 }).ToArray();
            for (var step = 0; step < Steps && free.Length > 0; step++)
            {
                var off = Off(x);
                var slope = Matrix<double>.Build.Dense(rows.Length, free.Length, (i, j) => -Slope(shares[free[j]], x[free[j]], rows[i], least[free[j]], greatest[free[j]]));
                // The smallest step that does: with fewer balances than depths there are many.
                var move = slope.PseudoInverse() * -off;
                for (var j = 0; j < free.Length; j++)
                {
                    x[free[j]] = Math.Clamp(x[free[j]] + move[j], least[free[j]], greatest[free[j]]);
                }
                if (move.InfinityNorm() < 1e-12)
                {
                    break;
                }
            }
            var miss = Off(x).L2Norm();
            // Of equal misses the first.
            if (miss < bestMiss - 1e-15 || best.Length == 0)
            {
                (best, bestMiss) = (x, miss);
            }
        }
        return best;
    }

    private static double Slope(HoleShare share, double depth, int component, double least, double greatest)
    {
        var h = 1e-4 * (greatest - least);
        if (h == 0)
        {
            return 0;
        }
        var (low, high) = (Math.Max(least, depth - h), Math.Min(greatest, depth + h));
        return (share.At(high, component) - share.At(low, component)) / (high - low);
    }
}
