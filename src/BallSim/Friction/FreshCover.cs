using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>
/// The fresh fraction φ of the cover under the contact, from track flare, without a history. As the spin axis e wanders in the ball, the ring that the contact k draws on it moves sideways by
/// <code>
/// δ = (2πR/|ω|) (e'_g - e'_f) · k / max(|e × k|, 0.05)        in one turn,
/// q = hypot(δ/(2 r_c), 0.05) - 0.05,   φ = q/(1 + q⁴)^¼
/// </code>
/// e'_g and e'_f: the parts square to e of the rates of the BODY components of ω, I⁻¹(-ω × I ω) and I⁻¹(contact moments), over |ω|. The minus is right: a torque that is fixed in the body moves the ring one
/// way, one that is fixed in the lane the other.
/// </summary>
/// <remarks>
/// Agrees with a ring-by-ring count to about 0.1 in φ; it fails on the first turn (which h_B(0) = 0 covers) and for rings older than one turn. All vectors here are in the lane frame: the rate of ω is the
/// same in both, and products do not ask for the frame.
/// </remarks>
internal static class FreshCover<T>
    where T : struct, IReal<T>
{
    private const double Softening = 0.05;

    /// <summary>δ/(2 r_c), the shift of the ring in one turn in widths of the contact, from ω, the difference of its rates by the body's own asymmetry and by the contact, the radius and the contact radius; huge where the ball does not turn.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Shift(T ωx, T ωy, T ωz, T acrossX, T acrossY, T acrossZ, T radius, T contactRadius)
    {
        T still = 1e-6 * 1e-6, soft = Softening * Softening;
        // k = -n: e · k = -e.Z, |e × k|² = 1 - e.Z². All over |ω|⁴, so that one root and one division are enough.
        var level = T.Fma(ωx, ωx, ωy * ωy);
        var spin = T.Fma(ωz, ωz, level);
        var firm = T.Max(spin, still);
        var along = T.Fma(acrossX, ωx, T.Fma(acrossY, ωy, acrossZ * ωz));
        var sideways = T.Fms(along, ωz, acrossZ * firm);
        var widths = radius * (2 * Math.PI) * sideways / ((contactRadius + contactRadius) * firm * T.Sqrt(firm * T.Max(level, soft * firm)));
        return T.IfLess(spin, still, 1e5, widths);
    }

    /// <summary>φ of the shift.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Fraction(T widths)
    {
        Begin(widths, out var q, out var a);
        return q * Elementary<T>.InverseFourthRoot(a);
    }

    /// <summary>φ = q a^(-1/4): for who looks at several places at a time. A guess of the root.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Begin(T widths, out T q, out T a)
    {
        // Beyond a hundred thousand widths there is nothing fresher; the square of the square stays a number in floats.
        T one = 1.0, soft = Softening, most = 1e5;
        q = T.Min(most, T.Sqrt(T.Fma(widths, widths, soft * soft)) - soft);
        var q2 = q * q;
        a = T.Fma(q2, q2, one);
        return T.InverseFourthRootGuess(a);
    }
}
