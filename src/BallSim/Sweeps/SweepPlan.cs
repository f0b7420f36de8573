using BallSim.Ensembles;

namespace BallSim.Sweeps;

/// <summary>What a sweep computes: factors, a design over them, and how a row's values become a throw.</summary>
public sealed record SweepPlan
{
    /// <summary>What varies.</summary>
    public required IReadOnlyList<Factor> Factors { get; init; }

    /// <summary>Which rows there are.</summary>
    public required Design Design { get; init; }

    /// <summary>
    /// The throw of a row from the factors' values in SI, in their order; called from several threads, and a function of the values alone. An <see cref="ArgumentException"/> of it, such as a layout that
    /// is impossible on the ball, makes the row a failed one with that message. Where rows share a ball or a lane, give the same object.
    /// </summary>
    public required Func<IReadOnlyList<double>, Throw> Build { get; init; }

    /// <summary>What is read from each outcome; everything by default.</summary>
    public IReadOnlyList<Metric> Metrics { get; init; } = Metric.All;

    /// <summary>How the throws are computed.</summary>
    public EnsembleOptions Options { get; init; } = new();

    /// <summary>How many rows there are.</summary>
    /// <exception cref="ArgumentException">The factors do not fit the design.</exception>
    public int Rows => Design.Rows(Factors);

    /// <summary>The design and its factors.</summary>
    public override string ToString() => $"{Design}; {string.Join("; ", Factors)}";
}
