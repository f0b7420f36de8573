using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>A map of the lane in the card's memory, read by one thread. Mutable in its row alone.</summary>
internal struct DeviceMap<T>(DeviceGrid<T> grid) : IMap<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly DeviceGrid<T> grid = grid;
    private int row = DeviceGrid<T>.AnyRow;

    public T Enter(T y)
    {
        row = grid.RowOf(y + DeviceGrid<T>.Sliver);
        return grid.NextKnot(row);
    }

    public void Roam() => row = DeviceGrid<T>.AnyRow;

    public readonly T At(T x, T y) => grid.At(x, y, row == DeviceGrid<T>.AnyRow ? grid.RowOf(y) : row);
}
