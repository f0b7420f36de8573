using static System.FormattableString;

namespace BallSim.Fitting;

/// <summary>What a test of two balls needs for one metric.</summary>
/// <param name="Metric">The metric.</param>
/// <param name="Difference">Second ball less first, as the model expects it, in the unit of the metric.</param>
/// <param name="Scatter">Standard deviation from shot to shot, in the unit of the metric.</param>
/// <param name="ShotsOfEach">Shots of each ball; <see cref="TestDesign.MostShots"/> means more than is reasonable.</param>
public readonly record struct TestPlan(ShotMetric Metric, double Difference, double Scatter, int ShotsOfEach)
{
    /// <summary>In the units of the trade.</summary>
    public override string ToString()
    {
        var (name, unit, size) = FitText.Of(Metric);
        var shots = ShotsOfEach >= TestDesign.MostShots ? "more shots than is reasonable" : $"{ShotsOfEach} shots of each ball";
        return Invariant($"{name}: difference {Difference / size:+0.00;-0.00;0.00}{unit}, scatter {Scatter / size:F2}{unit}: ") + shots;
    }
}
