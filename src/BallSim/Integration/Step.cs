namespace BallSim.Integration;

/// <summary>One step: where it starts and ends and the slopes between, which carry the dense output, see <see cref="Dense{TState,T}"/>.</summary>
internal struct Step<TState>
    where TState : struct
{
    // The second slope serves the stages alone: it lies first, so that those that count at the end lie one after the other.
    public TState Start, End, K2, K1, K3, K4, K5, K6, K7;

    /// <summary>How many states there are before those that serve a step only while it is taken.</summary>
    public const int Parts = 9;

    /// <summary>Where a stage asks for its slope. It lies here and not on the stack so that lanes of it lie on the lines of the cache, and as far from the slopes as these from each other: a processor that tells addresses apart by their last
    /// twelve bits would else wait for what is written here before it reads them.</summary>
    public TState Stage;

    /// <summary>What leads from the start to the end.</summary>
    public Interpolant Interpolant;
}
