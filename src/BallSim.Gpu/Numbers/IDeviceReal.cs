using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>A number type of the card.</summary>
internal interface IDeviceReal<T> : IScalar<T>
    where T : struct, IDeviceReal<T>
{
    /// <summary>The number without its fraction; for numbers that an int can hold.</summary>
    static abstract int Truncate(T a);
}
