using BallSim.Sweeps;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace BallSim.Tests.Sweeps;

/// <summary>How rows are spread.</summary>
public class DesignTests
{
    // Unscrambled points of an outside implementation with the same table: scipy.stats.qmc.Sobol(20, scramble=False) of SciPy 1.10, points 1, 5, 100 and 1023 in the order of the Gray code (times 2^30).
    private static readonly (uint Index, long[] Point)[] Outside =
    [
        (1, [536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912, 536870912]),
        (5, [939524096, 939524096, 134217728, 402653184, 939524096, 671088640, 939524096, 402653184, 402653184, 134217728, 402653184, 939524096, 939524096, 134217728, 939524096, 402653184, 939524096, 402653184, 402653184, 671088640]),
        (100, [444596224, 276824064, 830472192, 780140544, 947912704, 796917760, 25165824, 511705088, 679477248, 746586112, 494927872, 729808896, 511705088, 914358272, 343932928, 528482304, 729808896, 796917760, 897581056, 360710144]),
        (1023, [1048576, 808452096, 657457152, 156237824, 200278016, 470810624, 149946368, 663748608, 370147328, 913309696, 728760320, 38797312, 139460608, 714080256, 389021696, 498073600, 336592896, 940572672, 628097024, 342884352]),
    ];

    [Fact]
    public void The_sequence_is_that_of_an_outside_implementation() => Assert.All(Outside, row =>
    {
        var gray = row.Index ^ (row.Index >> 1);
        Assert.Equal(row.Point, Enumerable.Range(0, Sobol.Dimensions).Select(d => (long)(Sobol.Digits(gray, d) >> 2)));
    });

    [Property(MaxTest = 20)]
    public Property Every_coordinate_visits_every_strip_once_scrambled_or_not() => Prop.ForAll(
        Gen.Choose(0, 1_000_000).Zip(Gen.Choose(0, Sobol.Dimensions - 1)).Zip(Gen.Choose(1, 10)).ToArbitrary(), drawn =>
        {
            var ((seed, dimension), bits) = drawn;
            var n = 1 << bits;
            Assert.Equal(n, Enumerable.Range(0, n).Select(i => (int)(Sobol.Scrambled((uint)i, dimension, seed) * n)).Distinct().Count());
            Assert.Equal(n, Enumerable.Range(0, n).Select(i => (int)(Sobol.Digits((uint)i, dimension) >> (32 - bits))).Distinct().Count());
        });

    [Fact]
    public void The_first_two_dimensions_make_a_net()
    {
        // A (0, m, 2)-net: every box of area 1/n, whatever its sides, holds one point; scrambling keeps it (Owen 1995).
        const int bits = 8, n = 1 << bits;
        for (var across = 0; across <= bits; across++)
        {
            var (x, y) = (1 << across, 1 << (bits - across));
            Assert.Equal(n, Enumerable.Range(0, n).Select(i => ((int)(Sobol.Scrambled((uint)i, 0, 5) * x), (int)(Sobol.Scrambled((uint)i, 1, 5) * y))).Distinct().Count());
        }
    }

    [Property(MaxTest = 50)]
    public Property A_latin_hypercube_uses_every_strip_once() => Prop.ForAll(Gen.Choose(1, 700).Zip(Gen.Choose(-1000, 1000)).ToArbitrary(), drawn =>
    {
        var (rows, seed) = drawn;
        var design = Design.LatinHypercube(rows, seed);
        for (var f = 0; f < 3; f++)
        {
            Assert.Equal(Enumerable.Range(0, rows), Enumerable.Range(0, rows).Select(i => (int)(design.Coordinate(i, f) * rows)).Order());
        }
    });

    [Fact]
    public void The_strips_of_a_latin_hypercube_are_paired_at_random()
    {
        const int n = 5000;
        var design = Design.LatinHypercube(n, 3);
        double[] Column(int f) => [.. Enumerable.Range(0, n).Select(i => design.Coordinate(i, f))];
        Assert.Equal(0, MathNet.Numerics.Statistics.Correlation.Pearson(Column(0), Column(1)), 5 / Math.Sqrt(n));
        Assert.Equal(0, MathNet.Numerics.Statistics.Correlation.Pearson(Column(0), Enumerable.Range(0, n).Select(i => (double)i)), 5 / Math.Sqrt(n));
    }

    [Fact]
    public void A_factorial_holds_every_combination_once_the_last_factor_fastest()
    {
        Factor[] factors = [Factor.Range("a", 0, 1, 3), Factor.Choice("b", "x", "y"), Factor.Values("c", 5, 7)];
        Assert.Equal(12, Design.Factorial.Rows(factors));
        var rows = Enumerable.Range(0, 12).Select(i => Design.Factorial.Values(factors, i)).ToArray();
        Assert.Equal([0, 0, 5], rows[0]);
        Assert.Equal([0, 0, 7], rows[1]);
        Assert.Equal([1, 1, 7], rows[11]);
        Assert.Equal(12, rows.Select(r => string.Join(' ', r)).Distinct().Count());
    }

    [Fact]
    public void A_normal_factor_has_its_mean_and_deviation()
    {
        Factor[] factors = [Factor.Normal("a", 3, 0.5)];
        var design = Design.LowDiscrepancy(4096, 1);
        var values = Enumerable.Range(0, 4096).Select(i => design.Values(factors, i)[0]).ToArray();
        Assert.Equal(3, values.Average(), 1e-3);
        Assert.Equal(0.5, MathNet.Numerics.Statistics.Statistics.StandardDeviation(values), 2e-3);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Contains("greater", Assert.Throws<ArgumentException>(() => Factor.Range("a", 1, 1)).Message, StringComparison.Ordinal);
        Assert.Contains("above 0", Assert.Throws<ArgumentException>(() => Factor.Normal("a", 1, 0)).Message, StringComparison.Ordinal);
        Assert.Contains("20 at most", Assert.Throws<ArgumentException>(() => Design.LowDiscrepancy(8, 1).Rows([.. Enumerable.Range(0, 21).Select(i => Factor.Range($"f{i}", 0, 1))])).Message, StringComparison.Ordinal);
        Assert.Contains("no levels", Assert.Throws<ArgumentException>(() => Design.Factorial.Rows([Factor.Normal("a", 0, 1)])).Message, StringComparison.Ordinal);
        Assert.Contains("more than", Assert.Throws<ArgumentException>(() => Design.Factorial.Rows([Factor.Range("a", 0, 1, 100_000), Factor.Range("b", 0, 1, 100_000)])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Design.Random(0, 1));
    }
}
