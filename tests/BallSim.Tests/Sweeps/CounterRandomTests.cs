using BallSim.Sweeps;
using Xunit;

namespace BallSim.Tests.Sweeps;

/// <summary>Random numbers by their place.</summary>
public class CounterRandomTests
{
    // Known answers published with the generator (Random123, Salmon and others 2011), from memory.
    [Theory]
    [InlineData(0u, 0u, 0u, 0u, 0u, 0u, 0x6627e8d5u, 0xe169c58du, 0xbc57ac4cu, 0x9b00dbd8u)]
    [InlineData(0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu, 0x408f276du, 0x41c83b0eu, 0xa20bc7c6u, 0x6d5451fdu)]
    [InlineData(0x243f6a88u, 0x85a308d3u, 0x13198a2eu, 0x03707344u, 0xa4093822u, 0x299f31d0u, 0xd16cfe09u, 0x94fdccebu, 0x5001e420u, 0x24126ea1u)]
    public void It_is_the_published_generator(uint a, uint b, uint c, uint d, uint k, uint l, uint w, uint x, uint y, uint z) =>
        Assert.Equal((w, x, y, z), CounterRandom.Block((a, b, c, d), (k, l)));

    [Fact]
    public void Rows_streams_draws_and_seeds_are_independent()
    {
        const int n = 20_000;
        double[] Column(Func<int, double> of) => [.. Enumerable.Range(0, n).Select(of)];
        double[][] columns = [Column(i => CounterRandom.Uniform(1, i, 0)), Column(i => CounterRandom.Uniform(1, i, 1)), Column(i => CounterRandom.Uniform(2, i, 0)), Column(i => CounterRandom.Uniform(1, i, 0, 1)),
            Column(i => CounterRandom.Uniform(1, i + 1, 0))];
        for (var i = 0; i < columns.Length; i++)
        {
            Assert.All(columns[i], u => Assert.InRange(u, double.Epsilon, 1 - 1e-16));
            // Five standard errors of the mean and of the variance of a uniform number.
            Assert.Equal(0.5, columns[i].Average(), 5 * Math.Sqrt(1 / 12.0 / n));
            Assert.Equal(1 / 12.0, MathNet.Numerics.Statistics.Statistics.Variance(columns[i]), 5 * Math.Sqrt((1 / 80.0 - 1 / 144.0) / n));
            for (var j = 0; j < i; j++)
            {
                Assert.Equal(0, MathNet.Numerics.Statistics.Correlation.Pearson(columns[i], columns[j]), 5 / Math.Sqrt(n));
            }
        }
    }
}
