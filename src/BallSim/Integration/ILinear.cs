using BallSim.Spatial;

namespace BallSim.Integration;

/// <summary>A state that can be scaled and added: all that a stepper asks of it.</summary>
internal interface ILinear<TState, T>
    where TState : struct, ILinear<TState, T>
    where T : struct, IReal<T>
{
    /// <summary>
    /// How many of its numbers, from the first, rates depend on or a step is judged by, at least: stages and the estimate of an error need no more. What stands behind them is summed up along the way and asked for at the end of a step alone.
    /// </summary>
    static virtual int Leading => int.MaxValue;

    /// <summary>Adds s k to this state, component by component, each with one rounding.</summary>
    void Add(T s, in TState k);

    /// <summary>Adds two terms in one pass over the components, in the order given.</summary>
    void Add(T s1, in TState k1, T s2, in TState k2);

    /// <summary>Adds three terms in one pass over the components, in the order given.</summary>
    void Add(T s1, in TState k1, T s2, in TState k2, T s3, in TState k3);
}
