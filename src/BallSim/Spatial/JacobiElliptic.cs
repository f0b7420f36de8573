namespace BallSim.Spatial;

/// <summary>
/// The Jacobi elliptic functions of parameter m = k², 0 ≤ m ≤ 1, given by its complement m1 = 1 - m, which is what stays exact near the
/// separatrix m → 1.
/// </summary>
/// <remarks>
/// Amplitudes by the arithmetic-geometric mean and the descending Landen transformation, NIST DLMF 22.20(ii); beyond half a quarter period
/// by the reflection in it, DLMF table 22.4.3, so that small values keep their relative accuracy. Integrals in Carlson's symmetric form by
/// duplication, DLMF 19.36(i).
/// </remarks>
internal static class JacobiElliptic
{
    /// <summary>The complete integral K, the quarter period; infinite for m1 = 0.</summary>
    public static double QuarterPeriod(double m1)
    {
        var (a, b) = (1.0, Math.Sqrt(m1));
        // Quadratic convergence, after one step for each halving of the logarithm of b: 40 are enough for the smallest double.
        for (var i = 0; i < 40 && a - b > 1e-15 * a; i++)
        {
            (a, b) = ((a + b) / 2, Math.Sqrt(a * b));
        }
        return m1 == 0 ? double.PositiveInfinity : Math.PI / (2 * a);
    }

    /// <summary>sn, cn and dn of u, for |u| up to the quarter period.</summary>
    public static (double Sn, double Cn, double Dn) InQuarter(double u, double m1)
    {
        if (m1 == 0)
        {
            var sech = 1 / Math.Cosh(u);
            return (Math.Tanh(u), sech, sech);
        }
        var k = QuarterPeriod(m1);
        if (Math.Abs(u) <= k / 2)
        {
            return Direct(u, m1);
        }
        var (s, c, d) = Direct(k - Math.Abs(u), m1);
        var k1 = Math.Sqrt(m1);
        return (Math.Sign(u) * c / d, k1 * s / d, k1 / d);
    }

    /// <summary>
    /// The incomplete integral of the first kind as a function of sin φ and cos φ of one angle within a quarter turn of 0.
    /// </summary>
    public static double First(double sin, double cos, double m1) => sin * CarlsonF(cos * cos, cos * cos + m1 * sin * sin, 1);

    /// <summary>
    /// ∫₀ᵘ dv/(1 + r sn² v), r ≥ 0, for |u| up to the quarter period, from u and its functions: u - (r/3) sn³ R_J(cn², dn², 1, 1 + r sn²),
    /// DLMF 19.25.14.
    /// </summary>
    public static double Third(double u, double r, double sn, double cn, double dn) =>
        u - r / 3 * sn * sn * sn * CarlsonJ(cn * cn, dn * dn, 1, 1 + r * sn * sn);

    private static (double Sn, double Cn, double Dn) Direct(double u, double m1)
    {
        const int Most = 40;
        Span<double> ratios = stackalloc double[Most];
        var (a, b) = (1.0, Math.Sqrt(m1));
        var n = 0;
        while (n < Most && a - b > 1e-15 * a)
        {
            ratios[n++] = (a - b) / (a + b);
            (a, b) = ((a + b) / 2, Math.Sqrt(a * b));
        }
        var φ = Math.ScaleB(a * u, n);
        while (n > 0)
        {
            φ = (φ + Math.Asin(ratios[--n] * Math.Sin(φ))) / 2;
        }
        var (sn, cn) = Math.SinCos(φ);
        return (sn, cn, Math.Sqrt(cn * cn + m1 * sn * sn));
    }

    private static double CarlsonF(double x, double y, double z)
    {
        // Each duplication brings the arguments together by a factor of four; the series then neglects eighth-order terms.
        for (var i = 0; i < 60; i++)
        {
            var mean = (x + y + z) / 3;
            if (Math.Max(Math.Abs(mean - x), Math.Max(Math.Abs(mean - y), Math.Abs(mean - z))) < 2e-3 * mean)
            {
                break;
            }
            var λ = Math.Sqrt(x * y) + Math.Sqrt(x * z) + Math.Sqrt(y * z);
            (x, y, z) = ((x + λ) / 4, (y + λ) / 4, (z + λ) / 4);
        }
        var a = (x + y + z) / 3;
        var (dx, dy) = (1 - x / a, 1 - y / a);
        var dz = -dx - dy;
        var (e2, e3) = (dx * dy - dz * dz, dx * dy * dz);
        // DLMF 19.36.1, to the seventh order in the differences.
        var series = 1 - e2 / 10 + e3 / 14 + e2 * e2 / 24 - 3 * e2 * e3 / 44 - 5 * e2 * e2 * e2 / 208
            + 3 * e3 * e3 / 104 + e2 * e2 * e3 / 16;
        return series / Math.Sqrt(a);
    }

    // For p ≥ x, y, z only.
    private static double CarlsonJ(double x, double y, double z, double p)
    {
        var (sum, weight) = (0.0, 1.0);
        for (var i = 0; i < 60; i++)
        {
            var mean = (x + y + z + 2 * p) / 5;
            var off = Math.Max(Math.Max(Math.Abs(mean - x), Math.Abs(mean - y)), Math.Max(Math.Abs(mean - z), Math.Abs(mean - p)));
            if (off < 2e-3 * mean)
            {
                break;
            }
            var (rx, ry, rz, rp) = (Math.Sqrt(x), Math.Sqrt(y), Math.Sqrt(z), Math.Sqrt(p));
            var λ = rx * ry + rx * rz + ry * rz;
            var d = (rp + rx) * (rp + ry) * (rp + rz);
            var e = (p - x) * (p - y) * (p - z) / (d * d);
            sum += weight / d * CarlsonC(1 + e);
            (x, y, z, p) = ((x + λ) / 4, (y + λ) / 4, (z + λ) / 4, (p + λ) / 4);
            weight /= 4;
        }
        var a = (x + y + z + 2 * p) / 5;
        var (dx, dy, dz) = (1 - x / a, 1 - y / a, 1 - z / a);
        var dp = -(dx + dy + dz) / 2;
        var (xyz, pp) = (dx * dy * dz, dp * dp);
        var e2 = dx * dy + dx * dz + dy * dz - 3 * pp;
        var e3 = xyz + 2 * e2 * dp + 4 * pp * dp;
        var e4 = (2 * xyz + e2 * dp + 3 * pp * dp) * dp;
        var e5 = xyz * pp;
        // DLMF 19.36.2, to the seventh order in the differences.
        var series = 1 - 3 * e2 / 14 + e3 / 6 + 9 * e2 * e2 / 88 - 3 * e4 / 22 - 9 * e2 * e3 / 52 + 3 * e5 / 26
            - e2 * e2 * e2 / 16 + 3 * e3 * e3 / 40 + 3 * e2 * e4 / 20 + 45 * e2 * e2 * e3 / 272 - 9 * (e3 * e4 + e2 * e5) / 68;
        return 6 * sum + weight * series / (a * Math.Sqrt(a));
    }

    // R_C(1, y) for y ≥ 1, DLMF 19.2.18; the series where the formula loses digits.
    private static double CarlsonC(double y)
    {
        var e = y - 1;
        if (e < 1e-3)
        {
            return 1 - e * (1.0 / 3 - e * (1.0 / 5 - e * (1.0 / 7 - e * (1.0 / 9 - e * (1.0 / 11)))));
        }
        var root = Math.Sqrt(e);
        return Math.Atan(root) / root;
    }
}
