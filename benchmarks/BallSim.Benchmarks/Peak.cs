using System.Diagnostics;
using System.Runtime.Intrinsics;

namespace BallSim.Benchmarks;

/// <summary>What one core can do at most: fused multiply-adds of the widest vectors there are, from registers alone, twelve chains side by side.</summary>
internal static class Peak
{
    private const int Chains = 12;
    private const int Turns = 1_000_000;

    /// <summary>Doubles in a vector.</summary>
    public static int Doubles => Vector512.IsHardwareAccelerated ? Vector512<double>.Count : Vector256<double>.Count;

    /// <summary>Billions of operations of doubles a second; of floats there are twice as many.</summary>
    public static double Measured()
    {
        var least = double.PositiveInfinity;
        for (var round = 0; round < 60; round++)
        {
            var began = Stopwatch.GetTimestamp();
            var kept = Vector512.IsHardwareAccelerated ? Wide() : Narrow();
            var taken = Stopwatch.GetElapsedTime(began).TotalNanoseconds;
            least = double.IsFinite(kept) ? Math.Min(least, taken) : least;
        }
        return 2.0 * Chains * Doubles * Turns / least;
    }

    // The two say the same of vectors of eight and of four doubles.
    private static double Wide()
    {
        Vector512<double> m = Vector512.Create(0.999999), c = Vector512.Create(1e-6);
        Vector512<double> a = m, b = m, d = m, e = m, f = m, g = m, h = m, i = m, j = m, k = m, l = m, n = m;
        for (var turn = 0; turn < Turns; turn++)
        {
            a = Vector512.FusedMultiplyAdd(a, m, c);
            b = Vector512.FusedMultiplyAdd(b, m, c);
            d = Vector512.FusedMultiplyAdd(d, m, c);
            e = Vector512.FusedMultiplyAdd(e, m, c);
            f = Vector512.FusedMultiplyAdd(f, m, c);
            g = Vector512.FusedMultiplyAdd(g, m, c);
            h = Vector512.FusedMultiplyAdd(h, m, c);
            i = Vector512.FusedMultiplyAdd(i, m, c);
            j = Vector512.FusedMultiplyAdd(j, m, c);
            k = Vector512.FusedMultiplyAdd(k, m, c);
            l = Vector512.FusedMultiplyAdd(l, m, c);
            n = Vector512.FusedMultiplyAdd(n, m, c);
        }
        return Vector512.Sum(a + b + d + e + f + g + h + i + j + k + l + n);
    }

    private static double Narrow()
    {
        Vector256<double> m = Vector256.Create(0.999999), c = Vector256.Create(1e-6);
        Vector256<double> a = m, b = m, d = m, e = m, f = m, g = m, h = m, i = m, j = m, k = m, l = m, n = m;
        for (var turn = 0; turn < Turns; turn++)
        {
            a = Vector256.FusedMultiplyAdd(a, m, c);
            b = Vector256.FusedMultiplyAdd(b, m, c);
            d = Vector256.FusedMultiplyAdd(d, m, c);
            e = Vector256.FusedMultiplyAdd(e, m, c);
            f = Vector256.FusedMultiplyAdd(f, m, c);
            g = Vector256.FusedMultiplyAdd(g, m, c);
            h = Vector256.FusedMultiplyAdd(h, m, c);
            i = Vector256.FusedMultiplyAdd(i, m, c);
            j = Vector256.FusedMultiplyAdd(j, m, c);
            k = Vector256.FusedMultiplyAdd(k, m, c);
            l = Vector256.FusedMultiplyAdd(l, m, c);
            n = Vector256.FusedMultiplyAdd(n, m, c);
        }
        return Vector256.Sum(a + b + d + e + f + g + h + i + j + k + l + n);
    }
}
