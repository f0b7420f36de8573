using BallSim.Spatial;

namespace BallSim.Integration;

/// <summary>
/// A linearly implicit method of order 3(2) for a system that is stiff in one direction: ROS34PW2 of J. Rang and L. Angermann, "New Rosenbrock W-methods of order 3 for partial differential algebraic
/// equations of index 1", BIT 45 (2005) 761 (coefficients from memory, held to their order by a test). It keeps its order with an inexact Jacobian, so one direction is enough, and its linear systems are
/// solved by one division.
/// </summary>
internal static class RosenbrockW3<TOde, TState, T>
    where TOde : struct, IStiffOde<TState, T>
    where TState : struct, ILinear<TState, T>
    where T : struct, IReal<T>
{
    private const double Gamma = 0.43586652150845900;

    /// <summary>
    /// Steps from s.Start over h. s.K1 must hold the rates at the start, and the system must be linearised there; s.End, s.K7 (the rates at the end) and the estimate of the local error are made. The step's
    /// dense output is the cubic through both ends.
    /// </summary>
    public static void Take(ref TOde ode, ref Step<TState> s, T h, out TState error)
    {
        s.Interpolant = Interpolant.Cubic;
        T one = 1.0;
        var pull = h * ode.Rate;
        var damp = pull * Gamma / T.Fma(pull, Gamma, one);

        TState u1 = default;
        u1.Add(h, s.K1);
        Damp(ref ode, ref u1, damp);
        var p1 = ode.Along(u1);

        var y = s.Start;
        y.Add(0.87173304301691801, u1);
        ode.Rates(y, out var f);
        TState u2 = default;
        u2.Add(h, f);
        ode.AddAcross(ref u2, -pull * (p1 * -0.87173304301691801));
        Damp(ref ode, ref u2, damp);
        var p2 = ode.Along(u2);

        y = s.Start;
        y.Add(0.84457060015369423, u1, -0.11299064236484185, u2);
        ode.Rates(y, out f);
        TState u3 = default;
        u3.Add(h, f);
        ode.AddAcross(ref u3, -pull * T.Fma(p1, -0.90338057013044082, p2 * 0.054180672388095326));
        Damp(ref ode, ref u3, damp);
        var p3 = ode.Along(u3);

        y = s.Start;
        y.Add(one, u3);
        ode.Rates(y, out f);
        TState u4 = default;
        u4.Add(h, f);
        ode.AddAcross(ref u4, -pull * T.Fma(p1, 0.24212380706095346, T.Fma(p2, -1.2232505839045147, p3 * 0.54526025533510214)));
        Damp(ref ode, ref u4, damp);

        s.End = s.Start;
        s.End.Add(0.24212380706095346, u1, -1.2232505839045147, u2);
        s.End.Add(1.5452602553351020, u3, Gamma, u4);
        ode.Rates(s.End, out s.K7);

        // The stiff part of the difference of two methods says nothing about the solution: it is damped as the method damps it.
        error = default;
        error.Add(0.24212380706095346 - 0.37810903145819369, u1, -1.2232505839045147 + 0.096042292212423178, u2);
        error.Add(1.5452602553351020 - 0.5, u3, Gamma - 0.21793326075422950, u4);
        Damp(ref ode, ref error, damp);
    }

    // (1 - hγA)⁻¹ x = x - c hγκ/(1 + hγκ) w · x.
    private static void Damp(ref TOde ode, ref TState x, T damp) => ode.AddAcross(ref x, -damp * ode.Along(x));
}
