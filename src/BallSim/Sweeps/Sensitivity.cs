using System.Globalization;
using BallSim.Ensembles;

namespace BallSim.Sweeps;

/// <summary>
/// Which inputs the spread of a metric comes from: variance-based indices over the factors of a plan, every factor independent of the others and as widely spread as the plan says.
/// </summary>
/// <remarks>
/// Two samples A and B of N points, and for each factor i the sample A with column i from B. With f the metric, f₀ and V its mean and variance over A and B (Saltelli and others, Comput. Phys. Commun. 181
/// (2010) 259, table 2 b and f; the second is Jansen's, ibid. 117 (1999) 35):
/// <code>
/// Sᵢ  = 1/N Σ (f(B) - f₀)(f(ABᵢ) - f(A)) / V
/// STᵢ = 1/2N Σ (f(A) - f(ABᵢ))² / V
/// </code>
/// N (d + 2) throws. The points are Sobol's, scrambled, up to ten factors, and random beyond. Intervals: bootstrap of the N points, percentiles; for low-discrepancy points they are too wide rather than too
/// narrow. A point of which any throw has no value (a failed row, or a ball that never reached the pins where the metric asks for that) is left out whole, and their number told.
/// </remarks>
public sealed record Sensitivity
{
    private const int Resamples = 500;

    // The bootstrap draws from streams of its own.
    private const int BootstrapStream = 1 << 20;

    private Sensitivity(IReadOnlyList<SensitivityIndex> indices, double mean, double variance, int points, int leftOut) =>
        (Indices, Mean, Variance, Points, LeftOut) = (indices, mean, variance, points, leftOut);

    /// <summary>One index for each factor, in their order.</summary>
    public IReadOnlyList<SensitivityIndex> Indices { get; }

    /// <summary>Mean of the metric.</summary>
    public double Mean { get; }

    /// <summary>Variance of the metric.</summary>
    public double Variance { get; }

    /// <summary>Points that count.</summary>
    public int Points { get; }

    /// <summary>Points left out because a throw of theirs has no value; where there are many, the indices are those of what is left.</summary>
    public int LeftOut { get; }

    /// <summary>The indices of a metric over a plan's factors. The plan's own design only says the seed.</summary>
    /// <param name="plan">Factors, how they become a throw, how it is computed.</param>
    /// <param name="metric">The metric.</param>
    /// <param name="points">Points of each sample, 16 to 1e7; powers of two are best. It takes points times (factors + 2) throws.</param>
    /// <param name="confidence">Confidence of the intervals, 0.5 to 0.9999.</param>
    /// <param name="progress">Told how many throws are done.</param>
    /// <param name="cancellation">Stops between two chunks.</param>
    /// <exception cref="ArgumentException">No two points differ in the metric, or fewer than two have a value.</exception>
    public static Sensitivity Of(SweepPlan plan, Metric metric, int points = 1024, double confidence = 0.95, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(metric);
        double[] Values(IReadOnlyList<double[]> inputs)
        {
            var throws = new Throw[inputs.Count];
            var failures = new string?[inputs.Count];
            Parallel.For(0, throws.Length, new ParallelOptions { CancellationToken = cancellation }, i => (throws[i], failures[i]) = Sweep.Built(plan.Build, inputs[i]));
            return [.. Sweep.Thrown(throws, failures, plan.Options, cancellation).Select(o => o is { } thrown ? metric.Value(thrown) : double.NaN)];
        }
        return Of(plan.Factors, Values, plan.Design.Seed, points, confidence, progress, cancellation);
    }

    /// <summary>The indices of any function of the factors' values.</summary>
    /// <param name="factors">The factors.</param>
    /// <param name="function">The function of many points at once: their values, one number each; NaN where there is none.</param>
    /// <param name="seed">What the points follow from, any whole number.</param>
    /// <param name="points">Points of each sample, 16 to 1e7; powers of two are best.</param>
    /// <param name="confidence">Confidence of the intervals, 0.5 to 0.9999.</param>
    /// <param name="progress">Told how many evaluations are done.</param>
    /// <param name="cancellation">Stops between two blocks.</param>
    /// <exception cref="ArgumentException">No two points differ in the function, or fewer than two have a value.</exception>
    public static Sensitivity Of(IReadOnlyList<Factor> factors, Func<IReadOnlyList<double[]>, IReadOnlyList<double>> function, int seed = 1, int points = 1024, double confidence = 0.95,
        IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(factors);
        ArgumentNullException.ThrowIfNull(function);
        Check.That(factors.Count > 0, "indices need a factor; give at least one", nameof(factors));
        Check.Range(points, 16, 10_000_000, Quantity.Number);
        Check.Range(confidence, 0.5, 0.9999, Quantity.Number);
        var d = factors.Count;
        // By point: f(A), f(B), then f(ABᵢ) for each factor.
        var found = new List<double[]>(points);
        var leftOut = 0;
        var design = 2 * d <= Design.MostLowDiscrepancyFactors ? Design.LowDiscrepancy(points, seed) : Design.Random(points, seed);
        var block = Math.Max(1, Sweep.BlockSize / (d + 2));
        for (var from = 0; from < points; from += block)
        {
            cancellation.ThrowIfCancellationRequested();
            var count = Math.Min(block, points - from);
            var values = function([.. Enumerable.Range(from, count).SelectMany(n => Inputs(factors, design, n))]);
            for (var n = 0; n < count; n++)
            {
                double[] row = [.. Enumerable.Range(n * (d + 2), d + 2).Select(k => values[k])];
                if (row.All(double.IsFinite))
                {
                    found.Add(row);
                }
                else
                {
                    leftOut++;
                }
            }
            progress?.Report((from + count) * (d + 2));
        }
        Check.That(found.Count >= 2, $"{leftOut} of {points} points have no value; narrow the factors until most throws have one", nameof(function));
        var all = Enumerable.Range(0, found.Count).ToArray();
        var (mean, variance, first, total) = Estimate(found, all, d);
        Check.That(variance > 0, "the function is the same at all points; there is no variance to share out", nameof(function));
        var (firsts, totals) = (new double[d][], new double[d][]);
        for (var i = 0; i < d; i++)
        {
            (firsts[i], totals[i]) = (new double[Resamples], new double[Resamples]);
        }
        Parallel.For(0, Resamples, new ParallelOptions { CancellationToken = cancellation }, r =>
        {
            var picks = new int[found.Count];
            for (var k = 0; k < picks.Length; k++)
            {
                picks[k] = CounterRandom.Below(found.Count, seed, k, BootstrapStream, r);
            }
            var (_, _, s, t) = Estimate(found, picks, d);
            for (var i = 0; i < d; i++)
            {
                (firsts[i][r], totals[i][r]) = (s[i], t[i]);
            }
        });
        return new([.. factors.Select((f, i) =>
        {
            var (s, t) = (Interval(firsts[i], confidence), Interval(totals[i], confidence));
            return new SensitivityIndex(f.Name, first[i], s.Low, s.High, total[i], t.Low, t.High);
        })], mean, variance, found.Count, leftOut);
    }

    /// <summary>One line for each factor.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"mean {Mean:G5}, deviation {Math.Sqrt(Variance):G5}, {Points} points{(LeftOut > 0 ? $", {LeftOut} left out" : "")}\n")
        + string.Join('\n', Indices);

    private static IEnumerable<double[]> Inputs(IReadOnlyList<Factor> factors, Design design, int n)
    {
        var d = factors.Count;
        double[] a = [.. factors.Select((f, i) => f.At(design.Coordinate(n, i)))], b = [.. factors.Select((f, i) => f.At(design.Coordinate(n, d + i)))];
        yield return a;
        yield return b;
        for (var i = 0; i < d; i++)
        {
            var mixed = (double[])a.Clone();
            mixed[i] = b[i];
            yield return mixed;
        }
    }

    private static (double Mean, double Variance, double[] First, double[] Total) Estimate(List<double[]> rows, int[] picks, int d)
    {
        double sum = 0;
        foreach (var p in picks)
        {
            sum += rows[p][0] + rows[p][1];
        }
        var mean = sum / (2 * picks.Length);
        double squares = 0;
        var (first, total) = (new double[d], new double[d]);
        foreach (var p in picks)
        {
            var row = rows[p];
            var (a, b) = (row[0] - mean, row[1] - mean);
            squares += a * a + b * b;
            for (var i = 0; i < d; i++)
            {
                var mixed = row[i + 2] - mean;
                first[i] += b * (mixed - a);
                total[i] += (a - mixed) * (a - mixed) / 2;
            }
        }
        var variance = squares / (2 * picks.Length - 1);
        // Of a resample in which nothing differs there are no shares; nothing is what they are nearest to.
        var scale = variance > 0 ? 1 / (picks.Length * variance) : 0;
        return (mean, variance, [.. first.Select(s => s * scale)], [.. total.Select(t => t * scale)]);
    }

    private static (double Low, double High) Interval(double[] values, double confidence)
    {
        Array.Sort(values);
        return (MathNet.Numerics.Statistics.SortedArrayStatistics.Quantile(values, 0.5 - confidence / 2), MathNet.Numerics.Statistics.SortedArrayStatistics.Quantile(values, 0.5 + confidence / 2));
    }
}
