using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>The map as plain steps read it, row by row: they never roam, and code to look a row up, at every stage of a step, would only keep the rest waiting.</summary>
internal struct RowMap<T>(DeviceGrid<T> grid) : IMapOn<RowMap<T>, T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly DeviceGrid<T> grid = grid;
    private int row;
    private T start;

    public static RowMap<T> On(DeviceGrid<T> grid) => new(grid);

    public T Enter(T y)
    {
        var end = grid.Enter(y, out row);
        start = grid.StartOf(row);
        return end;
    }

    public readonly bool Joins => grid.IsContinuous;

    public readonly void Roam()
    {
    }

    public readonly T At(T x, T y) => grid.At(x, y, row, start);
}
