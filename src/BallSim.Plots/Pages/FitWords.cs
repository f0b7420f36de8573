using BallSim.Fitting;

namespace BallSim.Plots.Pages;

/// <summary>What the numbers of a fit are called, and the units in which the trade reads them.</summary>
internal static class FitWords
{
    /// <summary>Name, unit, and the unit in SI.</summary>
    public static (string Name, string Unit, double In) Of(FitParameter parameter) => FitText.Of(parameter) switch { var (unit, size) => (Name(parameter), unit.TrimStart(), size) };

    /// <summary>Name, unit, and the unit in SI.</summary>
    public static (string Name, string Unit, double In) Of(FitQuantity quantity) => FitText.Of(quantity) switch { var (unit, size) => (Name(quantity), unit.TrimStart(), size) };

    /// <summary>Name, unit behind a number, and the unit in SI.</summary>
    public static (string Name, string Unit, double In) Of(ShotMetric metric) => FitText.Of(metric) switch { var (name, unit, size) => (char.ToUpperInvariant(name[0]) + name[1..], unit, size) };

    private static string Name(FitParameter parameter) => parameter switch
    {
        FitParameter.Dry => "Dry friction",
        FitParameter.Floor => "Floor of friction in oil",
        FitParameter.FilmScale => "Film scale, times roughness",
        FitParameter.Pores => "Oil swallowed by the pores",
        FitParameter.Viscosity => "Viscosity of the oil at 22 °C",
        FitParameter.DragCoefficient => "Drag coefficient of the air",
        FitParameter.CrossSlope => "Slope across, plus: right side higher",
        FitParameter.LengthSlope => "Slope along, plus: pins higher",
        FitParameter.Board => "Board",
        FitParameter.LaunchAngle => "Launch angle",
        FitParameter.Speed => "Speed",
        FitParameter.SpinRate => "Spin rate",
        FitParameter.AxisRotation => "Axis rotation",
        FitParameter.AxisTilt => "Axis tilt",
        FitParameter.RollPhase => "Turn at the release",
        _ => "Clock at the foul line",
    };

    private static string Name(FitQuantity quantity) => quantity switch
    {
        FitQuantity.Lateral => "place across",
        FitQuantity.Time => "time",
        FitQuantity.Speed => "speed",
        FitQuantity.Heading => "direction of travel",
        FitQuantity.SpinRate => "spin rate",
        FitQuantity.AxisRotation => "axis rotation",
        _ => "axis tilt",
    };

    /// <summary>A name with its unit.</summary>
    public static string Labelled(FitParameter parameter) => Of(parameter) switch { var (name, unit, _) => unit.Length > 0 ? $"{name}, {unit}" : name };

    /// <summary>How well the whole agrees, in a few words.</summary>
    public static string Goodness(FitResult fit) => fit.Probability < 0.001 ? "worse than the stated noise; look at the residuals" : fit.Probability > 0.999 ? "better than the stated noise" : "as good as the stated noise";

    /// <summary>A finding in words.</summary>
    public static string Of(Finding finding) => FitText.Of(finding);
}
