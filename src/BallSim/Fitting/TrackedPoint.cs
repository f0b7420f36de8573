using System.Globalization;

namespace BallSim.Fitting;

/// <summary>
/// What a tracking device saw of the ball at one place or instant. The station is <see cref="Distance"/> if it is given, else <see cref="Time"/>; the other numbers that are given are measured there. SI units.
/// </summary>
public readonly record struct TrackedPoint
{
    /// <summary>Distance of the ball's centre down-lane, m from the foul line, or null.</summary>
    public double? Distance { get; init; }

    /// <summary>Time, s, from when the ball passes the foul line unless <see cref="FitParameter.ClockOffset"/> is fitted, or null.</summary>
    public double? Time { get; init; }

    /// <summary>Place of the centre across, m, positive to the right of the lane's middle, or null.</summary>
    public double? X { get; init; }

    /// <summary>Speed of the centre, m/s, or null.</summary>
    public double? Speed { get; init; }

    /// <summary>Direction of travel, rad from straight down-lane, positive to the right, or null.</summary>
    public double? Heading { get; init; }

    /// <summary>Spin rate, rad/s, or null.</summary>
    public double? SpinRate { get; init; }

    /// <summary>Axis rotation, rad, or null.</summary>
    public double? AxisRotation { get; init; }

    /// <summary>Axis tilt, rad, or null.</summary>
    public double? AxisTilt { get; init; }

    /// <summary>Line of the file it came from, or 0.</summary>
    public int Line { get; init; }

    /// <summary>What was seen, in the units of the trade.</summary>
    public override string ToString() => string.Join(", ", new[]
    {
        Text(Distance / Units.Foot, "F1", "ft"), Text(Time, "F3", "s"), Text(X / Units.Inch, "F2", "in across"), Text(Speed / Units.MilesPerHour, "F2", "mph"), Text(Heading / Units.Degree, "F2", "° heading"),
        Text(SpinRate / Units.Rpm, "F0", "rpm"), Text(AxisRotation / Units.Degree, "F1", "° rotation"), Text(AxisTilt / Units.Degree, "F1", "° tilt"),
    }.OfType<string>());

    private static string? Text(double? value, string format, string unit) => value is { } v ? $"{v.ToString(format, CultureInfo.InvariantCulture)}{(unit[0] == '°' ? "" : " ")}{unit}" : null;
}
