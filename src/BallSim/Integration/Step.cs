namespace BallSim.Integration;

/// <summary>One step: where it starts and ends and the slopes between, which carry the dense output, see <see cref="Dense{TState,T}"/>.</summary>
internal struct Step<TState>
    where TState : struct
{
    public TState Start, End, K1, K2, K3, K4, K5, K6, K7;

    /// <summary>What leads from the start to the end.</summary>
    public Interpolant Interpolant;
}
