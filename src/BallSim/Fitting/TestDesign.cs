using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using MathNet.Numerics.Distributions;

namespace BallSim.Fitting;

/// <summary>How many shots a test needs before it is thrown.</summary>
public static class TestDesign
{
    /// <summary>Most shots that are told; beyond, no bowler has the patience.</summary>
    public const int MostShots = 1_000_000;

    /// <summary>
    /// Shots of each of two balls by which a difference of their means is found: the least n ≥ 2 with n ≥ 2 (t₁ + t₂)² σ²/δ², t₁ and t₂ Student's quantiles for 2n - 2 degrees of freedom at 1 - (1 - confidence)/2 and at the power (two-sample t-test; the
    /// usual approximation of the non-central distribution, a shot or so low for very few shots).
    /// </summary>
    /// <param name="difference">The difference δ to be found, not zero, in any unit.</param>
    /// <param name="scatter">Standard deviation σ from shot to shot, in the same unit, not below 0.</param>
    /// <param name="confidence">One less the probability of finding a difference where there is none, 0.5 to 0.9999; 0.95.</param>
    /// <param name="power">Probability of finding the difference where it is, 0.5 to 0.9999; 0.9.</param>
    public static int ShotsOfEach(double difference, double scatter, double confidence = 0.95, double power = 0.9)
    {
        Check.Range(Math.Abs(difference), double.Epsilon, 1e300, Quantity.Number, nameof(difference));
        Check.Range(scatter, 0, 1e300, Quantity.Number);
        Check.Range(confidence, 0.5, 0.9999, Quantity.Number);
        Check.Range(power, 0.5, 0.9999, Quantity.Number);
        var ratio = scatter / difference;
        bool Suffices(long n)
        {
            var both = StudentT.InvCDF(0, 1, 2.0 * n - 2, 1 - (1 - confidence) / 2) + StudentT.InvCDF(0, 1, 2.0 * n - 2, power);
            return n >= 2 * both * both * ratio * ratio;
        }
        long high = 2;
        while (!Suffices(high) && high < MostShots)
        {
            high *= 2;
        }
        if (high >= MostShots)
        {
            return MostShots;
        }
        for (var low = Math.Max(2, high / 2); low < high;)
        {
            var middle = (low + high) / 2;
            (low, high) = Suffices(middle) ? (low, middle) : (middle + 1, high);
        }
        return (int)high;
    }

    /// <summary>
    /// Two balls on one lane, metric by metric: the difference that the model expects, the scatter that the bowler's releases put on it, and the shots of each ball that are needed to see it. The scatter is that of the ball thrown first, from central
    /// differences, added in quadrature.
    /// </summary>
    /// <param name="first">One ball.</param>
    /// <param name="second">The other.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="release">The release of both.</param>
    /// <param name="scatter">Scatter of the releases; where they are measured shot by shot and allowed for, give what the measurement leaves open instead, and the test gets shorter.</param>
    /// <param name="options">How shots are computed, or null.</param>
    /// <param name="confidence">As in <see cref="ShotsOfEach"/>.</param>
    /// <param name="power">As in <see cref="ShotsOfEach"/>.</param>
    public static IReadOnlyList<TestPlan> Between(Ball first, Ball second, Lane lane, Release release, Scatter scatter, SimulatorOptions? options = null, double confidence = 0.95, double power = 0.9)
    {
        ArgumentNullException.ThrowIfNull(scatter);
        ArgumentNullException.ThrowIfNull(release);
        var (a, b) = (Simulator.Throw(first, lane, release, options), Simulator.Throw(second, lane, release, options));
        (Release Up, Release Down)[] pairs =
        [
            .. Pair(scatter.Speed, d => release with { Speed = release.Speed + d }),
            .. Pair(scatter.LaunchAngle, d => release with { LaunchAngle = release.LaunchAngle + d }),
            .. Pair(scatter.Board, d => release with { Board = release.Board + d }),
            .. Pair(scatter.SpinRate, d => release with { SpinRate = release.SpinRate + d }),
            .. Pair(scatter.AxisRotation, d => release with { AxisRotation = release.AxisRotation + d }),
            .. Pair(scatter.AxisTilt, d => release with { AxisTilt = release.AxisTilt + d }),
        ];
        (Shot Up, Shot Down)[] moved = [.. pairs.Select(p => (Simulator.Throw(first, lane, p.Up, options), Simulator.Throw(first, lane, p.Down, options)))];
        return
        [
            .. from metric in Enum.GetValues<ShotMetric>()
               let difference = MetricTolerance.Of(metric, b) - MetricTolerance.Of(metric, a)
               let spread = Math.Sqrt(moved.Sum(m => Math.Pow((MetricTolerance.Of(metric, m.Up) - MetricTolerance.Of(metric, m.Down)) / 2, 2)))
               where double.IsFinite(difference) && double.IsFinite(spread)
               select new TestPlan(metric, difference, spread, difference == 0 ? MostShots : ShotsOfEach(difference, spread, confidence, power)),
        ];
    }

    private static IEnumerable<(Release Up, Release Down)> Pair(double deviation, Func<double, Release> moved) => deviation > 0 ? [(moved(deviation), moved(-deviation))] : [];
}
