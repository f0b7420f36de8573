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
        var (one, lanes) = (default(DipSums<Real>), default(DipSums<Doubles8>));
        DipSums<Real>.Over(new() { C0 = c0, C1 = c1, C2 = c2, C3 = c3, C4 = c4 }, ref one);
        DipSums<Doubles8>.Over(new() { C0 = c0, C1 = c1, C2 = c2, C3 = c3, C4 = c4 }, ref lanes);
        var places = Enumerable.Range(0, 12).Select(i => (i + 0.5) / 12).Select(θ => (θ, X: 1 - (double)FreshCover<Real>.Fraction(c0 + θ * (c1 + θ * (c2 + θ * (c3 + θ * c4)))))).ToArray();

        Assert.Equal(places.Average(p => p.X), one.Mean, 1e-14);
        // To the last bit: a lane repeats the shot alone.
        Assert.Equal((double)one.Mean, Doubles8.Lane(lanes.Mean, 5));

        double[] start = [0.02, -0.05, 0.03], end = [0.07, 0.02, -0.04];
        double Lost(double θ, double x) => Enumerable.Range(0, 3).Sum(k => (start[k] + θ * (end[k] - start[k])) * Math.Pow(x, k + 1));
        one.Lost(new() { Curve1 = start[0], Curve2 = start[1], Curve3 = start[2] }, new() { Curve1 = end[0], Curve2 = end[1], Curve3 = end[2] }, out var whole, out var late, out var last);
        lanes.Lost(new() { Curve1 = start[0], Curve2 = start[1], Curve3 = start[2] }, new() { Curve1 = end[0], Curve2 = end[1], Curve3 = end[2] }, out var wholes, out var lates, out var lasts);
        foreach (var (j, alone, beside) in new[] { (0, whole, wholes), (1, late, lates), (2, last, lasts) })
        {
            Assert.Equal(places.Average(p => Lost(p.θ, p.X) * Math.Pow(p.θ, j)), alone, 1e-15);
            Assert.Equal((double)alone, Doubles8.Lane(beside, 5));
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
