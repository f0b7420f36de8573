using MathNet.Numerics.Integration;

namespace BallSim.Balls;

/// <summary>Adaptive Gauss-Legendre quadrature of moments: a panel is halved until its halves agree with it.</summary>
internal static class Quadrature
{
    private const int Order = 8;
    private const int Deepest = 14;
    private const double Shortest = 2e-9;

    private static GaussLegendreRule Rule { get; } = new(-1, 1, Order);

    /// <summary>The integral over [from, to]; the tolerance bounds the error of every panel by <see cref="Moments.Size"/> at the
    /// length.</summary>
    public static Moments Integral(Func<double, Moments> f, double from, double to, double tolerance, double length) =>
        to > from ? Refined(f, from, to, Panel(f, from, to), tolerance, length, 0) : default;

    /// <summary>
    /// The same with v = m - h cos θ: a square root at either end, as where a line grazes a surface, becomes smooth.
    /// </summary>
    public static Moments BetweenRoots(Func<double, Moments> f, double from, double to, double tolerance, double length)
    {
        var (middle, half) = ((from + to) / 2, (to - from) / 2);
        return Integral(θ => half * Math.Sin(θ) * f(middle - half * Math.Cos(θ)), 0, half > 0 ? Math.PI : 0, tolerance, length);
    }

    /// <summary>The sum of <see cref="BetweenRoots"/> over the pieces between sorted places; places outside [from, to] are passed
    /// over.</summary>
    public static Moments Piecewise(Func<double, Moments> f, double from, double to, List<double> places, double tolerance, double length)
    {
        places.Sort();
        var sum = default(Moments);
        var low = from;
        foreach (var place in places)
        {
            // Pieces this short are no pieces: a square root so near the end of another is lost in the tolerance.
            if (place > low + Shortest * (to - from) && place < to - Shortest * (to - from))
            {
                sum += BetweenRoots(f, low, place, tolerance, length);
                low = place;
            }
        }
        return sum + BetweenRoots(f, low, to, tolerance, length);
    }

    private static Moments Refined(Func<double, Moments> f, double from, double to, Moments whole, double tolerance, double length, int depth)
    {
        var middle = (from + to) / 2;
        var (left, right) = (Panel(f, from, middle), Panel(f, middle, to));
        return depth == Deepest || (left + right - whole).Size(length) <= tolerance
            ? left + right
            : Refined(f, from, middle, left, tolerance, length, depth + 1) + Refined(f, middle, to, right, tolerance, length, depth + 1);
    }

    private static Moments Panel(Func<double, Moments> f, double from, double to)
    {
        var (middle, half) = ((from + to) / 2, (to - from) / 2);
        var sum = default(Moments);
        for (var i = 0; i < Order; i++)
        {
            sum += Rule.GetWeight(i) * half * f(middle + half * Rule.GetAbscissa(i));
        }
        return sum;
    }
}
