using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Integration;

/// <summary>
/// The state inside a step that has been taken. For <see cref="RungeKutta5{TOde,TState,T}"/> its interpolant of order 4; for <see cref="RosenbrockW3{TOde,TState,T}"/> the cubic through both ends.
/// </summary>
internal static class Dense<TState, T>
    where TState : struct, ILinear<TState, T>
    where T : struct, IReal<T>
{
    /// <summary>The state at the fraction θ of a step of length h that has been taken, to order 4.</summary>
    public static TState Between(in Step<TState> s, T h, T θ)
    {
        var y = s.Start;
        T one = 1.0, two = 2.0, three = 3.0;
        var rise = θ * θ * (three - two * θ);
        if (s.Interpolant == Interpolant.Cubic)
        {
            y.Add(rise, s.End, -rise, s.Start);
            y.Add(h * θ * (one - θ) * (one - θ), s.K1, h * θ * θ * (θ - one), s.K7);
            return y;
        }
        Along(s, h, θ, ref y);
        if (s.Interpolant == Interpolant.Mended)
        {
            var told = s.Start;
            Along(s, h, one, ref told);
            y.Add(rise, s.End, -rise, told);
        }
        return y;
    }

    private static void Along(in Step<TState> s, T h, T θ, ref TState y)
    {
        Weights(h, θ, out var w1, out var w3, out var w4, out var w5, out var w6, out var w7);
        y.Add(w1, s.K1, w3, s.K3, w4, s.K4);
        y.Add(w5, s.K5, w6, s.K6, w7, s.K7);
    }

    /// <summary>What the slopes of an explicit step count at the fraction θ of it.</summary>
    public static void Weights(T h, T θ, out T w1, out T w3, out T w4, out T w5, out T w6, out T w7)
    {
        var hθ = h * θ;
        w1 = hθ * T.Fma(Weight(θ, -2.7353502828614107, 2.870563158103125, -1.0352472271466375), θ, 1.0);
        hθ = hθ * θ;
        w3 = hθ * Weight(θ, 1.957622494168604, -3.2424043576955586, 1.4529920211873657);
        w4 = hθ * Weight(θ, 1.9227622689156338, -2.4347718387397848, 0.8646977445970198);
        w5 = hθ * Weight(θ, -0.9941907761118648, 2.784003797516288, -1.590907460081286);
        w6 = hθ * Weight(θ, -1.650843704110954, 4.022609240815917, -2.1915350785564605);
        w7 = hθ * Weight(θ, 1.5, -4, 2.5);
    }

    /// <summary>
    /// The interpolant of a step as a polynomial, y(θ) = start + θ (p1 + θ (p2 + θ (p3 + θ p4))): four states to keep instead of seven slopes.
    /// </summary>
    public static void Polynomial(in Step<TState> s, T h, out TState p1, out TState p2, out TState p3, out TState p4)
    {
        p1 = p2 = p3 = p4 = default;
        p1.Add(h, s.K1);
        if (s.Interpolant == Interpolant.Cubic)
        {
            p2.Add(3.0, s.End, -3.0, s.Start);
            p2.Add(h * -2.0, s.K1, -h, s.K7);
            p3.Add(-2.0, s.End, 2.0, s.Start);
            p3.Add(h, s.K1, h, s.K7);
            return;
        }
        p2.Add(h * -2.7353502828614107, s.K1, h * 1.957622494168604, s.K3, h * 1.9227622689156338, s.K4);
        p2.Add(h * -0.9941907761118648, s.K5, h * -1.650843704110954, s.K6, h * 1.5, s.K7);
        p3.Add(h * 2.870563158103125, s.K1, h * -3.2424043576955586, s.K3, h * -2.4347718387397848, s.K4);
        p3.Add(h * 2.784003797516288, s.K5, h * 4.022609240815917, s.K6, h * -4.0, s.K7);
        p4.Add(h * -1.0352472271466375, s.K1, h * 1.4529920211873657, s.K3, h * 0.8646977445970198, s.K4);
        p4.Add(h * -1.590907460081286, s.K5, h * -2.1915350785564605, s.K6, h * 2.5, s.K7);
        if (s.Interpolant == Interpolant.Mended)
        {
            var told = s.Start;
            told.Add(1.0, p1, 1.0, p2);
            told.Add(1.0, p3, 1.0, p4);
            p2.Add(3.0, s.End, -3.0, told);
            p3.Add(-2.0, s.End, 2.0, told);
        }
    }

    /// <summary>The same for one component, from its values at both ends and its slopes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Coefficients(Interpolant interpolant, T h, T start, T end, T k1, T k3, T k4, T k5, T k6, T k7, out T c1, out T c2, out T c3, out T c4)
    {
        c1 = h * k1;
        if (interpolant == Interpolant.Cubic)
        {
            var rise = end - start;
            var (from, to) = (h * k1, h * k7);
            c2 = 3.0 * rise - (from + from + to);
            c3 = from + to - (rise + rise);
            c4 = 0.0;
            return;
        }
        c2 = h * T.Fma(k1, -2.7353502828614107, T.Fma(k3, 1.957622494168604, T.Fma(k4, 1.9227622689156338, T.Fma(k5, -0.9941907761118648, T.Fma(k6, -1.650843704110954, k7 * 1.5)))));
        c3 = h * T.Fma(k1, 2.870563158103125, T.Fma(k3, -3.2424043576955586, T.Fma(k4, -2.4347718387397848, T.Fma(k5, 2.784003797516288, T.Fma(k6, 4.022609240815917, k7 * -4.0)))));
        c4 = h * T.Fma(k1, -1.0352472271466375, T.Fma(k3, 1.4529920211873657, T.Fma(k4, 0.8646977445970198, T.Fma(k5, -1.590907460081286, T.Fma(k6, -2.1915350785564605, k7 * 2.5)))));
        if (interpolant == Interpolant.Mended)
        {
            var gap = end - (start + (c1 + c2 + (c3 + c4)));
            c2 = T.Fma(3.0, gap, c2);
            c3 = T.Fma(-2.0, gap, c3);
        }
    }

    // bᵢ(θ)/θ², but for that of the first slope: a parabola.
    private static T Weight(T θ, double c0, double c1, double c2)
    {
        T w = c2;
        w = T.Fma(w, θ, c1);
        return T.Fma(w, θ, c0);
    }
}
