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
        var y = s.Start;
        y.Add(h * 0.161, s.K1);
        ode.Rates(y, out s.K2);

        y = s.Start;
        y.Add(h * -0.008480655492356989, s.K1, h * 0.335480655492357, s.K2);
        ode.Rates(y, out s.K3);

        y = s.Start;
        y.Add(h * 2.8971530571054935, s.K1, h * -6.359448489975075, s.K2, h * 4.3622954328695815, s.K3);
        ode.Rates(y, out s.K4);

        y = s.Start;
        y.Add(h * 5.325864828439257, s.K1, h * -11.748883564062828, s.K2);
        y.Add(h * 7.4955393428898365, s.K3, h * -0.09249506636175525, s.K4);
        ode.Rates(y, out s.K5);

        y = s.Start;
        y.Add(h * 5.86145544294642, s.K1, h * -12.92096931784711, s.K2, h * 8.159367898576159, s.K3);
        y.Add(h * -0.071584973281401, s.K4, h * -0.028269050394068383, s.K5);
        ode.Rates(y, out s.K6);

        s.End = s.Start;
        s.End.Add(h * 0.09646076681806523, s.K1, h * 0.01, s.K2, h * 0.4798896504144996, s.K3);
        s.End.Add(h * 1.379008574103742, s.K4, h * -3.290069515436081, s.K5, h * 2.324710524099774, s.K6);
    }

    /// <summary>The rest: the slope at s.End and the estimate.</summary>
    public static void Arrive(ref TOde ode, ref Step<TState> s, T h, out TState error)
    {
        ode.Rates(s.End, out s.K7);

        error = default;
        error.Add(h * -0.00178001105222577714, s.K1, h * -0.0008164344596567469, s.K2, h * 0.007880878010261995, s.K3);
        error.Add(h * -0.1447110071732629, s.K4, h * 0.5823571654525552, s.K5);
        error.Add(h * -0.45808210592918697, s.K6, h * 0.015151515151515152, s.K7);
    }
}
