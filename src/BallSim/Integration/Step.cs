namespace BallSim.Integration;

/// <summary>One step: where it starts and ends and the slopes between, which carry the dense output, see <see cref="Dense{TState,T}"/>.</summary>
internal struct Step<TState>
    where TState : struct
{
    public TState Start, End, K1, K2, K3, K4, K5, K6, K7;

    /// <summary>Only the first and the last slope are set: the dense output is the cubic through both ends.</summary>
    public bool IsCubic;

    /// <summary>Something was added to the end that the slopes do not tell of: the dense output comes to it by degrees.</summary>
    public bool IsMended;
}
