using BallSim.Spatial;

namespace BallSim.Integration;

/// <summary>
/// A system that is stiff in one direction: its Jacobian is all but A = -Rate c wᵀ, with w · c = 1. The matrix may be rough; the method that uses it keeps its order with any.
/// </summary>
internal interface IStiffOde<TState, T> : IOde<TState>
    where TState : struct, ILinear<TState, T>
    where T : struct, IReal<T>
{
    /// <summary>How fast the stiff component relaxes, per unit of the independent variable, at the state last linearised at.</summary>
    T Rate { get; }

    /// <summary>w · x, the stiff component of a state.</summary>
    T Along(in TState x);

    /// <summary>Adds amount c to a state.</summary>
    void AddAcross(ref TState x, T amount);
}
