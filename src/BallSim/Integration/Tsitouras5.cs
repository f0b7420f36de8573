using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Integration;

/// <summary>
/// The explicit Runge-Kutta pair of orders 5 and 4 by Ch. Tsitouras, "Runge-Kutta pairs of order 5(4) satisfying only the first column simplifying assumption",
/// Computers and Mathematics with Applications 62 (2011) 770: seven stages, the last of which is the first of the next step, and an interpolant of order 4.
/// The coefficients are held to their order conditions, and the method to its order, by tests.
/// </summary>
internal static class Tsitouras5<TOde, TState, T>
    where TOde : struct, IOde<TState>
    where TState : struct, ILinear<TState, T>
    where T : struct, IReal<T>
{
    /// <summary>Steps from s.Start over h. s.K1 must hold the rates at the start; s.End, s.K2 to s.K7 and the estimate of the local error are made.</summary>
    public static void Take(ref TOde ode, ref Step<TState> s, T h, out TState error)
    {
        Approach(ref ode, ref s, h);
        Arrive(ref ode, ref s, h, out error);
    }

    /// <summary>The first part of <see cref="Take"/>: s.End and the slopes before it.</summary>
    public static void Approach(ref TOde ode, ref Step<TState> s, T h)
    {
        s.Interpolant = Interpolant.Slopes;
        Unsafe.SkipInit(out TState y);
        Sum(ref y, s.Start, s, 1, h * 0.161);
        ode.Rates(y, out s.K2);
        Sum(ref y, s.Start, s, 2, h * -0.008480655492356989, h * 0.335480655492357);
        ode.Rates(y, out s.K3);
        Sum(ref y, s.Start, s, 3, h * 2.8971530571054935, h * -6.359448489975075, h * 4.3622954328695815);
        ode.Rates(y, out s.K4);
        Sum(ref y, s.Start, s, 4, h * 5.325864828439257, h * -11.748883564062828, h * 7.4955393428898365, h * -0.09249506636175525);
        ode.Rates(y, out s.K5);
        Sum(ref y, s.Start, s, 5, h * 5.86145544294642, h * -12.92096931784711, h * 8.159367898576159, h * -0.071584973281401, h * -0.028269050394068383);
        ode.Rates(y, out s.K6);
        Sum(ref s.End, s.Start, s, 6, h * 0.09646076681806523, h * 0.01, h * 0.4798896504144996, h * 1.379008574103742, h * -3.290069515436081, h * 2.324710524099774);
    }

    /// <summary>The rest: the slope at s.End and the estimate.</summary>
    public static void Arrive(ref TOde ode, ref Step<TState> s, T h, out TState error)
    {
        ode.Rates(s.End, out s.K7);

        error = default;
        Sum(ref error, error, s, 6, h * -0.00178001105222577714, h * -0.0008164344596567469, h * 0.007880878010261995, h * -0.1447110071732629, h * 0.5823571654525552, h * -0.45808210592918697);
        error.Add(h * 0.015151515151515152, s.K7);
    }

    // start + s1 K1 + s2 K2 + ... for the first so many slopes, in this order.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Sum(ref TState y, in TState start, in Step<TState> s, int count, T s1, T s2 = default, T s3 = default, T s4 = default, T s5 = default, T s6 = default)
    {
        if (T.SumsWhole(ref y, start, s.K1, count, s1, s2, s3, s4, s5, s6))
        {
            return;
        }
        y = start;
        switch (count)
        {
            case 1:
                y.Add(s1, s.K1);
                break;
            case 2 or 4:
                y.Add(s1, s.K1, s2, s.K2);
                break;
            default:
                y.Add(s1, s.K1, s2, s.K2, s3, s.K3);
                break;
        }
        switch (count)
        {
            case 4:
                y.Add(s3, s.K3, s4, s.K4);
                break;
            case 5:
                y.Add(s4, s.K4, s5, s.K5);
                break;
            case 6:
                y.Add(s4, s.K4, s5, s.K5, s6, s.K6);
                break;
        }
    }
}
