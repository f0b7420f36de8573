using BallSim.Fitting;
using static BallSim.Units;

namespace BallSim.Plots.Pages;

/// <summary>What the numbers of a fit are called, and the units in which the trade reads them.</summary>
internal static class FitWords
{
    /// <summary>Name, unit, and the unit in SI.</summary>
    public static (string Name, string Unit, double In) Of(FitParameter parameter) => parameter switch
    {
        FitParameter.Dry => ("Dry friction", "", 1),
        FitParameter.Floor => ("Floor of friction in oil", "", 1),
        FitParameter.FilmScale => ("Film scale, times roughness", "", 1),
        FitParameter.Pores => ("Oil swallowed by the pores", "µm", Micrometre),
        FitParameter.Viscosity => ("Viscosity of the oil at 22 °C", "Pa s", 1),
        FitParameter.DragCoefficient => ("Drag coefficient of the air", "", 1),
        FitParameter.CrossSlope => ("Slope across, plus: right side higher", "mm/m", 1e-3),
        FitParameter.LengthSlope => ("Slope along, plus: pins higher", "mm/m", 1e-3),
        FitParameter.Board => ("Board", "", 1),
        FitParameter.LaunchAngle => ("Launch angle", "°", Degree),
        FitParameter.Speed => ("Speed", "mph", MilesPerHour),
        FitParameter.SpinRate => ("Spin rate", "rpm", Rpm),
        FitParameter.AxisRotation => ("Axis rotation", "°", Degree),
        FitParameter.AxisTilt => ("Axis tilt", "°", Degree),
        FitParameter.RollPhase => ("Turn at the release", "°", Degree),
        _ => ("Clock at the foul line", "ms", 1e-3),
    };

    /// <summary>Name, unit, and the unit in SI.</summary>
    public static (string Name, string Unit, double In) Of(FitQuantity quantity) => quantity switch
    {
        FitQuantity.Lateral => ("place across", "mm", Millimetre),
        FitQuantity.Time => ("time", "ms", 1e-3),
        FitQuantity.Speed => ("speed", "mph", MilesPerHour),
        FitQuantity.Heading => ("direction of travel", "°", Degree),
        FitQuantity.SpinRate => ("spin rate", "rpm", Rpm),
        FitQuantity.AxisRotation => ("axis rotation", "°", Degree),
        _ => ("axis tilt", "°", Degree),
    };

    /// <summary>Name, unit behind a number, and the unit in SI.</summary>
    public static (string Name, string Unit, double In) Of(ShotMetric metric) => metric switch
    {
        ShotMetric.EntryAngle => ("Entry angle", "°", Degree),
        ShotMetric.EntryBoard => ("Entry board", "", 1),
        ShotMetric.EntrySpeed => ("Entry speed", " mph", MilesPerHour),
        ShotMetric.BreakpointBoard => ("Breakpoint board", "", 1),
        _ => ("Breakpoint distance", " ft", Foot),
    };

    /// <summary>A name with its unit.</summary>
    public static string Labelled(FitParameter parameter) => Of(parameter) switch { var (name, unit, _) => unit.Length > 0 ? $"{name}, {unit}" : name };

    /// <summary>How well the whole agrees, in a few words.</summary>
    public static string Goodness(FitResult fit) => fit.Probability < 0.001 ? "worse than the stated noise; look at the residuals" : fit.Probability > 0.999 ? "better than the stated noise" : "as good as the stated noise";

    /// <summary>A finding in words.</summary>
    public static string Of(Finding finding) => finding switch
    {
        Finding.AsDesigned => "as designed",
        Finding.Differs => "differs",
        _ => "cannot tell",
    };
}
