using static BallSim.Units;

namespace BallSim.Fitting;

/// <summary>What fits and verdicts speak of, in words and in the units of the trade.</summary>
internal static class FitText
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

    /// <summary>Unit behind a number, and the unit in SI.</summary>
    public static (string Unit, double In) Of(FitQuantity quantity) => quantity switch
    {
        FitQuantity.Lateral => (" mm", Millimetre),
        FitQuantity.Time => (" ms", 1e-3),
        FitQuantity.Speed => (" mph", MilesPerHour),
        FitQuantity.SpinRate => (" rpm", Rpm),
        _ => ("°", Degree),
    };

    /// <summary>Unit behind a number, and the unit in SI.</summary>
    public static (string Unit, double In) Of(FitParameter parameter) => parameter switch
    {
        FitParameter.Pores => (" µm", Micrometre),
        FitParameter.Viscosity => (" Pa s", 1),
        FitParameter.CrossSlope or FitParameter.LengthSlope => (" mm/m", 1e-3),
        FitParameter.Speed => (" mph", MilesPerHour),
        FitParameter.SpinRate => (" rpm", Rpm),
        FitParameter.LaunchAngle or FitParameter.AxisRotation or FitParameter.AxisTilt or FitParameter.RollPhase => ("°", Degree),
        FitParameter.ClockOffset => (" ms", 1e-3),
        _ => ("", 1),
    };

    /// <summary>A finding in words.</summary>
    public static string Of(Finding finding) => finding switch
    {
        Finding.AsDesigned => "as designed",
        Finding.Differs => "differs",
        _ => "cannot tell",
    };
}
