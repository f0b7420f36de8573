namespace BallSim.Integration;

/// <summary>One step: where it starts and ends and the slopes between, which carry the dense output, see <see cref="Dense{TState,T}"/>.</summary>
internal struct Step<TState>
    where TState : struct
{
    // The second slope serves the stages alone: it lies first, so that those that count at the end lie one after the other.
    public TState Start, End, K2, K1, K3, K4, K5, K6, K7;

    /// <summary>What leads from the start to the end.</summary>
    public Interpolant Interpolant;
}
