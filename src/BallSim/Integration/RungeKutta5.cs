using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Integration;

/// <summary>
/// An explicit Runge-Kutta pair of orders 5 and 4 for motion that swings with the turn of a ball: six stages, the slope at the end of a step, which is the first of the next, and an interpolant of order 4.
/// <para>It belongs to the family of J. R. Cash and A. H. Karp, ACM Trans. Math. Softw. 16 (1990) 201 (from memory): from the third on the stages are of second order, and the second counts for nothing at the end. Here the second
/// stands a hundredth of the step from its start, where it tells how the slopes begin to change: nearly a method with a derivative. The coefficients that are left free are those with which the benchmark's releases err least in steps of
/// 1.3 to 4.1 rad, found by search. At equal steps half of them err by a thirtieth to a tenth of what they do with the pair of Cash and Karp at 3.8 to 2.8 rad, by a quarter at 2.2 to 1.3 rad.</para>
/// The coefficients are held to their order conditions, and the method to its order, by tests.
/// </summary>
internal static class RungeKutta5<TOde, TState, T>
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
        Sum(ref s.Stage, s.Start, s, 1, TState.Leading, h, RungeKutta5.Place2);
        ode.Rates(s.Stage, out s.K2);
        SumWithSecond(ref s.Stage, s, 2, h, 3.1343014804258504, -2.884815327098148);
        ode.Rates(s.Stage, out s.K3);
        SumWithSecond(ref s.Stage, s, 3, h, -1.5338919148783638, 1.5532679726579377, 0.3788179740731523);
        ode.Rates(s.Stage, out s.K4);
        SumWithSecond(ref s.Stage, s, 4, h, -3.6974243121222785, 3.932348653308634, -0.862583556531025, 1.4190290672261532);
        ode.Rates(s.Stage, out s.K5);
        SumWithSecond(ref s.Stage, s, 5, h, 4.156913651158846, -4.1755118131593925, 1.146105919038994, -0.6528252442542365, 0.41411123250151544);
        ode.Rates(s.Stage, out s.K6);
        Sum(ref s.End, s.Start, s, 5, int.MaxValue, h, RungeKutta5.Weight1, RungeKutta5.Weight3, RungeKutta5.Weight4, RungeKutta5.Weight5, RungeKutta5.Weight6);
    }

    /// <summary>The rest: the slope at s.End and the estimate.</summary>
    public static void Arrive(ref TOde ode, ref Step<TState> s, T h, out TState error)
    {
        ode.Rates(s.End, out s.K7);

        error = default;
        Sum(ref error, error, s, 5, TState.Leading, h, -0.002203310422409127, 0.011978460363317966, -0.013478903290761905, 0.009372587483983669, -0.0056688341341306035);
    }

    // start + h (c1 K1 + c3 K3 + ...) for so many slopes, in this order.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Sum(ref TState y, in TState start, in Step<TState> s, int count, int numbers, in T h, double c1, double c3 = 0, double c4 = 0, double c5 = 0, double c6 = 0)
    {
        if (T.SumsWhole(ref y, start, s.K1, count, numbers, h, c1, c3, c4, c5, c6))
        {
            return;
        }
        y = start;
        if (count == 1)
        {
            y.Add(h * c1, s.K1);
            return;
        }
        y.Add(h * c1, s.K1, h * c3, s.K3, h * c4, s.K4);
        y.Add(h * c5, s.K5, h * c6, s.K6);
    }

    // s.Start + h (c2 K2 + c1 K1 + c3 K3 + ...) for so many slopes, in this order, in which they lie.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void SumWithSecond(ref TState y, in Step<TState> s, int count, in T h, double c2, double c1, double c3 = 0, double c4 = 0, double c5 = 0)
    {
        if (T.SumsWhole(ref y, s.Start, s.K2, count, TState.Leading, h, c2, c1, c3, c4, c5))
        {
            return;
        }
        y = s.Start;
        if (count == 2)
        {
            y.Add(h * c2, s.K2, h * c1, s.K1);
            return;
        }
        y.Add(h * c2, s.K2, h * c1, s.K1, h * c3, s.K3);
        switch (count)
        {
            case 4:
                y.Add(h * c4, s.K4);
                break;
            case 5:
                y.Add(h * c4, s.K4, h * c5, s.K5);
                break;
        }
    }
}

/// <summary>Where the stages that count at the end of a step stand in it, but for the first, which begins it, and what they count: for who sums over the stages himself.</summary>
internal static class RungeKutta5
{
    public const double Place2 = 0.009929379973651623, Place3 = 0.24948615332770263, Place4 = 0.39819403185272617, Place5 = 0.7913698518814837, Place6 = 0.8887937452857266;
    public const double Weight1 = 0.09996564809507055, Weight3 = 0.16821015766041236, Weight4 = 0.35268817477287273, Weight5 = 0.19890556132314044, Weight6 = 0.18023045814850389;
}
