using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>The slopes of the lane's surface at a place, as the equations read them; the scalar one is <see cref="SlopesOfReal"/>.</summary>
internal interface ISlopes<T>
    where T : struct, IReal<T>
{
    /// <summary>As <see cref="IMap{T}.Enter"/>.</summary>
    T Enter(T y);

    /// <summary>Whether no slope jumps from row to row.</summary>
    bool Joins { get; }

    /// <summary>As <see cref="IMap{T}.Roam"/>.</summary>
    void Roam();

    void At(T x, T y, out T across, out T along);
}
