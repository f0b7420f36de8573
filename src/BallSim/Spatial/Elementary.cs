using System.Runtime.CompilerServices;

namespace BallSim.Spatial;

/// <summary>The few functions beyond + - * / and √ that the equations need, from the same operations for every number type.</summary>
internal static class Elementary<T>
    where T : struct, IReal<T>
{
    /// <summary>a^(-4/3) for a in [1, 1e30], to 6e-16: two Newton steps on r = a^(-1/3), then the fourth power, corrected by what is left of 1 - a r³.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T InverseFourThirdsPower(T a)
    {
        // r ← r + r (1 - a r³)/3 squares the relative error, times 2: 4e-2, 3e-3, 2e-5.
        var r = T.InverseCubeRootGuess(a);
        T third = 1.0 / 3;
        for (var i = 0; i < 2; i++)
        {
            r = T.Fma(r * third, T.Fnma(a * r, r * r, 1.0), r);
        }
        // With d = 1 - a r³ the power is r⁴ (1 - d)^(-4/3) = r⁴ (1 + 4 d/3 + 14 d²/9 + 140 d³/81 + ...); the next term, 455 d⁴/243, is below 3e-17. The rounding of r does not enter.
        var square = r * r;
        var d = T.Fnma(a * r, square, 1.0);
        var fourth = square * square;
        T c1 = 4.0 / 3, c2 = 14.0 / 9, c3 = 140.0 / 81;
        return T.Fma(fourth, T.Fma(d * d, T.Fma(c3, d, c2), c1 * d), fourth);
    }

    /// <summary>a^(-1/4) for a in [1, 1e30], to 3e-16, without a root or a division: twice r ← r (1 - d)^(-1/4) with d = 1 - a r⁴ to the third power of d, which leaves 2e-5 and 2e-17 of the guess's error.</summary>
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
        r = T.Fma(r * d, T.Fma(d, T.Fma(c3, d, c2), c1), r);
    }

    /// <summary>
    /// cos(|θ|/2) and sin(|θ|/2)/|θ| as functions of u = θ², for 0 ≤ u ≤ 14.4 (a step turns by 3.8 rad at most): Taylor polynomials, of coefficients (-1)^k/((2k)! 4^k) and
    /// (-1)^k/(2 (2k+1)! 4^k), whose first neglected term is below 1e-16 up to 3.3 rad, 1e-15 at 3.8 and 5e-13 at 5.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void HalfTurn(T u, out T cos, out T part)
    {
        T v = u * u, t = v * v;
        cos = T.Fma(Sum(v, t, -1.0 / 8, -1.0 / 46080, -1.0 / 3715891200, -1.0 / 1428329123020800, -1.0 / 1678343852714360832000.0), u,
            Sum(v, t, 1.0, 1.0 / 384, 1.0 / 10321920, 1.0 / 1961990553600, 1.0 / 1371195958099968000, 1.0 / 2551082656125828464640000.0));
        part = T.Fma(Sum(v, t, -1.0 / 48, -1.0 / 645120, -1.0 / 81749606400, -1.0 / 42849873690624000, -1.0 / 63777066403145711616000.0), u,
            Sum(v, t, 0.5, 1.0 / 3840, 1.0 / 185794560, 1.0 / 51011754393600, 1.0 / 46620662575398912000.0, 1.0 / 107145471557284795514880000.0));
    }

    // A polynomial of v, t = v². In pairs of powers: chains of sums that are short and run side by side, where each sum waits for the one before it.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Sum(T v, T t, double a0, double a1, double a2, double a3, double a4)
    {
        T c0 = a0, c1 = a1, c2 = a2, c3 = a3, c4 = a4;
        return T.Fma(T.Fma(c4, t, T.Fma(c3, v, c2)), t, T.Fma(c1, v, c0));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Sum(T v, T t, double a0, double a1, double a2, double a3, double a4, double a5)
    {
        T c0 = a0, c1 = a1, c2 = a2, c3 = a3, c4 = a4, c5 = a5;
        return T.Fma(T.Fma(T.Fma(c5, v, c4), t, T.Fma(c3, v, c2)), t, T.Fma(c1, v, c0));
    }
}
