using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>A map of the lane in the card's memory, read by one thread. Mutable in its row alone.</summary>
internal interface IMapOn<TSelf, T> : IMap<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
    where TSelf : struct, IMapOn<TSelf, T>
{
    static abstract TSelf On(DeviceGrid<T> grid);
}
