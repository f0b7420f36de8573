using System.Diagnostics;
using System.Runtime.Intrinsics;
using BallSim.Spatial;

namespace BallSim.Benchmarks;

/// <summary>What one core can do at most: fused multiply-adds of the widest vectors there are, from registers alone, twelve chains side by side.</summary>
internal static class Peak
{
    private const int Chains = 12;
    private const int Turns = 1_000_000;

    /// <summary>Doubles in a vector.</summary>
    public static int Doubles => Vector512.IsHardwareAccelerated ? Doubles8.Count : Doubles4.Count;

    /// <summary>Billions of operations of doubles a second; of floats there are twice as many.</summary>
    public static double Measured()
    {
        var least = double.PositiveInfinity;
        for (var round = 0; round < 60; round++)
        {
            var began = Stopwatch.GetTimestamp();
            var kept = Vector512.IsHardwareAccelerated ? MultiplyAdd<Doubles8>() : MultiplyAdd<Doubles4>();
            var taken = Stopwatch.GetElapsedTime(began).TotalNanoseconds;
            least = double.IsFinite(kept) ? Math.Min(least, taken) : least;
        }
        return 2.0 * Chains * Doubles * Turns / least;
    }

    private static double MultiplyAdd<T>()
        where T : struct, ILanes<T>, IReal<T>
    {
        T m = 0.999999, c = 1e-6;
        T a = m, b = m, d = m, e = m, f = m, g = m, h = m, i = m, j = m, k = m, l = m, n = m;
        for (var turn = 0; turn < Turns; turn++)
        {
            a = T.Fma(a, m, c);
            b = T.Fma(b, m, c);
            d = T.Fma(d, m, c);
            e = T.Fma(e, m, c);
            f = T.Fma(f, m, c);
            g = T.Fma(g, m, c);
            h = T.Fma(h, m, c);
            i = T.Fma(i, m, c);
            j = T.Fma(j, m, c);
            k = T.Fma(k, m, c);
            l = T.Fma(l, m, c);
            n = T.Fma(n, m, c);
        }
        return T.Lane(a + b + d + e + f + g + h + i + j + k + l + n, 0);
    }
}
