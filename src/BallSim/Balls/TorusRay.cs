namespace BallSim.Balls;

/// <summary>Where a line crosses the torus of which an arc is a piece: a quartic.</summary>
internal static class TorusRay
{
    /// <summary>
    /// Crossings of the line with squared distance from the axis a w² + 2 b w + c and height z + w dz over the centre of the tube, of ring
    /// radius and tube radius: (w² + 2(b + z dz) w + c + z² + R² - r²)² = 4 R² (a w² + 2 b w + c).
    /// </summary>
    public static int Crossings(double a, double b, double c, double z, double dz, double ring, double tube, Span<double> roots)
    {
        var (n1, n0, k) = (2 * (b + z * dz), c + z * z + ring * ring - tube * tube, 4 * ring * ring);
        ReadOnlySpan<double> quartic = [n0 * n0 - k * c, 2 * n1 * n0 - 2 * k * b, n1 * n1 + 2 * n0 - k * a, 2 * n1, 1];
        // The line is nearest the middle of the ring at -n1/2, and the torus within a sphere about that middle.
        var square = n1 * n1 / 4 - (c + z * z) + (Math.Abs(ring) + tube) * (Math.Abs(ring) + tube);
        if (square <= 0)
        {
            return 0;
        }
        var half = Math.Sqrt(square) * (1 + 1e-9);
        return RootsWithin(quartic, -n1 / 2 - half, -n1 / 2 + half, roots);
    }

    /// <summary>
    /// Real roots of a polynomial (rising powers) in an interval: between the roots of its derivative it only rises or only falls, so that
    /// bisection with Newton's steps cannot miss one. A double root lies within rounding of one of those and counts or not.
    /// </summary>
    private static int RootsWithin(ReadOnlySpan<double> p, double low, double high, Span<double> roots)
    {
        var degree = p.Length - 1;
        if (degree == 1)
        {
            var root = p[1] == 0 ? double.NaN : -p[0] / p[1];
            if (!(root > low && root < high))
            {
                return 0;
            }
            roots[0] = root;
            return 1;
        }
        Span<double> slope = stackalloc double[degree];
        for (var i = 1; i <= degree; i++)
        {
            slope[i - 1] = i * p[i];
        }
        Span<double> turns = stackalloc double[degree];
        var turning = RootsWithin(slope, low, high, turns);
        turns[turning] = high;
        var (count, from, atFrom) = (0, low, At(p, low));
        for (var i = 0; i <= turning; i++)
        {
            var (to, atTo) = (turns[i], At(p, turns[i]));
            if (atFrom > 0 != atTo > 0)
            {
                roots[count++] = Root(p, slope, from, to, atFrom > 0);
            }
            (from, atFrom) = (to, atTo);
        }
        return count;
    }

    private static double Root(ReadOnlySpan<double> p, ReadOnlySpan<double> slope, double low, double high, bool falls)
    {
        var x = (low + high) / 2;
        for (var i = 0; i < 100; i++)
        {
            var value = At(p, x);
            if (value > 0 == falls)
            {
                low = x;
            }
            else
            {
                high = x;
            }
            var next = x - value / At(slope, x);
            // A step out of the bracket, or none at all (NaN), is replaced by its middle.
            if (!(next > low && next < high))
            {
                next = (low + high) / 2;
            }
            if (Math.Abs(next - x) <= 1e-16 * Math.Max(Math.Abs(low), Math.Abs(high)) || next == low || next == high)
            {
                return next;
            }
            x = next;
        }
        return x;
    }

    private static double At(ReadOnlySpan<double> p, double x)
    {
        var sum = 0.0;
        for (var i = p.Length - 1; i >= 0; i--)
        {
            sum = sum * x + p[i];
        }
        return sum;
    }
}
