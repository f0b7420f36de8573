using System.Numerics;

namespace BallSim.Spatial;

/// <summary>A number type with a single lane: the driver of a shot takes decisions on it.</summary>
internal interface IScalar<T> : IReal<T>, IComparisonOperators<T, T, bool>
    where T : struct, IScalar<T>
{
    static abstract explicit operator double(T value);
}
