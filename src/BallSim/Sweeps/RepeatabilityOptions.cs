using BallSim.Ensembles;

namespace BallSim.Sweeps;

/// <summary>How often a line is thrown, and what counts as the pocket.</summary>
public sealed record RepeatabilityOptions
{
    /// <summary>How many throws, 10 to 1e7; 2000, which tells a share of a half to within 2.2 % (95 % confidence).</summary>
    public int Throws { get; init => field = (int)Check.Range(value, 10, 10_000_000, Quantity.Number, nameof(Throws)); } = 2000;

    /// <summary>What the draws follow from, any whole number; 1.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>The pocket.</summary>
    public PocketWindow Window { get; init => field = value ?? throw new ArgumentNullException(nameof(Window)); } = new();

    /// <summary>Confidence of the interval about a share, 0.5 to 0.9999; 0.95.</summary>
    public double Confidence { get; init => field = Check.Range(value, 0.5, 0.9999, Quantity.Number, nameof(Confidence)); } = 0.95;

    /// <summary>How the throws are computed.</summary>
    public EnsembleOptions Ensemble { get; init => field = value ?? throw new ArgumentNullException(nameof(Ensemble)); } = new();

    /// <summary>Throws, seed and confidence.</summary>
    public override string ToString() => System.FormattableString.Invariant($"{Throws} throws from seed {Seed}, {100 * Confidence:0.##} % intervals; {Window}");
}
