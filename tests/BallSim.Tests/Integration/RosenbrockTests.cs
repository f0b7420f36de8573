using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Tests.Integration;

/// <summary>The linearly implicit method keeps order 3 whatever the Jacobian it is given (W-conditions of Rang and Angermann, BIT 45 (2005) 761), and is stable where an explicit one is not.</summary>
public class RosenbrockTests
{
    private struct Pair(double u, double v) : ILinear<Pair, Real>
    {
        public double U = u, V = v;

        public void Add(Real s, in Pair k) => (U, V) = (U + s * k.U, V + s * k.V);

        public void Add(Real s1, in Pair k1, Real s2, in Pair k2)
        {
            Add(s1, k1);
            Add(s2, k2);
        }

        public void Add(Real s1, in Pair k1, Real s2, in Pair k2, Real s3, in Pair k3)
        {
            Add(s1, k1, s2, k2);
            Add(s3, k3);
        }
    }

    // A nonlinear pair without closed form; the Jacobian it hands out has nothing to do with it.
    private readonly struct Loose(double rate) : IStiffOde<Pair, Real>
    {
        public Real Rate => rate;

        public void Rates(in Pair y, out Pair rates) => rates = new(y.U * y.V - 0.3 * y.U, 0.5 * Math.Sin(y.V) - y.U * y.U);

        public Real Along(in Pair x) => 0.25 * x.U + 0.75 * x.V;

        public void AddAcross(ref Pair x, Real amount) => (x.U, x.V) = (x.U + amount, x.V + amount);
    }

    // u relaxes to cos t at a great rate; v is the clock.
    private readonly struct Relaxing(double rate) : IStiffOde<Pair, Real>
    {
        public Real Rate => rate;

        public void Rates(in Pair y, out Pair rates) => rates = new(-rate * (y.U - Math.Cos(y.V)) - Math.Sin(y.V), 1);

        public Real Along(in Pair x) => x.U;

        public void AddAcross(ref Pair x, Real amount) => x.U += amount;
    }

    private static Pair Run<TOde>(TOde ode, Pair start, double time, int steps)
        where TOde : struct, IStiffOde<Pair, Real>
    {
        var step = new Step<Pair> { Start = start };
        for (var i = 0; i < steps; i++)
        {
            ode.Rates(step.Start, out step.K1);
            RosenbrockW3<TOde, Pair, Real>.Take(ref ode, ref step, time / steps, out _);
            step.Start = step.End;
        }
        return step.End;
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(4)]
    public void Order_three_with_any_jacobian(double rate)
    {
        var exact = Run(new Loose(rate), new(0.7, 0.4), 1, 8192);
        double Off(int steps) => Run(new Loose(rate), new(0.7, 0.4), 1, steps) is var y ? Math.Sqrt(Math.Pow(y.U - exact.U, 2) + Math.Pow(y.V - exact.V, 2)) : 0;
        Assert.InRange(Math.Log2(Off(128) / Off(256)), 2.8, 3.2);
    }

    [Fact]
    public void Steps_of_many_time_constants_follow_the_slow_solution()
    {
        // A hundred time constants a step; explicit methods of this kind leave the solution after three.
        var y = Run(new Relaxing(1000), new(1, 0), 2, 20);
        Assert.Equal(Math.Cos(2), y.U, 1e-4);
    }
}
