using System.Runtime.CompilerServices;

namespace BallSim.Spatial;

/// <summary>The few functions beyond + - * / and √ that the equations need, from the same operations for every number type.</summary>
internal static class Elementary<T>
    where T : struct, IReal<T>
{
    /// <summary>a^(-4/3) for a in [1, 1e30], to 6e-16: three Newton steps on r = a^(-1/3), then the fourth power, corrected by what is left of 1 - a r³.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T InverseFourThirdsPower(T a)
    {
        // r ← r + r (1 - a r³)/3 squares the relative error, times 2: 4e-2, 3e-3, 2e-5, 5e-10.
        var r = T.InverseCubeRootGuess(a);
        T third = 1.0 / 3;
        for (var i = 0; i < 3; i++)
        {
            r = T.Fma(r * third, T.Fnma(a * r, r * r, 1.0), r);
        }
        // With d = 1 - a r³ the power is r⁴ (1 - d)^(-4/3) = r⁴ (1 + 4 d/3 + ...); the next term, 14 d²/9, is below 4e-18. The rounding of r does not enter.
        var square = r * r;
        var rest = T.Fnma(a * r, square, 1.0);
        var fourth = square * square;
        return T.Fma(fourth * (4.0 / 3), rest, fourth);
    }

    /// <summary>
    /// cos(x) and sin(x)/x as functions of u = x², for 0 ≤ u ≤ 2.8 (half a turn vector of up to 3.3 rad; a step turns by 3 at most): Taylor polynomials whose first neglected term is below 1e-16. It is 5e-13 at u = 6.25.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void CosSinc(T u, out T cos, out T sinc)
    {
        // Even and odd powers apart: two short chains of sums instead of a long one.
        var v = u * u;
        T even = 1.0 / 2432902008176640000;        // 1/20!
        even = T.Fma(even, v, 1.0 / 20922789888000);
        even = T.Fma(even, v, 1.0 / 479001600);
        even = T.Fma(even, v, 1.0 / 40320);
        even = T.Fma(even, v, 1.0 / 24);
        even = T.Fma(even, v, 1.0);
        T odd = -1.0 / 6402373705728000;           // -1/18!
        odd = T.Fma(odd, v, -1.0 / 87178291200);
        odd = T.Fma(odd, v, -1.0 / 3628800);
        odd = T.Fma(odd, v, -1.0 / 720);
        odd = T.Fma(odd, v, -1.0 / 2);
        cos = T.Fma(odd, u, even);

        even = 1.0 / 51090942171709440000.0;       // 1/21!
        even = T.Fma(even, v, 1.0 / 355687428096000);
        even = T.Fma(even, v, 1.0 / 6227020800);
        even = T.Fma(even, v, 1.0 / 362880);
        even = T.Fma(even, v, 1.0 / 120);
        even = T.Fma(even, v, 1.0);
        odd = -1.0 / 121645100408832000;           // -1/19!
        odd = T.Fma(odd, v, -1.0 / 1307674368000);
        odd = T.Fma(odd, v, -1.0 / 39916800);
        odd = T.Fma(odd, v, -1.0 / 5040);
        odd = T.Fma(odd, v, -1.0 / 6);
        sinc = T.Fma(odd, u, even);
    }
}
