using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Fitting;

/// <summary>How far a metric may lie from the design and still count as designed.</summary>
/// <param name="Metric">The metric.</param>
/// <param name="Tolerance">The greatest difference that does not matter, above 0, in the unit of the metric.</param>
public sealed record MetricTolerance(ShotMetric Metric, double Tolerance)
{
    /// <summary>Half a degree of entry angle, one board, 0.5 mph, one board and 2 ft of breakpoint: assumed, of the size of an amateur's scatter.</summary>
    public static IReadOnlyList<MetricTolerance> Usual { get; } =
    [
        new(ShotMetric.EntryAngle, 0.5 * Degree), new(ShotMetric.EntryBoard, 1), new(ShotMetric.EntrySpeed, 0.5 * MilesPerHour),
        new(ShotMetric.BreakpointBoard, 1), new(ShotMetric.BreakpointDistance, 2 * Foot),
    ];

    /// <summary>The value of a metric in a shot, in its SI unit or in boards; NaN where the shot has none: it did not reach the pins, or its breakpoint is an end of the path.</summary>
    /// <param name="metric">The metric.</param>
    /// <param name="shot">The shot.</param>
    public static double Of(ShotMetric metric, Shot shot)
    {
        ArgumentNullException.ThrowIfNull(shot);
        return metric switch
        {
            _ when !shot.ReachedPins => double.NaN,
            ShotMetric.EntryAngle => shot.Entry.Angle,
            ShotMetric.EntryBoard => shot.Entry.Board,
            ShotMetric.EntrySpeed => shot.Entry.Speed,
            _ when shot.Breakpoint.IsEnd => double.NaN,
            ShotMetric.BreakpointBoard => shot.Breakpoint.Board,
            _ => shot.Breakpoint.Distance,
        };
    }

    /// <summary>The metric and what it may differ by.</summary>
    public override string ToString() => FitText.Of(Metric) switch { var (name, unit, size) => FormattableString.Invariant($"{name} within {Tolerance / size:0.##}{unit}") };
}
