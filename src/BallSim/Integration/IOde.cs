namespace BallSim.Integration;

/// <summary>The right-hand side of an autonomous system y' = F(y). A quantity that must stand beside the state (a clock, a work) is a component of the state.</summary>
internal interface IOde<TState>
    where TState : struct
{
    /// <summary>The rates at a state.</summary>
    void Rates(in TState y, out TState rates);
}
