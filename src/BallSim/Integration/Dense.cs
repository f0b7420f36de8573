using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Integration;

/// <summary>
/// The state inside a step that has been taken. For <see cref="Tsitouras5{TOde,TState,T}"/> its interpolant of order 4; for <see cref="RosenbrockW3{TOde,TState,T}"/> the cubic through both ends.
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
        Weights(h, θ, out var w1, out var w2, out var w3, out var w4, out var w5, out var w6, out var w7);
        y.Add(w1, s.K1, w2, s.K2, w3, s.K3);
        y.Add(w4, s.K4, w5, s.K5);
        y.Add(w6, s.K6, w7, s.K7);
    }

    /// <summary>What the slopes of an explicit step count at the fraction θ of it.</summary>
    public static void Weights(T h, T θ, out T w1, out T w2, out T w3, out T w4, out T w5, out T w6, out T w7)
    {
        var hθ = h * θ;
        w1 = hθ * Weight(θ, 1, -2.763706197274826, 2.9132554618219126, -1.0530884977290216);
        w2 = hθ * Weight(θ, 0, 0.13169999999999998, -0.2234, 0.1017);
        w3 = hθ * Weight(θ, 0, 3.9302962368947516, -5.941033872131505, 2.490627285651253);
        w4 = hθ * Weight(θ, 0, -12.411077166933676, 30.33818863028232, -16.548102889244902);
        w5 = hθ * Weight(θ, 0, 37.50931341651104, -88.1789048947664, 47.37952196281928);
        w6 = hθ * Weight(θ, 0, -27.896526289197286, 65.09189467479366, -34.87065786149661);
        w7 = hθ * Weight(θ, 0, 1.5, -4, 2.5);
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
        p2.Add(h * -2.763706197274826, s.K1, h * 0.13169999999999998, s.K2, h * 3.9302962368947516, s.K3);
        p2.Add(h * -12.411077166933676, s.K4, h * 37.50931341651104, s.K5, h * -27.896526289197286, s.K6);
        p2.Add(h * 1.5, s.K7);
        p3.Add(h * 2.9132554618219126, s.K1, h * -0.2234, s.K2, h * -5.941033872131505, s.K3);
        p3.Add(h * 30.33818863028232, s.K4, h * -88.1789048947664, s.K5, h * 65.09189467479366, s.K6);
        p3.Add(h * -4.0, s.K7);
        p4.Add(h * -1.0530884977290216, s.K1, h * 0.1017, s.K2, h * 2.490627285651253, s.K3);
        p4.Add(h * -16.548102889244902, s.K4, h * 47.37952196281928, s.K5, h * -34.87065786149661, s.K6);
        p4.Add(h * 2.5, s.K7);
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
    public static void Coefficients(Interpolant interpolant, T h, T start, T end, T k1, T k2, T k3, T k4, T k5, T k6, T k7, out T c1, out T c2, out T c3, out T c4)
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
        c2 = h * T.Fma(k1, -2.763706197274826, T.Fma(k2, 0.13169999999999998, T.Fma(k3, 3.9302962368947516, T.Fma(k4, -12.411077166933676, T.Fma(k5, 37.50931341651104, T.Fma(k6, -27.896526289197286, k7 * 1.5))))));
        c3 = h * T.Fma(k1, 2.9132554618219126, T.Fma(k2, -0.2234, T.Fma(k3, -5.941033872131505, T.Fma(k4, 30.33818863028232, T.Fma(k5, -88.1789048947664, T.Fma(k6, 65.09189467479366, k7 * -4.0))))));
        c4 = h * T.Fma(k1, -1.0530884977290216, T.Fma(k2, 0.1017, T.Fma(k3, 2.490627285651253, T.Fma(k4, -16.548102889244902, T.Fma(k5, 47.37952196281928, T.Fma(k6, -34.87065786149661, k7 * 2.5))))));
        if (interpolant == Interpolant.Mended)
        {
            var gap = end - (start + (c1 + c2 + (c3 + c4)));
            c2 = T.Fma(3.0, gap, c2);
            c3 = T.Fma(-2.0, gap, c3);
        }
    }

    // bᵢ(θ)/θ: a cubic.
    private static T Weight(T θ, double c0, double c1, double c2, double c3)
    {
        T w = c3;
        w = T.Fma(w, θ, c2);
        w = T.Fma(w, θ, c1);
        return T.Fma(w, θ, c0);
    }
}
