namespace BallSim.Lanes;

/// <summary>
/// Bicubic Hermite interpolation on a rectangular grid whose derivatives at the nodes are those of the parabola through a node and its neighbours: exact where the data are quadratic along
/// either axis, C1 everywhere, and free to pass the data's highest and lowest values, as a surface does. Beyond the grid it goes on straight.
/// </summary>
internal static class ParabolicHermite
{
    public static PiecewiseBicubic Through(double[] x, double[] y, double[,] values)
    {
        var f = Widened(x, y, values);
        var (wideX, wideY) = (Widened(x), Widened(y));
        var columns = wideX.Length - 1;
        var coefficients = new double[16 * columns * (wideY.Length - 1)];
        var fx = AlongX(wideX, f);
        var (fy, fxy) = (AlongY(wideY, f), AlongY(wideY, fx));
        for (var row = 0; row < wideY.Length - 1; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                HermiteNode Corner(int di, int dk) => new(f[row + dk, column + di], fx[row + dk, column + di], fy[row + dk, column + di], fxy[row + dk, column + di]);
                HermiteNode.Cell(Corner(0, 0), Corner(1, 0), Corner(0, 1), Corner(1, 1), wideX[column + 1] - wideX[column], wideY[row + 1] - wideY[row],
                    coefficients.AsSpan(16 * (row * columns + column), 16));
            }
        }
        return new(wideX, wideY, coefficients);
    }

    // One more node on each side, on the straight line that leaves the grid with the edge's slope.
    private static double[] Widened(double[] knots) => [2 * knots[0] - knots[1], .. knots, 2 * knots[^1] - knots[^2]];

    private static double[,] Widened(double[] x, double[] y, double[,] f)
    {
        var (rows, columns) = (y.Length, x.Length);
        var wide = new double[rows + 2, columns + 2];
        for (var k = 0; k < rows; k++)
        {
            for (var i = 0; i < columns; i++)
            {
                wide[k + 1, i + 1] = f[k, i];
            }
            var at = k;
            wide[k + 1, 0] = f[k, 0] - (x[1] - x[0]) * Slope(x, n => f[at, n], 0);
            wide[k + 1, columns + 1] = f[k, columns - 1] + (x[^1] - x[^2]) * Slope(x, n => f[at, n], columns - 1);
        }
        for (var i = 0; i < columns + 2; i++)
        {
            var at = i;
            wide[0, i] = wide[1, i] - (y[1] - y[0]) * Slope(y, n => wide[n + 1, at], 0);
            wide[rows + 1, i] = wide[rows, i] + (y[^1] - y[^2]) * Slope(y, n => wide[n + 1, at], rows - 1);
        }
        return wide;
    }

    private static double[,] AlongX(double[] x, double[,] f) => Slopes(f, (k, i) => OuterFirst(x, n => f[k, n], i));

    private static double[,] AlongY(double[] y, double[,] f) => Slopes(f, (k, i) => OuterFirst(y, n => f[n, i], k));

    private static double[,] Slopes(double[,] f, Func<int, int, double> slope)
    {
        var slopes = new double[f.GetLength(0), f.GetLength(1)];
        for (var k = 0; k < f.GetLength(0); k++)
        {
            for (var i = 0; i < f.GetLength(1); i++)
            {
                slopes[k, i] = slope(k, i);
            }
        }
        return slopes;
    }

    // On the widened line: the added outer intervals are straight, with the slope of the grid's own edge.
    private static double OuterFirst(double[] knots, Func<int, double> f, int n)
    {
        var last = knots.Length - 1;
        return n <= 1 ? (f(1) - f(0)) / (knots[1] - knots[0])
            : n >= last - 1 ? (f(last) - f(last - 1)) / (knots[last] - knots[last - 1])
            : Slope(knots, f, n);
    }

    private static double Slope(double[] knots, Func<int, double> f, int n)
    {
        double Secant(int a) => (f(a + 1) - f(a)) / (knots[a + 1] - knots[a]);
        double Width(int a) => knots[a + 1] - knots[a];
        var last = knots.Length - 1;
        if (last == 1)
        {
            return Secant(0);
        }
        if (n == 0)
        {
            return Secant(0) + (Secant(0) - Secant(1)) * Width(0) / (Width(0) + Width(1));
        }
        if (n == last)
        {
            return Secant(last - 1) + (Secant(last - 1) - Secant(last - 2)) * Width(last - 1) / (Width(last - 1) + Width(last - 2));
        }
        return (Width(n) * Secant(n - 1) + Width(n - 1) * Secant(n)) / (Width(n - 1) + Width(n));
    }
}
