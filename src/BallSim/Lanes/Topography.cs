using System.Globalization;

namespace BallSim.Lanes;

/// <summary>
/// The shape of the lane's surface: level, tilted as a whole, or measured. It acts as the force -m g grad h; the lane's normal stays vertical and height and curvature are
/// neglected, which costs a relative error of the order of the slope squared (1e-5 at the steepest slope that the rules let pass).
/// </summary>
/// <remarks>
/// The rules allow 0.040 in of crown, depression and cross tilt (USBC), a tilt of 0.001: see <see cref="LaneCheck"/>. A measured surface is a bicubic through its heights, C1, exact where
/// they are quadratic along and across, and goes on straight outside its table. Like oil maps it lies on boards of regulation width.
/// </remarks>
public sealed record Topography
{
    private Topography(double crossSlope, double lengthSlope) => (CrossSlope, LengthSlope) = (crossSlope, lengthSlope);

    private Topography(PiecewiseBicubic heights) => Heights = heights;

    /// <summary>A level lane.</summary>
    public static Topography Flat { get; } = new(0, 0);

    /// <summary>A lane tilted as a whole.</summary>
    /// <param name="crossSlope">dh/dx, a number in [-0.05, 0.05]; positive: the right side is higher.</param>
    /// <param name="lengthSlope">dh/dy, a number in [-0.05, 0.05]; positive: the pins are higher than the foul line.</param>
    public static Topography Tilted(double crossSlope, double lengthSlope = 0) => new(
        Check.Range(crossSlope, -Steepest, Steepest, Quantity.Number),
        Check.Range(lengthSlope, -Steepest, Steepest, Quantity.Number));

    /// <summary>A measured surface.</summary>
    /// <param name="stations">Distances from the foul line, m, increasing, at least two, 0 to 30 m.</param>
    /// <param name="boards">Boards counted from the right, increasing, at least two, 0.5 to 39.5 (the edges of the lane).</param>
    /// <param name="heights">heights[k, i] at stations[k] and boards[i], m, -1 to 1 m over any level; between neighbours no steeper than 0.05.</param>
    public static Topography FromHeights(IReadOnlyList<double> stations, IReadOnlyList<double> boards, double[,] heights)
    {
        ArgumentNullException.ThrowIfNull(heights);
        var (y, x) = Places(stations, boards);
        Table.Values(heights, y.Length, x.Length, -1, 1, Quantity.Length, nameof(heights));
        return OfBoards(y, x, heights, nameof(heights));
    }

    /// <summary>A surface measured with a level: slopes across at every station, and slopes along the lane's middle.</summary>
    /// <remarks>
    /// The heights follow by the trapezoidal rule: along board 20 from the foul line, and from there to either side. Slopes along other boards then follow from these and are not asked for: a table
    /// of both slopes everywhere would say the same twice, and contradict itself by the errors of measurement.
    /// </remarks>
    /// <param name="stations">Distances from the foul line, m, increasing, at least two, 0 to 30 m.</param>
    /// <param name="boards">Boards counted from the right, increasing, at least two, 0.5 to 39.5; board 20 must lie among or between them.</param>
    /// <param name="crossSlopes">dh/dx at stations[k] and boards[i], numbers in [-0.05, 0.05]; positive: higher to the right.</param>
    /// <param name="lengthSlopes">dh/dy on board 20 at stations[k], numbers in [-0.05, 0.05]; positive: higher towards the pins. Null: level.</param>
    public static Topography FromSlopes(IReadOnlyList<double> stations, IReadOnlyList<double> boards, double[,] crossSlopes, IReadOnlyList<double>? lengthSlopes = null)
    {
        ArgumentNullException.ThrowIfNull(crossSlopes);
        var (y, x) = Places(stations, boards);
        Table.Values(crossSlopes, y.Length, x.Length, -Steepest, Steepest, Quantity.Number, nameof(crossSlopes));
        Check.That(lengthSlopes is null || lengthSlopes.Count == y.Length, $"lengthSlopes has {lengthSlopes?.Count} values; {y.Length} stations are given", nameof(lengthSlopes));
        Check.That(boards[0] <= Middle && boards[^1] >= Middle, $"boards reach from {Check.Text(boards[0])} to {Check.Text(boards[^1])}; board 20, from which heights are counted, must lie between", nameof(boards));
        var heights = new double[y.Length, x.Length];
        double along = 0;
        for (var k = 0; k < y.Length; k++)
        {
            if (lengthSlopes is not null)
            {
                var slope = Check.Range(lengthSlopes[k], -Steepest, Steepest, Quantity.Number, $"lengthSlopes[{k}]");
                along += k == 0 ? 0 : (y[k] - y[k - 1]) * (slope + lengthSlopes[k - 1]) / 2;
            }
            Across(x, crossSlopes, k, along, heights);
        }
        return OfBoards(y, x, heights, nameof(crossSlopes));
    }

    /// <summary>A measured surface kept by its cells.</summary>
    /// <param name="cells">The cells; the height over any level, m, -10 to 10 m at their corners and in their middles.</param>
    public static Topography FromCells(MapCells cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        return new(cells.Within(-10, 10, Quantity.Length, "height"));
    }

    /// <summary>The cells of a measured surface, with the height in m; null for a lane that is level or tilted as a whole.</summary>
    public MapCells? Cells => Heights is null ? null : new(Heights);

    /// <summary>dh/dx of a lane tilted as a whole, a number; positive: the right side is higher. Zero for a measured surface: see <see cref="SlopeAt"/>.</summary>
    public double CrossSlope { get; }

    /// <summary>dh/dy of a lane tilted as a whole, a number; positive: the pins are higher than the foul line. Zero for a measured surface.</summary>
    public double LengthSlope { get; }

    /// <summary>The surface was measured: its slope varies from place to place.</summary>
    public bool IsMeasured => Heights is not null;

    /// <summary>Level: no slope anywhere.</summary>
    public bool IsFlat => CrossSlope == 0 && LengthSlope == 0 && !IsMeasured;

    /// <summary>The height at a place, m, over the middle of the foul line for a tilted lane, over the table's level for a measured one.</summary>
    /// <param name="x">Across, m, positive to the right of the lane's middle.</param>
    /// <param name="y">Down the lane from the foul line, m.</param>
    public double HeightAt(double x, double y) => Heights?.At(x, y) ?? CrossSlope * x + LengthSlope * y;

    /// <summary>dh/dx and dh/dy at a place, numbers.</summary>
    /// <param name="x">Across, m, positive to the right of the lane's middle.</param>
    /// <param name="y">Down the lane from the foul line, m.</param>
    public (double Across, double Along) SlopeAt(double x, double y)
    {
        if (Heights is null)
        {
            return (CrossSlope, LengthSlope);
        }
        Heights.Slopes(x, y, Heights.RowOf(y), out var across, out var along);
        return (across, along);
    }

    internal PiecewiseBicubic? Heights { get; }

    // Beyond this the small-slope form is no longer good to 0.3 %; an inclined plane is better given by Lane.Gravity, which is exact.
    private const double Steepest = 0.05;

    private const double Middle = 20;

    private static (double[] Y, double[] X) Places(IReadOnlyList<double> stations, IReadOnlyList<double> boards)
    {
        ArgumentNullException.ThrowIfNull(stations);
        ArgumentNullException.ThrowIfNull(boards);
        var y = Table.Increasing(stations, 0, 30, nameof(stations));
        var b = Table.Increasing(boards, 0.5, RegulationLane.Boards + 0.5, nameof(boards), Quantity.Of("boards"));
        return (y, Array.ConvertAll(b, RegulationLane.PlaceOf));
    }

    // One station's heights: the trapezoidal rule from board to board, then shifted so that the height on board 20 is that along the lane.
    private static void Across(double[] x, double[,] slopes, int k, double atMiddle, double[,] heights)
    {
        heights[k, 0] = 0;
        double middle = 0;
        for (var i = 0; i < x.Length - 1; i++)
        {
            var width = x[i + 1] - x[i];
            heights[k, i + 1] = heights[k, i] + width * (slopes[k, i] + slopes[k, i + 1]) / 2;
            if (x[i] >= 0 && x[i + 1] <= 0)
            {
                var share = -x[i] / width;
                middle = heights[k, i] + width * share * (slopes[k, i] + share * (slopes[k, i + 1] - slopes[k, i]) / 2);
            }
        }
        for (var i = 0; i < x.Length; i++)
        {
            heights[k, i] += atMiddle - middle;
        }
    }

    // Boards count against x: the columns are turned round.
    private static Topography OfBoards(double[] y, double[] x, double[,] heights, string name)
    {
        var last = x.Length - 1;
        var turned = new double[y.Length, x.Length];
        for (var k = 0; k < y.Length; k++)
        {
            for (var i = 0; i <= last; i++)
            {
                turned[k, last - i] = heights[k, i];
                Gentle(i == 0 ? 0 : (heights[k, i] - heights[k, i - 1]) / (x[i] - x[i - 1]), k, i, name);
                Gentle(k == 0 ? 0 : (heights[k, i] - heights[k - 1, i]) / (y[k] - y[k - 1]), k, i, name);
            }
        }
        return new(PiecewiseBicubic.Surface([.. x.Reverse()], y, turned));
    }

    private static void Gentle(double slope, int k, int i, string name) => Check.That(Math.Abs(slope) <= Steepest,
        $"{name}[{k}, {i}] makes a slope of {Check.Text(slope)} to its neighbour, steeper than {Steepest}; is the unit right? A lane's heights are some hundredths of an inch: write 0.040 * Inch", name);

    /// <summary>Flat, the slopes in millimetres a metre, or that it was measured.</summary>
    public override string ToString() => IsMeasured ? "measured heights" : IsFlat ? "flat" : string.Create(CultureInfo.InvariantCulture, $"cross slope {1000 * CrossSlope:0.##} mm/m, length slope {1000 * LengthSlope:0.##} mm/m");
}
