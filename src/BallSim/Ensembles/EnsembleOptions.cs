using BallSim.Shots;

namespace BallSim.Ensembles;

/// <summary>How an ensemble is computed; the results in doubles do not depend on any of it but <see cref="Shot"/>.</summary>
public sealed record EnsembleOptions
{
    /// <summary>How each shot is computed.</summary>
    public SimulatorOptions Shot { get; init; } = new() { Tolerance = 1e-4 };

    /// <summary>What computes: the processor, or a device.</summary>
    public EnsembleEngine Engine { get; init => field = value ?? throw new ArgumentNullException(nameof(Engine)); } = EnsembleEngine.Processor;

    /// <summary>Doubles or floats.</summary>
    public Precision Precision { get; init; }

    /// <summary>Threads, 1 to 1024; 0: as many as the machine has processors.</summary>
    public int Threads { get; init => field = (int)Check.Range(value, 0, 1024, Quantity.Number, nameof(Threads)); }

    /// <summary>Shots side by side in vectors, as wide as the processor offers; false: one by one, for comparison.</summary>
    public bool SideBySide { get; init; } = true;

    /// <summary>How, in words.</summary>
    public override string ToString() => $"{(SideBySide ? "side by side" : "one by one")} in {(Precision == Precision.Single ? "floats" : "doubles")} on {(Threads == 0 ? "all processors" : Threads == 1 ? "one thread" : $"{Threads} threads")}; {Shot}";
}
