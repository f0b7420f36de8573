using static BallSim.Units;

namespace BallSim.Fitting;

/// <summary>Metrics in words and in the units of the trade.</summary>
internal static class MetricText
{
    /// <summary>Name, unit behind a number, and the unit in SI.</summary>
    public static (string Name, string Unit, double In) Of(ShotMetric metric) => metric switch
    {
        ShotMetric.EntryAngle => ("entry angle", "°", Degree),
        ShotMetric.EntryBoard => ("entry board", "", 1),
        ShotMetric.EntrySpeed => ("entry speed", " mph", MilesPerHour),
        ShotMetric.BreakpointBoard => ("breakpoint board", "", 1),
        _ => ("breakpoint distance", " ft", Foot),
    };

    /// <summary>A finding in words.</summary>
    public static string Of(Finding finding) => finding switch
    {
        Finding.AsDesigned => "as designed",
        Finding.Differs => "differs",
        _ => "cannot tell",
    };
}
