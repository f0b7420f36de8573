using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>Slopes out of a map of heights in the card's memory, read by one thread. Mutable in its row alone.</summary>
internal struct DeviceSlopes<T>(DeviceGrid<T> heights) : ISlopes<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly DeviceGrid<T> heights = heights;
    private int row = DeviceGrid<T>.AnyRow;

    public T Enter(T y) => heights.Enter(y, out row);

    public readonly bool Joins => heights.IsSmooth;

    public void Roam() => row = DeviceGrid<T>.AnyRow;

    public readonly void At(T x, T y, out T across, out T along) => heights.Slopes(x, y, row == DeviceGrid<T>.AnyRow ? heights.RowOf(y) : row, out across, out along);
}
