using BallSim.Ensembles;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace BallSim.Sweeps;

/// <summary>
/// The way back: from what a bowler wants to the layout, finish and line that come nearest to it.
/// </summary>
/// <remarks>
/// A low-discrepancy set over the bounds is thrown at once; from its best candidates, for several weights of the goals, Nelder and Mead's simplex descends (MathNet). The greatest weighted cost is what
/// goes down, so that the hollow parts of a trade-off are found too. What no other candidate beats in every goal is thrown anew by other deviates, and what those no longer bear out is dropped. It is a
/// search, not a proof: other seeds and more starts tell how much to trust it.
/// </remarks>
public sealed record Search
{
    // Outside the bounds the simplex meets a slope that leads back.
    private const double Wall = 10;
    private const double Impossible = 1e9;

    private Search(SearchPlan plan, IReadOnlyList<SearchFinding> tradeOff, int tried, int impossible, string? firstReason) =>
        (Plan, TradeOff, Tried, Impossibles, FirstReason) = (plan, tradeOff, tried, impossible, firstReason);

    /// <summary>What was asked.</summary>
    public SearchPlan Plan { get; }

    /// <summary>The trade-off, best in the first goal first; empty if nothing was possible.</summary>
    public IReadOnlyList<SearchFinding> TradeOff { get; }

    /// <summary>Candidates tried.</summary>
    public int Tried { get; }

    /// <summary>Of them impossible: refused by the ball, the lane or the rule.</summary>
    public int Impossibles { get; }

    /// <summary>Why the first of those was; null if none was.</summary>
    public string? FirstReason { get; }

    /// <summary>Searches.</summary>
    /// <param name="plan">What for, and within what.</param>
    /// <param name="progress">Told how many candidates are tried.</param>
    /// <param name="cancellation">Stops between two candidates.</param>
    /// <exception cref="ArgumentException">The plan has no factor or goal, or more than it may.</exception>
    public static Search For(SearchPlan plan, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Check.Range(plan.Factors.Count, 1, Design.MostLowDiscrepancyFactors, Quantity.Number, nameof(plan.Factors));
        Check.Range(plan.Goals.Count, 1, 5, Quantity.Number, nameof(plan.Goals));
        return new Trials(plan, progress, cancellation).Found();
    }

    private sealed record Candidate(double[] Place, double[] Values, double[] Costs, double[] Slopes);

    private sealed class Trials(SearchPlan plan, IProgress<int>? progress, CancellationToken cancellation)
    {
        private readonly List<Candidate> candidates = [];
        private int tried;
        private int impossible;
        private string? reason;

        public Search Found()
        {
            var d = plan.Factors.Count;
            var starts = Design.LowDiscrepancy(plan.Starts, plan.Seed);
            Try([.. Enumerable.Range(0, plan.Starts).Select(n => Enumerable.Range(0, d).Select(k => starts.Coordinate(n, k)).ToArray())]);
            // Weights from the same kind of set: with one goal there is but one.
            var weights = Design.LowDiscrepancy(Math.Max(1, plan.Descents), plan.Seed + 1);
            for (var n = 0; n < plan.Descents && candidates.Count > 0; n++)
            {
                double[] weight = [.. plan.Goals.Select((_, g) => plan.Goals.Count == 1 ? 1 : 0.05 + weights.Coordinate(n, g))];
                // One goal: from the best, the second best and so on. Several: from the best for this weight.
                var from = candidates.OrderBy(c => Weighted(c, weight)).ElementAt(plan.Goals.Count == 1 ? Math.Min(n, candidates.Count - 1) : 0);
                Descend(from.Place, weight);
            }
            return new(plan, [.. Judged()], tried, impossible, reason);
        }

        private void Descend(double[] from, double[] weight)
        {
            var perturbation = Vector<double>.Build.DenseOfEnumerable(from.Select(u => u < 0.5 ? 0.15 : -0.15));
            try
            {
                NelderMeadSimplex.Minimum(ObjectiveFunction.Value(place => Cost([.. place], weight)), Vector<double>.Build.DenseOfArray(from), perturbation, 1e-4, plan.Tries);
            }
            catch (MaximumIterationsException)
            {
                // As many as were allowed; every candidate on the way is kept.
            }
        }

        private double Cost(double[] place, double[] weight)
        {
            cancellation.ThrowIfCancellationRequested();
            double[] inside = [.. place.Select(u => Math.Clamp(u, 1e-9, 1 - 1e-9))];
            var outside = place.Zip(inside, (u, v) => Math.Abs(u - v)).Sum();
            return (Try([inside])[0] is { } candidate ? Weighted(candidate, weight) : Impossible) + Wall * outside;
        }

        private static double Weighted(Candidate candidate, double[] weight) => candidate.Slopes.Zip(weight, (c, w) => c * w).Max() + 1e-3 * candidate.Slopes.Zip(weight, (c, w) => c * w).Sum();

        private Candidate?[] Try(double[][] places)
        {
            double[][] values = [.. places.Select(p => plan.Factors.Select((f, k) => f.At(p[k])).ToArray())];
            var lines = new Throw[places.Length];
            var failures = new string?[places.Length];
            Parallel.For(0, places.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
            {
                (lines[i], failures[i]) = Sweep.Built(plan.Build, values[i]);
                failures[i] ??= plan.Rule?.Invoke(lines[i]);
            });
            int[] possible = [.. Enumerable.Range(0, places.Length).Where(i => failures[i] is null)];
            var (thrown, each) = Thrown([.. possible.Select(i => lines[i])], plan.Throws, plan.Seed);
            var made = new Candidate?[places.Length];
            for (var k = 0; k < possible.Length; k++)
            {
                var mine = thrown.AsSpan(k * each, each).ToArray();
                made[possible[k]] = new(places[possible[k]], values[possible[k]], [.. plan.Goals.Select(g => g.Of(mine).Cost)], [.. plan.Goals.Select(g => g.Slope(mine))]);
                candidates.Add(made[possible[k]]!);
            }
            tried += places.Length;
            impossible += places.Length - possible.Length;
            reason ??= failures.FirstOrDefault(f => f is not null);
            progress?.Report(tried);
            return made;
        }

        private (Outcome?[] Outcomes, int Each) Thrown(Throw[] lines, int throws, int seed)
        {
            if (plan.Scatter is not { } scatter)
            {
                return (Sweep.Thrown(lines, new string?[lines.Length], plan.Options, cancellation), 1);
            }
            var options = new RepeatabilityOptions { Throws = Math.Max(10, throws), Seed = seed, Ensemble = plan.Options };
            return (Repeatability.Thrown(lines, scatter, options, cancellation), options.Throws);
        }

        // The trade-off of the search, then what fresh throws leave of it.
        private IEnumerable<SearchFinding> Judged()
        {
            var front = Best(candidates.Where(c => c.Costs.All(double.IsFinite)).DistinctBy(c => string.Join(' ', c.Values.Select(BitConverter.DoubleToInt64Bits))).ToList(), c => c.Costs);
            var judged = front.Select(candidate =>
            {
                var (outcomes, _) = Thrown([plan.Build(candidate.Values)], plan.FinalThrows, plan.Seed + 2);
                return new SearchFinding(candidate.Values, [.. plan.Goals.Select(g => g.Of(outcomes))]);
            }).ToList();
            return Best(judged, f => [.. f.Goals.Select(g => g.Cost)]).OrderBy(f => f.Goals[0].Cost);
        }

        private static List<T> Best<T>(List<T> items, Func<T, double[]> costs)
        {
            var all = items.Select(costs).ToArray();
            bool Beaten(double[] mine) => all.Any(other => other.Zip(mine, (o, m) => o <= m).All(b => b) && other.Zip(mine, (o, m) => o < m).Any(b => b));
            return [.. items.Where((_, i) => !Beaten(all[i]))];
        }
    }

    /// <summary>How many were tried, and how many are left to choose from.</summary>
    public override string ToString() => FormattableString.Invariant($"{TradeOff.Count} findings to choose from, {Tried} tried, {Impossibles} impossible");
}
