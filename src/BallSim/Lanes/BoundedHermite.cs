namespace BallSim.Lanes;

/// <summary>
/// Bicubic Hermite interpolation on a rectangular grid that keeps within its data.
/// </summary>
/// <remarks>
/// A bicubic cell with corner data f, f_x, f_y, f_xy is C1 with its neighbours, whatever the derivatives are, because they share them at the nodes. Written in Bernstein form it has
/// sixteen control values, four near each corner: f, f + a, f + b and f + a + b + c with a = ±h_x f_x/3, b = ±h_y f_y/3, c = ±h_x h_y f_xy/9, and the
/// cell is a convex combination of them. So if these stay within the least and greatest of the four corner values, in each of the cells around a node, the
/// function does: no negative film, no overshoot at a cliff.
/// <list type="number">
/// <item>f_x and f_y along the grid lines: the weighted harmonic mean of the neighbouring secants, zero where they differ in sign (Fritsch and Butland 1984,
/// SIAM J. Sci. Stat. Comput. 5, 300, in Brodlie's weights for uneven knots; from memory). It never exceeds three times the smaller secant, so f + a and f + b keep within the ends of
/// their edge. At the ends of a line the three-point formula, limited in the same way.</item>
/// <item>f_xy is wanted as the smaller of the slopes that the same rule finds for f_x along y and for f_y along x, zero where they differ in sign.</item>
/// <item>At each node the control values f + a + b + c of its cells leave an interval for f_xy, and the wanted value is moved into it.</item>
/// </list>
/// The interval of step 3 is never empty. Intervals that meet two by two have a common point, so two cells at a time are enough. Where f_x or f_y is zero, f_xy = 0 will do. Otherwise turn the axes so
/// that f rises along both. Cells side by side, say at +x, both allow f_xy = -f_y/(3 h_x). For the two opposite cells let D, D' be f_x/3 over the secants ahead and behind and E, E' the same of f_y: the harmonic
/// mean's weights, which lie in [1/3, 2/3], give D + D' ≤ 1 and E + E' ≤ 1. If D + E ≤ 1 and D' + E' ≤ 1, both allow f_xy = 0. If D + E = 1 + ε, the cell ahead only asks for
/// f_xy ≤ -ε min(f_y/(3 E h_x), f_x/(3 D h_y)) at worst, the cell behind allows down to -ε max(f_y/(3 E' h'_x), f_x/(3 D' h'_y)), and the weights tie h'/h to D, D' and to E, E' such that the second reaches the first.
/// Values a + b x + c y (and even + d x y) give equal secants and control values inside the corners' range: nothing is limited and the function is exact.
/// </remarks>
internal static class BoundedHermite
{
    public static PiecewiseBicubic Through(double[] x, double[] y, double[,] values, bool holdsOutside)
    {
        var nodes = Nodes(x, y, values);
        // A function that holds its edge values has one more cell on each side, constant across the edge.
        var pad = holdsOutside ? 1 : 0;
        var (knotsX, knotsY) = holdsOutside ? (Padded(x), Padded(y)) : ([.. x], [.. y]);
        var columns = knotsX.Length - 1;
        var rows = knotsY.Length - 1;
        var coefficients = new double[16 * rows * columns];
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var (i, k) = (column - pad, row - pad);
                var outsideX = i < 0 || i == x.Length - 1;
                var outsideY = k < 0 || k == y.Length - 1;
                HermiteNode Corner(int di, int dk)
                {
                    var node = nodes[Math.Clamp(k + dk, 0, y.Length - 1), Math.Clamp(i + di, 0, x.Length - 1)];
                    return new(node.F, outsideX ? 0 : node.Fx, outsideY ? 0 : node.Fy, outsideX || outsideY ? 0 : node.Fxy);
                }
                HermiteNode.Cell(Corner(0, 0), Corner(1, 0), Corner(0, 1), Corner(1, 1), knotsX[column + 1] - knotsX[column], knotsY[row + 1] - knotsY[row],
                    coefficients.AsSpan(16 * (row * columns + column), 16));
            }
        }
        return new PiecewiseBicubic(knotsX, knotsY, coefficients);
    }

    private static double[] Padded(double[] knots) => [knots[0] - 1, .. knots, knots[^1] + 1];

    private static HermiteNode[,] Nodes(double[] x, double[] y, double[,] f)
    {
        var (fx, fy) = (AlongX(x, f), AlongY(y, f));
        var (fxAlongY, fyAlongX) = (AlongY(y, fx), AlongX(x, fy));
        var nodes = new HermiteNode[y.Length, x.Length];
        for (var k = 0; k < y.Length; k++)
        {
            for (var i = 0; i < x.Length; i++)
            {
                var twist = Twist(x, y, f, i, k, fx[k, i], fy[k, i], Smaller(fxAlongY[k, i], fyAlongX[k, i]));
                nodes[k, i] = new(f[k, i], fx[k, i], fy[k, i], twist);
            }
        }
        return nodes;
    }

    /// <summary>Step 3 of the remarks: f_xy at node (i, k), as near to the wanted one as the inner control values of the node's cells allow.</summary>
    private static double Twist(double[] x, double[] y, double[,] f, int i, int k, double fx, double fy, double wanted)
    {
        double least = double.NegativeInfinity, most = double.PositiveInfinity;
        for (var di = -1; di <= 1; di += 2)
        {
            for (var dk = -1; dk <= 1; dk += 2)
            {
                if (i + di < 0 || i + di >= x.Length || k + dk < 0 || k + dk >= y.Length)
                {
                    continue;
                }
                var (hx, hy) = (x[i + di] - x[i], y[k + dk] - y[k]);
                var (here, across, along, opposite) = (f[k, i], f[k, i + di], f[k + dk, i], f[k + dk, i + di]);
                var plane = here + (hx * fx + hy * fy) / 3;
                var low = (Math.Min(Math.Min(here, across), Math.Min(along, opposite)) - plane) * 9 / (hx * hy);
                var high = (Math.Max(Math.Max(here, across), Math.Max(along, opposite)) - plane) * 9 / (hx * hy);
                least = Math.Max(least, Math.Min(low, high));
                most = Math.Min(most, Math.Max(low, high));
            }
        }
        // An interval that is a point may be turned inside out by rounding.
        return least < most ? Math.Clamp(wanted, least, most) : (least + most) / 2;
    }

    private static double[,] AlongX(double[] x, double[,] f)
    {
        var slopes = new double[f.GetLength(0), f.GetLength(1)];
        for (var k = 0; k < f.GetLength(0); k++)
        {
            for (var i = 0; i < x.Length; i++)
            {
                slopes[k, i] = Slope(x, n => f[k, n], i);
            }
        }
        return slopes;
    }

    private static double[,] AlongY(double[] y, double[,] f)
    {
        var slopes = new double[f.GetLength(0), f.GetLength(1)];
        for (var i = 0; i < f.GetLength(1); i++)
        {
            for (var k = 0; k < y.Length; k++)
            {
                slopes[k, i] = Slope(y, n => f[n, i], k);
            }
        }
        return slopes;
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
            return EndSlope(Width(0), Width(1), Secant(0), Secant(1));
        }
        if (n == last)
        {
            return EndSlope(Width(last - 1), Width(last - 2), Secant(last - 1), Secant(last - 2));
        }
        var (before, after) = (Secant(n - 1), Secant(n));
        if (Math.Sign(before) * Math.Sign(after) <= 0)
        {
            return 0;
        }
        var (h0, h1) = (Width(n - 1), Width(n));
        var weight = (h0 + 2 * h1) / (3 * (h0 + h1));
        return 1 / (weight / before + (1 - weight) / after);
    }

    /// <summary>The parabola's slope at the end of a line, at most three times the secant of the outer interval and never against it.</summary>
    private static double EndSlope(double outer, double inner, double outerSecant, double innerSecant)
    {
        var slope = outerSecant + (outerSecant - innerSecant) * outer / (outer + inner);
        return Math.Sign(slope) != Math.Sign(outerSecant) ? 0
            : Math.Abs(slope) > 3 * Math.Abs(outerSecant) ? 3 * outerSecant
            : slope;
    }

    private static double Smaller(double a, double b) =>
        Math.Sign(a) * Math.Sign(b) <= 0 ? 0 : Math.Abs(a) < Math.Abs(b) ? a : b;
}
