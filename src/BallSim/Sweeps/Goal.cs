using System.Globalization;
using BallSim.Ensembles;

namespace BallSim.Sweeps;

/// <summary>Something a search strives for: a metric near a target, or as many throws as can be in the pocket.</summary>
public sealed record Goal
{
    private readonly Metric? metric;
    private readonly PocketWindow? window;

    private Goal(string name, Metric? metric, PocketWindow? window, double target, double scale) => (Name, this.metric, this.window, Target, Scale) = (name, metric, window, target, scale);

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>The value wished for, in the metric's unit; 1 for a share.</summary>
    public double Target { get; }

    /// <summary>How far off counts as 1, in the metric's unit; 1 for a share.</summary>
    public double Scale { get; }

    /// <summary>The mean of a metric over the scattered throws, as near to a value as can be.</summary>
    /// <param name="metric">The metric.</param>
    /// <param name="target">The value, in the metric's unit.</param>
    /// <param name="scale">How far off counts as 1 against other goals, in the metric's unit; more than 0.</param>
    public static Goal Near(Metric metric, double target, double scale)
    {
        ArgumentNullException.ThrowIfNull(metric);
        Check.Range(target, -1e9, 1e9, Quantity.Number);
        Check.Range(scale, 1e-9, 1e9, Quantity.Number);
        return new(metric.Name, metric, null, target, scale);
    }

    /// <summary>The share of the scattered throws that hit the pocket, as large as can be.</summary>
    /// <param name="window">The pocket; null for the default.</param>
    public static Goal LargestPocketShare(PocketWindow? window = null) => new("pocket_share", null, window ?? new(), 1, 1);

    /// <summary>In words.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} {(window is null ? $"near {Target:G5}" : $"in {window}")}");

    /// <summary>The value over some throws, and how far the truth may be from it (95 %).</summary>
    internal GoalValue Of(ReadOnlySpan<Outcome?> outcomes)
    {
        if (window is not null)
        {
            var hits = 0;
            foreach (var o in outcomes)
            {
                hits += o is { } thrown && window.Holds(thrown) ? 1 : 0;
            }
            var share = new Share(hits, outcomes.Length);
            return new(Name, share.Value, share.Low, share.High, 1 - share.Value);
        }
        var spread = Distribution.Of(outcomes.ToArray().Select(o => o is { } thrown ? metric!.Value(thrown) : double.NaN));
        // Throws without a value are the worst there is: a line may not look good by losing its bad throws.
        var lost = 1 - spread.Count / (double)outcomes.Length;
        var error = spread.Count > 1 ? 1.96 * spread.MeanError : spread.Count == outcomes.Length ? 0 : double.NaN;
        var cost = spread.Count == 0 ? double.PositiveInfinity : Math.Abs(spread.Mean - Target) / Scale + 10 * lost;
        return new(Name, spread.Mean, spread.Mean - error, spread.Mean + error, cost);
    }

    /// <summary>What the optimiser walks down on: the cost, and for a share a little of how far the misses miss, without which it would be flat where nothing hits.</summary>
    internal double Slope(ReadOnlySpan<Outcome?> outcomes)
    {
        var cost = Of(outcomes).Cost;
        if (window is null)
        {
            return double.IsFinite(cost) ? cost : 1e6;
        }
        double miss = 0;
        foreach (var o in outcomes)
        {
            var excess = o is { } thrown ? window.Excess(thrown) : double.PositiveInfinity;
            miss += double.IsFinite(excess) ? excess / (10 + excess) : 2;
        }
        return cost + 0.5 * miss / outcomes.Length;
    }
}
