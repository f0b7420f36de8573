using BallSim.Sweeps;
using Xunit;

namespace BallSim.Tests.Sweeps;

/// <summary>Indices against functions whose indices are known.</summary>
public class SensitivityTests
{
    private const double A = 7, B = 0.1;

    private static readonly Factor[] Angles = [.. Enumerable.Range(1, 3).Select(i => Factor.Range($"x{i}", -Math.PI, Math.PI))];

    // Ishigami and Homma 1990: sin x₁ + a sin² x₂ + b x₃⁴ sin x₁. Its variances in closed form: V₁ = (1 + b π⁴/5)²/2, V₂ = a²/8, V₁₃ = 8 b² π⁸/225, and nothing else.
    private static IReadOnlyList<double> Ishigami(IReadOnlyList<double[]> x) => [.. x.Select(p => Math.Sin(p[0]) * (1 + B * Math.Pow(p[2], 4)) + A * Math.Sin(p[1]) * Math.Sin(p[1]))];

    [Fact]
    public void They_are_those_of_the_Ishigami_function()
    {
        double pi4 = Math.Pow(Math.PI, 4), v1 = (1 + B * pi4 / 5) * (1 + B * pi4 / 5) / 2, v2 = A * A / 8, v13 = 8 * B * B * pi4 * pi4 / 225, v = v1 + v2 + v13;
        double[] first = [v1 / v, v2 / v, 0], total = [(v1 + v13) / v, v2 / v, v13 / v];
        // As published (Saltelli and others, Sensitivity Analysis, from memory): the closed form above is typed in right.
        Assert.Equal([0.3139, 0.4424, 0.0], first.Select(s => Math.Round(s, 4)));
        Assert.Equal([0.5576, 0.4424, 0.2437], total.Select(s => Math.Round(s, 4)));

        var found = Sensitivity.Of(Angles, Ishigami, seed: 1, points: 8192);
        Assert.Equal(v, found.Variance, 0.01 * v);
        for (var i = 0; i < 3; i++)
        {
            Assert.Equal(first[i], found.Indices[i].First, 0.01);
            Assert.Equal(total[i], found.Indices[i].Total, 0.01);
            Assert.InRange(first[i], found.Indices[i].FirstLow, found.Indices[i].FirstHigh);
            Assert.InRange(total[i], found.Indices[i].TotalLow, found.Indices[i].TotalHigh);
        }
    }

    // The bootstrap takes points as independent; low-discrepancy points do better than it thinks, so it may cover more often than it says, not less.
    [Fact]
    public void The_intervals_cover_at_least_at_their_rate()
    {
        double v1 = 0.3139, t3 = 0.2437;
        var (first, third) = (0, 0);
        const int replications = 60;
        for (var seed = 1; seed <= replications; seed++)
        {
            var found = Sensitivity.Of(Angles, Ishigami, seed, points: 256, confidence: 0.9);
            first += v1 >= found.Indices[0].FirstLow && v1 <= found.Indices[0].FirstHigh ? 1 : 0;
            third += t3 >= found.Indices[2].TotalLow && t3 <= found.Indices[2].TotalHigh ? 1 : 0;
        }
        // Three standard errors below nine tenths of sixty.
        Assert.True(first >= 47 && third >= 47, $"{first} and {third} of {replications}");
    }

    [Fact]
    public void Of_a_sum_they_are_the_shares_of_the_variances()
    {
        Factor[] factors = [Factor.Normal("a", 0, 1), Factor.Normal("b", 5, 2), Factor.Range("c", 0, 1)];
        var found = Sensitivity.Of(factors, x => [.. x.Select(p => p[0] + p[1])], points: 2048);
        Assert.Equal(0.2, found.Indices[0].First, 0.02);
        Assert.Equal(0.8, found.Indices[1].Total, 0.02);
        Assert.Equal(0, found.Indices[2].Total, 1e-12);
    }

    [Fact]
    public void Points_without_a_value_are_counted_and_left_out()
    {
        var found = Sensitivity.Of([Factor.Range("a", 0, 1), Factor.Range("b", 0, 1)], x => [.. x.Select(p => p[0] < 0.1 ? double.NaN : p[0])], points: 1024);
        // A point has two values of the first factor, and either may be below a tenth: 19 % are lost.
        Assert.Equal(0.19, found.LeftOut / 1024.0, 0.02);
        Assert.Equal(1024, found.Points + found.LeftOut);
        Assert.Contains("no variance", Assert.Throws<ArgumentException>(() => Sensitivity.Of(Angles, x => new double[x.Count], points: 16)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_sweep_they_name_what_moves_the_ball()
    {
        var plan = new SweepPlan
        {
            Design = Design.LowDiscrepancy(1, 3),
            Factors = [Factor.Normal("launch", SweepTests.Line.LaunchAngle, 0.2 * Units.Degree), Factor.Normal("spin", SweepTests.Line.SpinRate, 0.1)],
            Build = v => new(SweepTests.Drilled, SweepTests.House, SweepTests.Line with { LaunchAngle = v[0], SpinRate = v[1] }),
        };
        var found = Sensitivity.Of(plan, Metric.EntryBoard, points: 64);
        Assert.True(found.Indices[0].Total > 10 * found.Indices[1].Total, found.ToString());
        Assert.Equal("launch", found.Indices[0].Name);
    }
}
