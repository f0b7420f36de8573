using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>The map as events read it.</summary>
internal struct DeviceMap<T>(DeviceGrid<T> grid) : IMapOn<DeviceMap<T>, T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly DeviceGrid<T> grid = grid;
    private int row = DeviceGrid<T>.AnyRow;

    public static DeviceMap<T> On(DeviceGrid<T> grid) => new(grid);

    public T Enter(T y) => grid.Enter(y, out row);

    public readonly bool Joins => grid.IsContinuous;

    public void Roam() => row = DeviceGrid<T>.AnyRow;

    public readonly T At(T x, T y) => grid.At(x, y, row == DeviceGrid<T>.AnyRow ? grid.RowOf(y) : row);
}
