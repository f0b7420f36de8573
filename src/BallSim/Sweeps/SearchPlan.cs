using BallSim.Ensembles;
using BallSim.Releases;

namespace BallSim.Sweeps;

/// <summary>A search backwards: what may be chosen, within which bounds and rules, and what for.</summary>
public sealed record SearchPlan
{
    /// <summary>What may be chosen, 1 to 20; ranges are the bounds. Choices and lists are taken as steps.</summary>
    public required IReadOnlyList<Factor> Factors { get; init; }

    /// <summary>The throw of some values in SI, in the factors' order; called from several threads. An <see cref="ArgumentException"/> of it makes them impossible.</summary>
    public required Func<IReadOnlyList<double>, Throw> Build { get; init; }

    /// <summary>What for, 1 to 5.</summary>
    public required IReadOnlyList<Goal> Goals { get; init; }

    /// <summary>A rule beyond the bounds: why a throw is not allowed, or null. For instance a limit of the governing body, asked of the ball by <see cref="Drilling.RulesCheck"/>.</summary>
    public Func<Throw, string?>? Rule { get; init; }

    /// <summary>The bowler's scatter; null: every throw is the one aimed at, and a share is 0 or 1.</summary>
    public Scatter? Scatter { get; init; }

    /// <summary>Scattered throws by which a candidate is judged while searching, 1 to 100 000; 128. All candidates meet the same deviates.</summary>
    public int Throws { get; init => field = (int)Check.Range(value, 1, 100_000, Quantity.Number, nameof(Throws)); } = 128;

    /// <summary>Fresh throws by which what was found is judged at the end, 10 to 1e6; 4000. They are not those of the search, which flatter what was chosen by them.</summary>
    public int FinalThrows { get; init => field = (int)Check.Range(value, 10, 1_000_000, Quantity.Number, nameof(FinalThrows)); } = 4000;

    /// <summary>Points of the low-discrepancy set that the search begins from, 4 to 1e6; 64.</summary>
    public int Starts { get; init => field = (int)Check.Range(value, 4, 1_000_000, Quantity.Number, nameof(Starts)); } = 64;

    /// <summary>Descents, each from the best start for another weight of the goals, 0 to 1000; 6.</summary>
    public int Descents { get; init => field = (int)Check.Range(value, 0, 1000, Quantity.Number, nameof(Descents)); } = 6;

    /// <summary>Most candidates that a descent tries, 10 to 10 000; 60.</summary>
    public int Tries { get; init => field = (int)Check.Range(value, 10, 10_000, Quantity.Number, nameof(Tries)); } = 60;

    /// <summary>What starts, weights and deviates follow from, any whole number; 1.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>How the throws are computed.</summary>
    public EnsembleOptions Options { get; init => field = value ?? throw new ArgumentNullException(nameof(Options)); } = new();

    /// <summary>The goals and the factors.</summary>
    public override string ToString() => $"{string.Join("; ", Goals)} by {string.Join("; ", Factors)}";
}
