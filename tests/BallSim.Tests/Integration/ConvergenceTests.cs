using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Tests.Integration;

/// <summary>Order of the stepper and its dense output, fitted over several steps, on a nonlinear system whose solution is known.</summary>
public class ConvergenceTests
{
    /// <summary>u' = u v, v' = -w, w' = v: u = exp(sin t), v = cos t, w = sin t.</summary>
    private struct State : ILinear<State, Real>
    {
        public double U, V, W;

        public void Add(Real s, in State k)
        {
            U += s * k.U;
            V += s * k.V;
            W += s * k.W;
        }

        public void Add(Real s1, in State k1, Real s2, in State k2)
        {
            Add(s1, k1);
            Add(s2, k2);
        }

        public void Add(Real s1, in State k1, Real s2, in State k2, Real s3, in State k3)
        {
            Add(s1, k1, s2, k2);
            Add(s3, k3);
        }

        public static State Exact(double t) => new() { U = Math.Exp(Math.Sin(t)), V = Math.Cos(t), W = Math.Sin(t) };

        public readonly double Off(in State b) => Math.Max(Math.Abs(U - b.U), Math.Max(Math.Abs(V - b.V), Math.Abs(W - b.W)));
    }

    private struct Equations : IOde<State>
    {
        public readonly void Rates(in State y, out State rates) => rates = new() { U = y.U * y.V, V = -y.W, W = y.V };
    }

    private static readonly int[] Counts = [30, 40, 55, 75, 100, 140];

    private const double Stretch = 3;

    private static double[] Steps => [.. Counts.Select(n => Stretch / n)];

    // Error at the end of the stretch, or the largest between the ends of steps.
    private static double Error(int count, bool between)
    {
        Equations ode = default;
        Step<State> step = default;
        step.Start = State.Exact(0);
        double h = Stretch / count, worst = 0;
        for (var i = 0; i < count; i++)
        {
            ode.Rates(step.Start, out step.K1);
            RungeKutta5<Equations, State, Real>.Take(ref ode, ref step, h, out _);
            for (var k = 1; between && k < 8; k++)
            {
                worst = Math.Max(worst, Dense<State, Real>.Between(step, h, k / 8.0).Off(State.Exact((i + k / 8.0) * h)));
            }
            step.Start = step.End;
        }
        return between ? worst : step.End.Off(State.Exact(Stretch));
    }

    [Fact]
    public void Steps_are_of_order_five() => Assert.Equal(5, Slope.Of(Steps, [.. Counts.Select(n => Error(n, false))]), 0.2);

    [Fact]
    public void Dense_output_is_of_order_four_or_better() => Assert.InRange(Slope.Of(Steps, [.. Counts.Select(n => Error(n, true))]), 4, 5.5);

    [Fact]
    public void The_error_estimate_is_of_order_five_in_a_single_step()
    {
        // The local error of the embedded method of order four.
        double Estimate(double h)
        {
            Equations ode = default;
            Step<State> step = new() { Start = State.Exact(0.3) };
            ode.Rates(step.Start, out step.K1);
            RungeKutta5<Equations, State, Real>.Take(ref ode, ref step, h, out var error);
            return error.Off(default);
        }
        double[] h = [0.02, 0.03, 0.04, 0.06, 0.08];
        Assert.Equal(5, Slope.Of(h, [.. h.Select(Estimate)]), 0.2);
    }
}
