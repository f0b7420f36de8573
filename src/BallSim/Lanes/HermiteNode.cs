namespace BallSim.Lanes;

/// <summary>Value and derivatives at a node of a grid, and the bicubic cell between four of them.</summary>
internal readonly record struct HermiteNode(double F, double Fx, double Fy, double Fxy)
{
    /// <summary>Hermite data of a cell to powers: first along y on the two sides, then along x for each power of y.</summary>
    public static void Cell(HermiteNode n00, HermiteNode n10, HermiteNode n01, HermiteNode n11, double hx, double hy, Span<double> c)
    {
        Span<double> left = stackalloc double[4], right = stackalloc double[4], leftX = stackalloc double[4], rightX = stackalloc double[4];
        Cubic(n00.F, n01.F, n00.Fy, n01.Fy, hy, left);
        Cubic(n10.F, n11.F, n10.Fy, n11.Fy, hy, right);
        Cubic(n00.Fx, n01.Fx, n00.Fxy, n01.Fxy, hy, leftX);
        Cubic(n10.Fx, n11.Fx, n10.Fxy, n11.Fxy, hy, rightX);
        Span<double> powers = stackalloc double[4];
        for (var j = 0; j < 4; j++)
        {
            Cubic(left[j], right[j], leftX[j], rightX[j], hx, powers);
            for (var i = 0; i < 4; i++)
            {
                c[4 * i + j] = powers[i];
            }
        }
    }

    private static void Cubic(double f0, double f1, double d0, double d1, double h, Span<double> c)
    {
        var secant = (f1 - f0) / h;
        c[0] = f0;
        c[1] = d0;
        c[2] = (3 * secant - 2 * d0 - d1) / h;
        c[3] = (d0 + d1 - 2 * secant) / (h * h);
    }
}
