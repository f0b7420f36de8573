using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Tests.Motion;

public class SwingTests
{
    private static readonly double[] Places = [RungeKutta5.Place3, RungeKutta5.Place4, RungeKutta5.Place5];

    private static Swing<Real> Of(Func<double, double> excess) => new() { Third = excess(Places[0]), Fourth = excess(Places[1]), Fifth = excess(Places[2]) };

    private static bool MayPass(Func<double, double> excess, double limit) => Of(excess).MayPass(excess(0), excess(1), limit) > 0.0;

    [Fact]
    public void A_swing_that_passes_the_limit_by_little_is_seen_and_one_that_stays_below_is_left()
    {
        // A demand that swings twice with a turn of 2.5 rad, the longest step, by a tenth of the limit about a level that drifts; the top anywhere inside.
        foreach (var limit in (double[])[1, 7.5])
        {
            for (var phase = 0.0; phase < 2 * Math.PI; phase += 0.05)
            {
                foreach (var drift in (double[])[-0.03, 0, 0.03])
                {
                    double Swings(double θ) => limit * (0.1 * Math.Cos(5 * θ - phase) + drift * θ);
                    var top = Enumerable.Range(0, 1001).Max(i => Swings(i / 1000.0));
                    bool inside = Swings(0) < top - 1e-3 * limit && Swings(1) < top - 1e-3 * limit;
                    if (inside)
                    {
                        Assert.True(MayPass(θ => Swings(θ) - top + 0.002 * limit, limit));
                        Assert.False(MayPass(θ => Swings(θ) - top - 0.03 * limit, limit));
                    }
                }
            }
        }
    }

    [Fact]
    public void A_demand_above_the_limit_at_the_end_is_seen_and_one_that_only_begins_or_ends_near_it_is_left()
    {
        Assert.True(MayPass(θ => 0.5 * θ - 0.49, 1));
        Assert.False(MayPass(θ => 0.5 * θ - 0.501, 1));
        Assert.False(MayPass(θ => -1e-4 - 0.5 * θ, 1));
        Assert.True(MayPass(_ => double.NaN, 1));
    }

    [Fact]
    public void The_curve_goes_through_the_five_values()
    {
        double[] values = [-0.3, 0.7, 1.1, -2, 0.4];
        Quartic<Real>.Along(values[0], values[1], values[2], values[3], values[4], out var curve);
        double[] at = [0, .. Places, 1];
        for (var i = 0; i < at.Length; i++)
        {
            Assert.Equal(values[i], (double)curve.At(at[i]), 1e-13);
        }
    }
}
