namespace BallSim.Lanes;

/// <summary>
/// What a map over the lane is made of: a rectangular grid of cells with a polynomial in each, f(x, y) = Σ c[i, j] (x - x₀)^i (y - y₀)^j, i, j = 0..3, from the cell's lower corner (x₀, y₀). The outer cells go on for ever.
/// By its cells a map can be kept and had again to the last bit, whatever it was described by.
/// </summary>
public sealed record MapCells
{
    /// <summary>Cells from knots and coefficients, in SI.</summary>
    /// <param name="x">Knots across, m, positive to the right, increasing, at least two, -1001 to 1001 m.</param>
    /// <param name="y">Knots down the lane, m, increasing, at least two, -1001 to 1001 m.</param>
    /// <param name="coefficients">c[i, j] of the cell (row along y, column along x) at 16 (row · columns + column) + 4 i + j; sixteen finite numbers for every cell.</param>
    /// <exception cref="ArgumentException">Knots do not increase, or the number of coefficients is not that of the cells, or one of them is no number.</exception>
    public MapCells(IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double> coefficients)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        ArgumentNullException.ThrowIfNull(coefficients);
        var across = Table.Increasing(x, -Farthest, Farthest, nameof(x));
        var down = Table.Increasing(y, -Farthest, Farthest, nameof(y));
        var count = 16L * (across.Length - 1) * (down.Length - 1);
        Check.That(coefficients.Count == count, $"coefficients has {coefficients.Count} numbers; {across.Length - 1} by {down.Length - 1} cells have {count}", nameof(coefficients));
        for (var k = 0; k < coefficients.Count; k++)
        {
            Check.Range(coefficients[k], -double.MaxValue, double.MaxValue, Quantity.Number, $"coefficients[{k}]");
        }
        Map = new(across, down, [.. coefficients]);
    }

    internal MapCells(PiecewiseBicubic map) => Map = map;

    internal PiecewiseBicubic Map { get; }

    /// <summary>Knots across, m.</summary>
    public IReadOnlyList<double> X => Array.AsReadOnly(Map.X);

    /// <summary>Knots down the lane, m.</summary>
    public IReadOnlyList<double> Y => Array.AsReadOnly(Map.Y);

    /// <summary>c[i, j] of the cell (row, column) at 16 (row · columns + column) + 4 i + j.</summary>
    public IReadOnlyList<double> Coefficients => Array.AsReadOnly(Map.Coefficients);

    /// <summary>The polynomial of the place's cell there.</summary>
    /// <param name="x">Across, m, positive to the right of the lane's middle.</param>
    /// <param name="y">Down the lane from the foul line, m.</param>
    public double At(double x, double y) => Map.At(x, y);

    /// <summary>How many cells there are across and down the lane.</summary>
    public override string ToString() => $"{Map.Columns} by {Map.Rows} cells";

    /// <summary>
    /// The map, if its values lie within a range at the corners and in the middle of every cell. Between them a polynomial may still leave it: cells of this library's maps do not, and cells made by hand are their maker's business.
    /// </summary>
    internal PiecewiseBicubic Within(double low, double high, Quantity quantity, string name)
    {
        for (var row = 0; row < Map.Rows; row++)
        {
            for (var column = 0; column < Map.Columns; column++)
            {
                Span<double> xs = [Map.X[column], (Map.X[column] + Map.X[column + 1]) / 2, Map.X[column + 1]];
                Span<double> ys = [Map.Y[row], (Map.Y[row] + Map.Y[row + 1]) / 2, Map.Y[row + 1]];
                foreach (var x in xs)
                {
                    foreach (var y in ys)
                    {
                        var value = InCell(row, column, x, y);
                        var isRounding = value > low - Rounding * (high - low) && value < high + Rounding * (high - low);
                        Check.Range(isRounding ? Math.Clamp(value, low, high) : value, low, high, quantity, $"{name} in the cell ({row}, {column})");
                    }
                }
            }
        }
        return Map;
    }

    // A knot belongs to the cell above it: here the cell's own polynomial is wanted on all its corners.
    private double InCell(int row, int column, double x, double y)
    {
        var (u, v) = (x - Map.X[column], y - Map.Y[row]);
        double sum = 0;
        for (var i = 3; i >= 0; i--)
        {
            var c = Map.Coefficients.AsSpan(16 * (row * Map.Columns + column) + 4 * i, 4);
            sum = sum * u + (((c[3] * v + c[2]) * v + c[1]) * v + c[0]);
        }
        return sum;
    }

    private const double Rounding = 1e-9;

    // A metre more than a friction map's farthest place: its first and last zone take a metre each.
    private const double Farthest = 1001;
}
