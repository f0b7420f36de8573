using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Tests.Balls;

public class FinishTests
{
    // The stated relation (0.040 of the FEPA median grain, assumed) worked out by hand to two decimals.
    [Theory]
    [InlineData(500, 1.21)]
    [InlineData(1000, 0.71)]
    [InlineData(2000, 0.41)]
    [InlineData(4000, 0.25)]
    public void Grit_gives_the_stated_roughness(double grit, double ra) =>
        Assert.Equal(ra, Finish.Sanded(grit).Roughness / Micrometre, 0.005);

    // FEPA 43-1 median grain sizes and their tolerances, µm, from memory. The roughness is undone to the grain size by the stated relation.
    [Theory]
    [InlineData(500, 30.2, 1.5)]
    [InlineData(800, 21.8, 1.0)]
    [InlineData(1000, 18.3, 1.0)]
    [InlineData(1200, 15.3, 1.0)]
    [InlineData(1500, 12.6, 1.0)]
    [InlineData(2000, 10.3, 0.8)]
    public void The_grain_size_behind_it_is_that_of_the_grade(double grit, double median, double tolerance)
    {
        var ra = Finish.Sanded(grit).Roughness / Micrometre;
        Assert.Equal(median, Math.Sqrt(ra * ra - 0.05 * 0.05) / 0.040, tolerance);
    }

    [Fact]
    public void Polish_is_smoother_than_any_usual_sanding() => Assert.True(Finish.Polished.Roughness < Finish.Sanded(5000).Roughness);

    [Fact]
    public void Slips_are_named()
    {
        Assert.Contains("0.5 * Micrometre", Assert.ThrowsAny<ArgumentException>(() => Finish.Measured(0.5)).Message);
        Assert.Contains("grit", Assert.ThrowsAny<ArgumentException>(() => Finish.Sanded(0)).Message);
        Assert.Contains("PoissonRatio", Assert.ThrowsAny<ArgumentException>(() => Cover.Plastic with { PoissonRatio = 0.6 }).Message);
    }
}
