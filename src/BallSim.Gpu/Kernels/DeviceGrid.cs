using BallSim.Lanes;
using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>The numbers of a <see cref="PiecewiseBicubic"/> as the card reads them.</summary>
internal readonly struct DeviceGrid<T>(ArrayView<T> coefficients, DeviceKnots<T> columns, DeviceKnots<T> rows, int smoothness)
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    /// <summary>The row is looked up at every place.</summary>
    public const int AnyRow = -1;

    /// <summary>A step that ends on a knot may end a rounding error short of it, m.</summary>
    private const double Sliver = 1e-9;

    private readonly ArrayView<T> coefficients = coefficients;
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

    public T At(T x, T y, int row)
    {
        var at = Cell(x, y, row, out var u, out var v);
        var c0 = Cubic(at, v);
        var c1 = Cubic(at + 4, v);
        var c2 = Cubic(at + 8, v);
        var c3 = Cubic(at + 12, v);
        return T.Fma(T.Fma(T.Fma(c3, u, c2), u, c1), u, c0);
    }

    public void Slopes(T x, T y, int row, out T perX, out T perY)
    {
        var at = Cell(x, y, row, out var u, out var v);
        T two = 2.0, three = 3.0;
        T c1 = Cubic(at + 4, v), c2 = Cubic(at + 8, v), c3 = Cubic(at + 12, v);
        perX = T.Fma(T.Fma(three * c3, u, two * c2), u, c1);
        T d0 = Slope(at, v), d1 = Slope(at + 4, v), d2 = Slope(at + 8, v), d3 = Slope(at + 12, v);
        perY = T.Fma(T.Fma(T.Fma(d3, u, d2), u, d1), u, d0);
    }

    private int Cell(T x, T y, int row, out T u, out T v)
    {
        var column = columns.IndexOf(x);
        u = x - columns.Start(column);
        v = y - rows.Start(row);
        return 16 * (row * columns.Intervals + column);
    }

    private T Cubic(int at, T v) => T.Fma(T.Fma(T.Fma(coefficients[at + 3], v, coefficients[at + 2]), v, coefficients[at + 1]), v, coefficients[at]);

    private T Slope(int at, T v)
    {
        T two = 2.0, three = 3.0;
        return T.Fma(T.Fma(three * coefficients[at + 3], v, two * coefficients[at + 2]), v, coefficients[at + 1]);
    }
}
