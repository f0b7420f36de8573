namespace BallSim.Ensembles;

/// <summary>What computes an ensemble: the processor, or a device that another package brings. Shots, outcomes and messages are the same whichever it is; how near the numbers are, each engine tells.</summary>
public abstract class EnsembleEngine
{
    private protected EnsembleEngine()
    {
    }

    /// <summary>The processor: side by side in vectors, on all cores.</summary>
    public static EnsembleEngine Processor { get; } = new ProcessorEngine();

    /// <summary>What it computes on, for people.</summary>
    public abstract string Description { get; }

    internal abstract void Run(Rows rows, EnsembleOptions options, IProgress<int>? progress, CancellationToken cancellation);

    /// <inheritdoc/>
    public override string ToString() => Description;
}
