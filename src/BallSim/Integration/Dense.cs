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
    // bᵢ(θ) = Bi1 θ + Bi2 θ² + Bi3 θ³ + Bi4 θ⁴: what slope i counts at θ. B11 is 1, those of the others 0.
    private const double
        B12 = -2.7353502828614107, B13 = 2.870563158103125, B14 = -1.0352472271466375,
        B32 = 1.957622494168604, B33 = -3.2424043576955586, B34 = 1.4529920211873657,
        B42 = 1.9227622689156338, B43 = -2.4347718387397848, B44 = 0.8646977445970198,
        B52 = -0.9941907761118648, B53 = 2.784003797516288, B54 = -1.590907460081286,
        B62 = -1.650843704110954, B63 = 4.022609240815917, B64 = -2.1915350785564605,
        B72 = 1.5, B73 = -4, B74 = 2.5;

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
        w1 = hθ * T.Fma(Weight(θ, B12, B13, B14), θ, 1.0);
        hθ = hθ * θ;
        w3 = hθ * Weight(θ, B32, B33, B34);
        w4 = hθ * Weight(θ, B42, B43, B44);
        w5 = hθ * Weight(θ, B52, B53, B54);
        w6 = hθ * Weight(θ, B62, B63, B64);
        w7 = hθ * Weight(θ, B72, B73, B74);
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
        p2.Add(h * B12, s.K1, h * B32, s.K3, h * B42, s.K4);
        p2.Add(h * B52, s.K5, h * B62, s.K6, h * B72, s.K7);
        p3.Add(h * B13, s.K1, h * B33, s.K3, h * B43, s.K4);
        p3.Add(h * B53, s.K5, h * B63, s.K6, h * B73, s.K7);
        p4.Add(h * B14, s.K1, h * B34, s.K3, h * B44, s.K4);
        p4.Add(h * B54, s.K5, h * B64, s.K6, h * B74, s.K7);
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
        c2 = h * T.Fma(k1, B12, T.Fma(k3, B32, T.Fma(k4, B42, T.Fma(k5, B52, T.Fma(k6, B62, k7 * B72)))));
        c3 = h * T.Fma(k1, B13, T.Fma(k3, B33, T.Fma(k4, B43, T.Fma(k5, B53, T.Fma(k6, B63, k7 * B73)))));
        c4 = h * T.Fma(k1, B14, T.Fma(k3, B34, T.Fma(k4, B44, T.Fma(k5, B54, T.Fma(k6, B64, k7 * B74)))));
        if (interpolant == Interpolant.Mended)
        {
            var gap = end - (start + (c1 + c2 + (c3 + c4)));
            c2 = T.Fma(3.0, gap, c2);
            c3 = T.Fma(-2.0, gap, c3);
        }
    }

    /// <summary>How the slope at the end of a step changes there, per unit of the independent variable: the second derivative of the interpolant.</summary>
    public static void Bend(in Step<TState> s, T h, out TState bend)
    {
        const double
            W1 = 2 * B12 + 6 * B13 + 12 * B14, W3 = 2 * B32 + 6 * B33 + 12 * B34, W4 = 2 * B42 + 6 * B43 + 12 * B44,
            W5 = 2 * B52 + 6 * B53 + 12 * B54, W6 = 2 * B62 + 6 * B63 + 12 * B64, W7 = 2 * B72 + 6 * B73 + 12 * B74;
        T per = 1.0 / h;
        bend = default;
        if (s.Interpolant == Interpolant.Cubic)
        {
            var square = 6.0 * per * per;
            bend.Add(square, s.Start, -square, s.End);
            bend.Add(2.0 * per, s.K1, 4.0 * per, s.K7);
            return;
        }
        bend.Add(per * W1, s.K1, per * W3, s.K3, per * W4, s.K4);
        bend.Add(per * W5, s.K5, per * W6, s.K6, per * W7, s.K7);
    }

    // bᵢ(θ)/θ², but for that of the first slope: a parabola.
    private static T Weight(T θ, double c0, double c1, double c2)
    {
        T w = c2;
        w = T.Fma(w, θ, c1);
        return T.Fma(w, θ, c0);
    }
}
