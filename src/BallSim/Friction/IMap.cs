using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>A function of the place on the lane, as the equations read it. Lanes and a graphics card bring their own; the scalar one is <see cref="MapOfReal"/>.</summary>
internal interface IMap<T>
    where T : struct, IReal<T>
{
    /// <summary>Reads the row from y on, and that row alone, so that a step which ends on its edge stays smooth to its end; answers where the row ends, +∞ if nowhere.</summary>
    T Enter(T y);

    /// <summary>Whether no value jumps from row to row.</summary>
    bool Joins { get; }

    /// <summary>Looks the row up at every place again.</summary>
    void Roam();

    T At(T x, T y);
}
