using System.Runtime.CompilerServices;

namespace BallSim.Lanes;

/// <summary>
/// A function of the place on the lane, f(x, y) = Σ c[i, j] (x - x₀)^i (y - y₀)^j, i, j = 0..3, with sixteen coefficients for every cell of a rectangular
/// grid. Rows are cells along y, columns cells along x; (x₀, y₀) is the cell's lower corner. The polynomials of the outer cells go on for ever, so
/// that a function which is constant outside its table has outer cells of its own (see <see cref="FromTable"/>). Jumps between cells are allowed.
/// </summary>
/// <remarks>Horner's rule in explicit fused multiply-adds: lanes that do the same are bit-equal.</remarks>
internal sealed class PiecewiseBicubic : IEquatable<PiecewiseBicubic>
{
    // A jump no greater than this part of the greatest term is none.
    private const double Rounding = 1e-11;

    private readonly Knots columns;
    private readonly Knots rows;

    public PiecewiseBicubic(double[] x, double[] y, double[] coefficients)
    {
        (X, Y, Coefficients) = (x, y, coefficients);
        Columns = x.Length - 1;
        Rows = y.Length - 1;
        columns = new Knots(x);
        rows = new Knots(y);
        IsContinuous = !Jumps(slopes: false);
        IsSmooth = IsContinuous && !Jumps(slopes: true);
    }

    /// <summary>Whether no value jumps where one row gives way to another, but for rounding.</summary>
    public bool IsContinuous { get; }

    /// <summary>Whether no slope jumps there either.</summary>
    public bool IsSmooth { get; }

    /// <summary>Knots along x, increasing, m.</summary>
    public double[] X { get; }

    /// <summary>Knots along y, increasing, m.</summary>
    public double[] Y { get; }

    /// <summary>c[i, j] of the cell (row, column) at 16 (row Columns + column) + 4 i + j.</summary>
    public double[] Coefficients { get; }

    public int Columns { get; }

    public int Rows { get; }

    /// <summary>The same number everywhere.</summary>
    public static PiecewiseBicubic Constant(double value) => Plane(value, 0, 0);

    /// <summary>atOrigin + perX x + perY y everywhere.</summary>
    public static PiecewiseBicubic Plane(double atOrigin, double perX, double perY)
    {
        var c = new double[16];
        (c[0], c[1], c[4]) = (atOrigin, perY, perX);
        return new([0, 1], [0, 1], c);
    }

    /// <summary>Polynomials of y alone, one for each row: cubic[row][j] of (y - y[row])^j.</summary>
    public static PiecewiseBicubic DownLane(double[] y, double[][] cubic)
    {
        var c = new double[16 * (y.Length - 1)];
        for (var row = 0; row < cubic.Length; row++)
        {
            cubic[row].CopyTo(c, 16 * row);
        }
        return new([0, 1], y, c);
    }

    /// <summary>
    /// The C1 function through values[k, i] at (x[i], y[k]) that nowhere leaves the range of its cell's four corner values and is exact for values linear in
    /// x and y; how, see <see cref="BoundedHermite"/>. Outside it holds the edge's value, or goes on as the polynomials of the edge cells.
    /// </summary>
    public static PiecewiseBicubic FromTable(double[] x, double[] y, double[,] values, bool holdsOutside = true) =>
        BoundedHermite.Through(x, y, values, holdsOutside);

    /// <summary>The column that holds x.</summary>
    public int ColumnOf(double x) => columns.IndexOf(x);

    /// <summary>The C1 function through values that is exact where they are quadratic and may pass their highest and lowest; straight outside. See <see cref="ParabolicHermite"/>.</summary>
    public static PiecewiseBicubic Surface(double[] x, double[] y, double[,] values) => ParabolicHermite.Through(x, y, values);

    /// <summary>The row that holds y; a knot belongs to the row above it.</summary>
    public int RowOf(double y) => rows.IndexOf(y);

    /// <summary>Where a row's polynomial gives way to that of the next, or +∞.</summary>
    public double EndOf(int row) => rows.EndOf(row);

    public double At(double x, double y) => At(x, y, rows.IndexOf(y));

    /// <summary>The row's polynomial, used even if y lies outside the row: a step that ends on a knot stays smooth to its end.</summary>
    public double At(double x, double y, int row)
    {
        var column = columns.IndexOf(x);
        return At(Coefficients.AsSpan(16 * (row * Columns + column), 16), x - X[column], y - Y[row]);
    }

    /// <summary>A cell's polynomial at so much from its lower left corner.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double At(ReadOnlySpan<double> c, double u, double v)
    {
        var c0 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(c[3], v, c[2]), v, c[1]), v, c[0]);
        var c1 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(c[7], v, c[6]), v, c[5]), v, c[4]);
        var c2 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(c[11], v, c[10]), v, c[9]), v, c[8]);
        var c3 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(c[15], v, c[14]), v, c[13]), v, c[12]);
        return Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(c3, u, c2), u, c1), u, c0);
    }

    /// <summary>The derivatives along x and y by the row's polynomial.</summary>
    public void Slopes(double x, double y, int row, out double perX, out double perY)
    {
        var column = columns.IndexOf(x);
        var u = x - X[column];
        var v = y - Y[row];
        var c = Coefficients.AsSpan(16 * (row * Columns + column), 16);
        var c1 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(c[7], v, c[6]), v, c[5]), v, c[4]);
        var c2 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(c[11], v, c[10]), v, c[9]), v, c[8]);
        var c3 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(c[15], v, c[14]), v, c[13]), v, c[12]);
        perX = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(3 * c3, u, 2 * c2), u, c1);
        var d0 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(3 * c[3], v, 2 * c[2]), v, c[1]);
        var d1 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(3 * c[7], v, 2 * c[6]), v, c[5]);
        var d2 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(3 * c[11], v, 2 * c[10]), v, c[9]);
        var d3 = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(3 * c[15], v, 2 * c[14]), v, c[13]);
        perY = Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(Math.FusedMultiplyAdd(d3, u, d2), u, d1), u, d0);
    }

    /// <summary>Least and greatest value at the lower corners of the cells.</summary>
    public (double Least, double Greatest) Extremes()
    {
        double least = Coefficients[0], greatest = least;
        for (var i = 16; i < Coefficients.Length; i += 16)
        {
            (least, greatest) = (Math.Min(least, Coefficients[i]), Math.Max(greatest, Coefficients[i]));
        }
        return (least, greatest);
    }

    /// <summary>The integral over a rectangle, exact but for rounding.</summary>
    public double Integral(double fromX, double toX, double fromY, double toY)
    {
        var acrossMoments = Moments(X, fromX, toX);
        var downMoments = Moments(Y, fromY, toY);
        double sum = 0;
        for (var row = 0; row < Rows; row++)
        {
            for (var column = 0; column < Columns; column++)
            {
                var at = 16 * (row * Columns + column);
                for (var i = 0; i < 4; i++)
                {
                    for (var j = 0; j < 4; j++)
                    {
                        sum += Coefficients[at + 4 * i + j] * acrossMoments[column, i] * downMoments[row, j];
                    }
                }
            }
        }
        return sum;
    }

    /// <summary>The integrals over the rectangles between neighbouring edges, [row, column], each exact but for rounding. Edges increase.</summary>
    public double[,] Integrals(double[] edgesX, double[] edgesY)
    {
        var integrals = new double[edgesY.Length - 1, edgesX.Length - 1];
        var across = Enumerable.Range(0, edgesX.Length - 1).Select(n => Pieces(X, columns, edgesX[n], edgesX[n + 1])).ToArray();
        for (var k = 0; k < edgesY.Length - 1; k++)
        {
            var down = Pieces(Y, rows, edgesY[k], edgesY[k + 1]);
            for (var n = 0; n < across.Length; n++)
            {
                double sum = 0;
                foreach (var (row, downMoments) in down)
                {
                    foreach (var (column, acrossMoments) in across[n])
                    {
                        var c = Coefficients.AsSpan(16 * (row * Columns + column), 16);
                        for (var i = 0; i < 4; i++)
                        {
                            sum += acrossMoments[i] * (c[4 * i] * downMoments[0] + c[4 * i + 1] * downMoments[1] + c[4 * i + 2] * downMoments[2] + c[4 * i + 3] * downMoments[3]);
                        }
                    }
                }
                integrals[k, n] = sum;
            }
        }
        return integrals;
    }

    /// <summary>Every value times a factor, and then a number added.</summary>
    public PiecewiseBicubic Affine(double gain, double offset)
    {
        var c = Array.ConvertAll(Coefficients, v => gain * v);
        for (var i = 0; i < c.Length; i += 16)
        {
            c[i] += offset;
        }
        return new(X, Y, c);
    }

    /// <summary>Every value times a factor.</summary>
    public PiecewiseBicubic Times(double factor) => new(X, Y, Array.ConvertAll(Coefficients, c => factor * c));

    public bool Equals(PiecewiseBicubic? other) => other is not null && X.AsSpan().SequenceEqual(other.X) && Y.AsSpan().SequenceEqual(other.Y)
        && Coefficients.AsSpan().SequenceEqual(other.Coefficients);

    public override bool Equals(object? obj) => Equals(obj as PiecewiseBicubic);

    public override int GetHashCode() => HashCode.Combine(X.Length, Y.Length, X[0], Y[^1], Coefficients[0], Coefficients[^16]);

    // Both polynomials of every column along every edge between two rows, coefficient by coefficient, in units of the greatest term.
    private bool Jumps(bool slopes)
    {
        double jump = 0, greatest = 0;
        for (var row = 0; row < Rows - 1; row++)
        {
            var v = Y[row + 1] - Y[row];
            for (var at = 16 * row * Columns; at < 16 * (row + 1) * Columns; at += 4)
            {
                var c = Coefficients.AsSpan(at, 4);
                var (next, column) = (at + 16 * Columns, at / 16 % Columns);
                var size = Math.Pow(X[column + 1] - X[column], at / 4 % 4);
                var end = slopes ? c[1] + v * (2 * c[2] + v * 3 * c[3]) : c[0] + v * (c[1] + v * (c[2] + v * c[3]));
                var terms = slopes ? Math.Abs(c[1]) + v * (2 * Math.Abs(c[2]) + v * 3 * Math.Abs(c[3])) : Math.Abs(c[0]) + v * (Math.Abs(c[1]) + v * (Math.Abs(c[2]) + v * Math.Abs(c[3])));
                jump = Math.Max(jump, size * Math.Abs(end - Coefficients[slopes ? next + 1 : next]));
                greatest = Math.Max(greatest, size * terms);
            }
        }
        return !(jump <= Rounding * greatest);
    }

    /// <summary>The intervals that a stretch touches, each with its moments.</summary>
    private static (int Interval, double[] Moments)[] Pieces(double[] knots, Knots index, double from, double to)
    {
        var pieces = new List<(int, double[])>();
        for (var k = index.IndexOf(from); k < knots.Length - 1 && (k == 0 || knots[k] < to); k++)
        {
            var a = (k == 0 ? from : Math.Max(from, knots[k])) - knots[k];
            var b = (k == knots.Length - 2 ? to : Math.Min(to, knots[k + 1])) - knots[k];
            if (a < b)
            {
                pieces.Add((k, [b - a, (b * b - a * a) / 2, (b * b * b - a * a * a) / 3, (b * b * b * b - a * a * a * a) / 4]));
            }
        }
        return [.. pieces];
    }

    /// <summary>∫ u^i du, i = 0..3, over the part of each interval between two coordinates; the outer intervals reach to infinity.</summary>
    private static double[,] Moments(double[] knots, double from, double to)
    {
        var moments = new double[knots.Length - 1, 4];
        for (var k = 0; k < knots.Length - 1; k++)
        {
            var a = k == 0 ? from : Math.Max(from, knots[k]);
            var b = k == knots.Length - 2 ? to : Math.Min(to, knots[k + 1]);
            if (a >= b)
            {
                continue;
            }
            (a, b) = (a - knots[k], b - knots[k]);
            double powerA = a, powerB = b;
            for (var i = 0; i < 4; i++)
            {
                moments[k, i] = (powerB - powerA) / (i + 1);
                (powerA, powerB) = (powerA * a, powerB * b);
            }
        }
        return moments;
    }
}
