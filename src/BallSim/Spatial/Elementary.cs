using System.Runtime.CompilerServices;

namespace BallSim.Spatial;

/// <summary>The few functions beyond + - * / and √ that the equations need, from the same operations for every number type.</summary>
internal static class Elementary<T>
    where T : struct, IReal<T>
{
    /// <summary>a^(-4/3) for a in [1, 1e30], to 6e-16, of floats to their rounding: Newton steps on r = a^(-1/3), then the fourth power, corrected by what is left of 1 - a r³.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T InverseFourThirdsPower(T a)
    {
        // r ← r + r (1 - a r³)/3 squares the relative error, times 2: 4e-2, 3e-3, 2e-5.
        var r = T.InverseCubeRootGuess(a);
        T third = 1.0 / 3;
        for (var i = T.IsSingle ? 1 : 0; i < 2; i++)
        {
            r = T.Fma(r * third, T.Fnma(a * r, r * r, 1.0), r);
        }
        // With d = 1 - a r³ the power is r⁴ (1 - d)^(-4/3) = r⁴ (1 + 4 d/3 + 14 d²/9 + 140 d³/81 + ...); the next term, 455 d⁴/243, is below 3e-17, of floats below 1e-8. The rounding of r does not enter.
        var square = r * r;
        var d = T.Fnma(a * r, square, 1.0);
        var fourth = square * square;
        T c1 = 4.0 / 3, c2 = 14.0 / 9, c3 = 140.0 / 81;
        return T.Fma(fourth, T.Fma(d * d, T.Fma(c3, d, c2), c1 * d), fourth);
    }

    /// <summary>
    /// a^(-1/4) for a in [1, 1e30], to 3e-16, of floats to their rounding, without a root or a division: twice r ← r (1 - d)^(-1/4) with d = 1 - a r⁴ to the third power of d, which leaves 2e-5 and 2e-17 of the guess's error; of floats to
    /// the second, which leaves 3e-4 and 2e-10.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T InverseFourthRoot(T a)
    {
        var r = T.InverseFourthRootGuess(a);
        CloserFourthRoot(a, ref r);
        CloserFourthRoot(a, ref r);
        return r;
    }

    /// <summary>One of the two.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void CloserFourthRoot(T a, ref T r)
    {
        T c1 = 1.0 / 4, c2 = 5.0 / 32, c3 = 15.0 / 128;
        var square = r * r;
        var d = T.Fnma(a * square, square, 1.0);
        r = T.Fma(r * d, T.Fma(d, T.IsSingle ? c2 : T.Fma(c3, d, c2), c1), r);
    }

    /// <summary>
    /// cos(|θ|/2) and sin(|θ|/2)/|θ| as functions of u = θ²: polynomials that are exact at u = 0 and at Chebyshev's places of 0 ≤ u ≤ 18, of floats 0 ≤ u ≤ 14.44 (a step turns by 3.8 rad at most). They err by less than 1e-16 up to 4.2 rad and
    /// by 3e-13 at 5; those of floats by 2e-8 up to 3.8 rad, 6e-6 at 4.7 and 2e-5 at 5.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void HalfTurn(T u, out T cos, out T part)
    {
        T v = u * u;
        if (T.IsSingle)
        {
            cos = T.Fma(Sum(v, -0.12499999940526176, -2.1700245114844185e-05, -2.512959874889154e-10), u, Sum(v, 1.0, 0.002604164606496904, 9.665838213416537e-08));
            part = T.Fma(Sum(v, -0.020833333310306564, -1.5500549372954643e-06, -1.1544214760660993e-11), u, Sum(v, 0.5, 0.0002604165869064072, 5.373670281502713e-09));
            return;
        }
        var t = v * v;
        cos = T.Fma(Sum(v, t, -1.0 / 8, -2.1701388888881317e-05, -2.691144443107084e-10, -7.000999752593697e-16, -5.648729236746813e-22), u, Sum(v, t, 1.0, 0.0026041666666666618, 9.688120039250341e-08, 5.096862512286779e-13, 7.282545162131125e-19));
        part = T.Fma(Sum(v, t, -1.0 / 48, -1.5500992063490253e-06, -1.2232474768041982e-11, -2.3336843163870054e-17, -1.4941021234981912e-23), u, Sum(v, t, 0.5, 0.00026041666666666655, 5.382288910831455e-09, 1.9603320249176344e-14, 2.142498065615287e-20));
    }

    // A polynomial of v, t = v². In pairs of powers: chains of sums that are short and run side by side, where each sum waits for the one before it.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Sum(T v, T t, double a0, double a1, double a2, double a3, double a4)
    {
        T c0 = a0, c1 = a1, c2 = a2, c3 = a3, c4 = a4;
        return T.Fma(T.Fma(c4, t, T.Fma(c3, v, c2)), t, T.Fma(c1, v, c0));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Sum(T v, double a0, double a1, double a2)
    {
        T c0 = a0, c1 = a1, c2 = a2;
        return T.Fma(T.Fma(c2, v, c1), v, c0);
    }
}
