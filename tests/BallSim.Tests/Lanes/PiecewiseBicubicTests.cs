using BallSim.Lanes;
using FsCheck.Xunit;

namespace BallSim.Tests.Lanes;

/// <summary>What an oil map's interpolation promises, on any table.</summary>
[Properties(Arbitrary = [typeof(Grids)], MaxTest = 1000)]
public class PiecewiseBicubicTests
{
    private static PiecewiseBicubic Map(Grid g, bool holdsOutside = true) => PiecewiseBicubic.FromTable(g.X, g.Y, g.Values, holdsOutside);

    private static (double X, double Y, int I, int K) Place(Grid g, Spot s)
    {
        var (i, k) = (s.Column % (g.X.Length - 1), s.Row % (g.Y.Length - 1));
        return (g.X[i] + s.U * (g.X[i + 1] - g.X[i]), g.Y[k] + s.V * (g.Y[k + 1] - g.Y[k]), i, k);
    }

    /// <summary>f, f_x and f_y of one cell's polynomial.</summary>
    private static (double F, double Fx, double Fy) Jet(PiecewiseBicubic map, int column, int row, double x, double y)
    {
        var (u, v) = (x - map.X[column], y - map.Y[row]);
        double f = 0, fx = 0, fy = 0;
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                var c = map.Coefficients[16 * (row * map.Columns + column) + 4 * i + j];
                f += c * Math.Pow(u, i) * Math.Pow(v, j);
                fx += i == 0 ? 0 : c * i * Math.Pow(u, i - 1) * Math.Pow(v, j);
                fy += j == 0 ? 0 : c * j * Math.Pow(u, i) * Math.Pow(v, j - 1);
            }
        }
        return (f, fx, fy);
    }

    [Property]
    public void It_keeps_within_the_four_corners_of_its_cell(Grid g, Spot s)
    {
        var (x, y, i, k) = Place(g, s);
        double[] corners = [g.Values[k, i], g.Values[k, i + 1], g.Values[k + 1, i], g.Values[k + 1, i + 1]];
        var slack = 4e-15 * corners.Max();
        // The polynomial of this very cell, also at its upper edges.
        var map = Map(g, holdsOutside: false);
        Assert.InRange(Jet(map, i, k, x, y).F, corners.Min() - slack, corners.Max() + slack);
        Assert.InRange(map.At(x, y), corners.Min() - slack, corners.Max() + slack);
    }

    [Property]
    public void Of_a_table_neither_values_nor_slopes_jump_from_row_to_row(Grid g)
    {
        Assert.True(Map(g).IsContinuous);
        Assert.True(Map(g, holdsOutside: false).IsSmooth);
        Assert.True(PiecewiseBicubic.Surface(g.X, g.Y, g.Values).IsSmooth);
    }

    [Property]
    public void A_jump_is_seen(Grid g, Spot s)
    {
        var map = Map(g, holdsOutside: false);
        var c = map.Coefficients.ToArray();
        var at = 16 * (s.Row % map.Rows * map.Columns + s.Column % map.Columns);
        c[at] += 1e-6 * Math.Max(g.Values.Cast<double>().Max(), 1);
        // Of one row alone nothing can jump.
        Assert.Equal(map.Rows == 1, new PiecewiseBicubic(map.X, map.Y, c).IsContinuous);
        c[at] = map.Coefficients[at];
        // Zero at both edges, but not its slope.
        var h = map.Y[s.Row % map.Rows + 1] - map.Y[s.Row % map.Rows];
        c[at + 1] += 1e-3 / h;
        c[at + 2] -= 1e-3 / (h * h);
        var bent = new PiecewiseBicubic(map.X, map.Y, c);
        Assert.True(bent.IsContinuous);
        Assert.Equal(map.Rows == 1, bent.IsSmooth);
    }

    [Property]
    public void It_goes_through_the_table(Grid g)
    {
        var map = Map(g);
        for (var k = 0; k < g.Y.Length; k++)
        {
            for (var i = 0; i < g.X.Length; i++)
            {
                Assert.Equal(g.Values[k, i], map.At(g.X[i], g.Y[k]), 1e-14 * g.Span);
            }
        }
    }

    [Property]
    public void Value_and_both_slopes_agree_from_both_sides_of_an_edge(Grid g, Spot s)
    {
        var map = Map(g, holdsOutside: false);
        var (x, y, i, k) = Place(g, s);
        void Same((double F, double Fx, double Fy) a, (double F, double Fx, double Fy) b, double h)
        {
            // Slopes relative to the steepest that the narrower cell could show.
            Assert.Equal(a.F, b.F, 1e-13 * g.Span);
            Assert.Equal(a.Fx, b.Fx, 1e-12 * g.Span / h);
            Assert.Equal(a.Fy, b.Fy, 1e-12 * g.Span / h);
        }
        if (i > 0)
        {
            var edge = g.X[i];
            Same(Jet(map, i - 1, k, edge, y), Jet(map, i, k, edge, y), Narrowest(g));
        }
        if (k > 0)
        {
            var edge = g.Y[k];
            Same(Jet(map, i, k - 1, x, edge), Jet(map, i, k, x, edge), Narrowest(g));
        }
    }

    private static double Narrowest(Grid g) => g.X.Zip(g.X.Skip(1), (a, b) => b - a).Concat(g.Y.Zip(g.Y.Skip(1), (a, b) => b - a)).Min();

    [Property]
    public void A_film_linear_in_x_and_y_is_exact_up_to_the_edges(Grid g, Spot s, byte constant, byte perX, byte perY, byte twist)
    {
        double Film(double x, double y) => 300 + constant + (perX - 128) / 10.0 * x + (perY - 128) / 10.0 * y + (twist - 128) / 100.0 * x * y;
        var map = PiecewiseBicubic.FromTable(g.X, g.Y, Grids.Table(g.Y.Length, g.X.Length, (k, i) => Film(g.X[i], g.Y[k])));
        var (x, y, _, _) = Place(g, s);
        // A secant over a narrow cell carries the rounding of its two values and counts over the wide cell beside it: the error grows as the ratio of their widths (half a unit in the
        // last place of each value, twice at the end of a line, in two directions: 4e-15), that of the twist as the product of both ratios (four values, (4/27)² of a cell, twice two: 4e-17).
        var (across, along) = (Steps(g.X), Steps(g.Y));
        Assert.Equal(Film(x, y), map.At(x, y), (1e-13 + 4e-15 * (across + along) + 4e-17 * across * along) * g.X.Max(a => g.Y.Max(b => Math.Abs(Film(a, b)))));
    }

    private static double Steps(double[] knots)
    {
        double[] widths = [.. knots.Zip(knots.Skip(1), (a, b) => b - a)];
        return widths.Zip(widths.Skip(1), (a, b) => Math.Max(a / b, b / a)).DefaultIfEmpty(1).Max();
    }

    [Fact]
    public void A_linear_film_on_the_boards_and_feet_of_a_lane_is_exact()
    {
        double[] x = [.. Enumerable.Range(1, 39).Select(b => RegulationLane.PlaceOf(40 - b))];
        double[] y = [0, .. Enumerable.Range(1, 12).Select(k => k * 0.9144 + 0.1 * Math.Sin(k)), 13, 18.288];
        static double Film(double x, double y) => 12e-6 - 9e-6 * x - 0.4e-6 * y;
        var map = PiecewiseBicubic.FromTable(x, y, Grids.Table(y.Length, x.Length, (k, i) => Film(x[i], y[k])));
        for (var u = x[0]; u <= x[^1]; u += 0.0037)
        {
            for (var v = 0.0; v <= y[^1]; v += 0.093)
            {
                Assert.Equal(Film(u, v), map.At(u, v), 1e-13 * Film(u, v));
            }
        }
    }

    [Property]
    public void Outside_it_holds_the_edge_value(Grid g, Spot s)
    {
        var map = Map(g);
        var (x, y, _, _) = Place(g, s);
        Assert.Equal(map.At(g.X[0], y), map.At(g.X[0] - 7, y), 1e-14 * g.Span);
        Assert.Equal(map.At(g.X[^1], y), map.At(g.X[^1] + 7, y));
        Assert.Equal(map.At(x, g.Y[0]), map.At(x, g.Y[0] - 7), 1e-14 * g.Span);
        Assert.Equal(map.At(x, g.Y[^1]), map.At(x, g.Y[^1] + 70));
        Assert.Equal(g.Values[g.Y.Length - 1, 0], map.At(g.X[0] - 7, g.Y[^1] + 7));
    }

    [Property]
    public void Turned_round_left_to_right_it_is_the_mirror_image(Grid g, Spot s)
    {
        var n = g.X.Length;
        var mirrored = PiecewiseBicubic.FromTable([.. g.X.Reverse().Select(x => -x)], g.Y, Grids.Table(g.Y.Length, n, (k, i) => g.Values[k, n - 1 - i]));
        var (x, y, _, _) = Place(g, s);
        Assert.Equal(Map(g).At(x, y), mirrored.At(-x, y), 1e-12 * g.Span);
    }

    [Property]
    public void The_integral_is_that_of_Gauss_quadrature_over_its_cells(Grid g, Spot from, Spot to)
    {
        var map = Map(g);
        var (x0, y0, _, _) = Place(g, from);
        var (x1, y1, _, _) = Place(g, to);
        (x0, x1) = (Math.Min(x0, x1) - 0.4, Math.Max(x0, x1) + 0.3);
        (y0, y1) = (Math.Min(y0, y1) - 0.2, Math.Max(y0, y1) + 0.1);
        static double[] Cuts(double[] knots, double a, double b) => [a, .. knots.Where(k => k > a && k < b), b];
        // Two-point Gauss integrates cubics exactly.
        static (double, double) Points(double a, double b) => ((a + b) / 2 - (b - a) / Math.Sqrt(12), (a + b) / 2 + (b - a) / Math.Sqrt(12));
        double sum = 0;
        var (xs, ys) = (Cuts(map.X, x0, x1), Cuts(map.Y, y0, y1));
        for (var i = 0; i < xs.Length - 1; i++)
        {
            for (var k = 0; k < ys.Length - 1; k++)
            {
                var (xa, xb) = Points(xs[i], xs[i + 1]);
                var (ya, yb) = Points(ys[k], ys[k + 1]);
                sum += (xs[i + 1] - xs[i]) * (ys[k + 1] - ys[k]) / 4 * (map.At(xa, ya) + map.At(xb, ya) + map.At(xa, yb) + map.At(xb, yb));
            }
        }
        Assert.Equal(sum, map.Integral(x0, x1, y0, y1), 1e-12 * Math.Max(Math.Abs(sum), g.Span * (x1 - x0) * (y1 - y0)));
    }

    [Property]
    public void Rows_and_knots_are_those_of_a_plain_search(Grid g, Spot s)
    {
        var map = Map(g);
        var (_, y, _, _) = Place(g, s);
        foreach (var at in (double[])[y, .. g.Y, g.Y[0] - 3, g.Y[^1] + 3])
        {
            var row = Math.Clamp(map.Y.Count(k => k <= at) - 1, 0, map.Rows - 1);
            Assert.Equal(row, map.RowOf(at));
            Assert.Equal(g.Y.Where(k => k > at).DefaultIfEmpty(double.PositiveInfinity).First(), map.EndOf(row));
        }
    }

    [Fact]
    public void A_given_row_is_used_beyond_its_end()
    {
        var map = PiecewiseBicubic.DownLane([0, 1, 2], [[5, 1], [10]]);
        Assert.Equal(6.5, map.At(0.3, 1.5, 0));
        Assert.Equal(10, map.At(0.3, 1.5));
        Assert.Equal(10, map.At(0.3, 1));
        Assert.Equal(1, map.EndOf(map.RowOf(-4)));
        Assert.Equal(double.PositiveInfinity, map.EndOf(map.RowOf(1)));
    }

    [Fact]
    public void A_product_of_two_profiles_is_followed_to_second_order()
    {
        // Grid halved, error of f = g(x) h(y) at least quartered: the limits do not spoil a smooth film away from its extrema.
        static double Film(double x, double y) => Math.Exp(0.7 * x) * (2 - Math.Cos(0.5 * y));
        static double Error(int n)
        {
            double[] knots = [.. Enumerable.Range(0, n + 1).Select(i => 0.2 + 2.0 * i / n)];
            var map = PiecewiseBicubic.FromTable(knots, knots, Grids.Table(n + 1, n + 1, (k, i) => Film(knots[i], knots[k])));
            double worst = 0;
            for (var x = 0.2; x < 2.2; x += 0.0137)
            {
                for (var y = 0.2; y < 2.2; y += 0.0171)
                {
                    worst = Math.Max(worst, Math.Abs(map.At(x, y) - Film(x, y)));
                }
            }
            return worst;
        }
        Assert.InRange(Math.Log2(Error(10) / Error(20)), 1.9, 4.1);
        Assert.InRange(Math.Log2(Error(20) / Error(40)), 1.9, 4.1);
    }

    [Fact]
    public void Maps_of_the_same_numbers_are_equal()
    {
        Assert.Equal(OilMap.Even(12, 1e-5), OilMap.Even(12, 1e-5));
        Assert.NotEqual(OilMap.Even(12, 1e-5), OilMap.Even(12, 2e-5));
    }
}
