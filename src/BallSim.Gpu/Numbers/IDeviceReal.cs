using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>A number type of the card.</summary>
internal interface IDeviceReal<T> : IScalar<T>
    where T : struct, IDeviceReal<T>
{
    /// <summary>The number without its fraction; for numbers that an int can hold.</summary>
    static abstract int Truncate(T a);

    /// <summary>The same number; of a float that came from one, itself.</summary>
    static abstract T Of(float a);

    /// <summary>The nearest float.</summary>
    static abstract float Single(T a);
}
