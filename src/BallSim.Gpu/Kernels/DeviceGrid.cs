using BallSim.Lanes;
using BallSim.Spatial;
using ILGPU;
using ILGPU.Runtime;

namespace BallSim.Gpu;

/// <summary>The numbers of a <see cref="PiecewiseBicubic"/> as the card reads them.</summary>
internal readonly struct DeviceGrid<T>(ArrayView<Cell<T>> cells, DeviceKnots<T> columns, DeviceKnots<T> rows, int smoothness)
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    /// <summary>The row is looked up at every place.</summary>
    public const int AnyRow = -1;

    /// <summary>A step that ends on a knot may end a rounding error short of it, m.</summary>
    private const double Sliver = 1e-9;

    private readonly ArrayView<Cell<T>> cells = cells;
    private readonly DeviceKnots<T> columns = columns, rows = rows;

    // 1: values do not jump from row to row; 2: nor do slopes.
    private readonly int smoothness = smoothness;

    public bool IsContinuous => smoothness > 0;

    public bool IsSmooth => smoothness > 1;

    public int RowOf(T y) => rows.IndexOf(y);

    /// <summary>The row from y on, and where it ends, +∞ if nowhere.</summary>
    public T Enter(T y, out int row)
    {
        row = RowOf(y + Sliver);
        return rows.End(row);
    }

    public T StartOf(int row) => rows.Start(row);

    public T At(T x, T y, int row) => At(x, y, row, rows.Start(row));

    /// <summary>The same where it is known where the row starts.</summary>
    public T At(T x, T y, int row, T start)
    {
        var cell = Under(x, row, out var u);
        var v = y - start;
        return T.Fma(T.Fma(T.Fma(cell.D.At(v), u, cell.C.At(v)), u, cell.B.At(v)), u, cell.A.At(v));
    }

    public void Slopes(T x, T y, int row, out T perX, out T perY)
    {
        T two = 2.0, three = 3.0;
        var cell = Under(x, row, out var u);
        var v = y - rows.Start(row);
        perX = T.Fma(T.Fma(three * cell.D.At(v), u, two * cell.C.At(v)), u, cell.B.At(v));
        perY = T.Fma(T.Fma(T.Fma(cell.D.Slope(v), u, cell.C.Slope(v)), u, cell.B.Slope(v)), u, cell.A.Slope(v));
    }

    private Cell<T> Under(T x, int row, out T u)
    {
        var column = columns.IndexOf(x, out var start);
        u = x - start;
        // As the buffer is, and so a cell is read in few instructions.
        return cells.AsAligned(16)[row * columns.Intervals + column];
    }
}
