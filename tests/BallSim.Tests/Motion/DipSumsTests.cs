using BallSim.Friction;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Tests.Motion;

/// <summary>The sums over a step, to plain sums over the middles of its twelfths, one shot and lanes alike.</summary>
public class DipSumsTests
{
    // The shift goes through zero in the step, once, twice, and not at all.
    [Theory]
    [InlineData(-0.7, 1.9, -0.4, 0.3, -0.1)]
    [InlineData(0.5, -3.1, 2.2, 0.9, 0.4)]
    [InlineData(2.5, 0.4, 0.1, -0.2, 0.3)]
    public void They_are_the_sums_over_the_middles_of_the_twelfths(double c0, double c1, double c2, double c3, double c4)
    {
        DipSums<Real>.Over(c0, c1, c2, c3, c4, out var one);
        DipSums<Doubles8>.Over(c0, c1, c2, c3, c4, out var lanes);

        var named = new (int K, int J, double One, Doubles8 Lanes)[]
        {
            (1, 0, one.X10, lanes.X10), (1, 1, one.X11, lanes.X11), (1, 2, one.X12, lanes.X12), (1, 3, one.X13, lanes.X13),
            (2, 0, one.X20, lanes.X20), (2, 1, one.X21, lanes.X21), (2, 2, one.X22, lanes.X22), (2, 3, one.X23, lanes.X23),
            (3, 0, one.X30, lanes.X30), (3, 1, one.X31, lanes.X31), (3, 2, one.X32, lanes.X32), (3, 3, one.X33, lanes.X33),
        };
        foreach (var (k, j, alone, beside) in named)
        {
            var plain = 0.0;
            for (var i = 0; i < 12; i++)
            {
                var θ = (i + 0.5) / 12;
                var x = 1 - (double)FreshCover<Real>.Fraction(c0 + θ * (c1 + θ * (c2 + θ * (c3 + θ * c4))));
                plain += Math.Pow(x, k) * Math.Pow(θ, j);
            }
            Assert.Equal(plain, alone, 1e-13);
            // To the last bit: a lane repeats the shot alone.
            Assert.Equal(alone, Doubles8.Lane(beside, 5));
        }
    }

    [Theory]
    [InlineData(-0.7, 1.9, -0.4, 0.3, -0.1)]
    [InlineData(2.5, 0.4, 0.1, -0.2, 0.3)]
    public void What_is_foreseen_is_the_sum_over_the_middles_of_the_eighths(double c0, double c1, double c2, double c3, double c4)
    {
        BareSums<Real>.Over(new() { C0 = c0, C1 = c1, C2 = c2, C3 = c3, C4 = c4 }, out var one);
        BareSums<Doubles8>.Over(new() { C0 = c0, C1 = c1, C2 = c2, C3 = c3, C4 = c4 }, out var lanes);
        var places = Enumerable.Range(0, 8).Select(i => (i + 0.5) / 8).Select(θ => (θ, X: 1 - (double)FreshCover<Real>.Fraction(c0 + θ * (c1 + θ * (c2 + θ * (c3 + θ * c4)))))).ToArray();
        Assert.Equal(places.Average(p => p.X), one.Mean, 1e-14);
        Assert.Equal(places.Average(p => p.X * p.θ), one.Late, 1e-14);
        Assert.Equal(((double)one.Mean, (double)one.Late), (Doubles8.Lane(lanes.Mean, 3), Doubles8.Lane(lanes.Late, 3)));
    }
}
