using System.Globalization;

namespace BallSim.Fitting;

/// <summary>How well a device measures: a standard deviation for each kind of number, errors taken as independent. Every default is assumed; give those of your device.</summary>
public sealed record TrackNoise
{
    /// <summary>Place across, m, 1 µm to 1 m; 5 mm, assumed.</summary>
    public double Lateral { get; init => field = Check.Range(value, 1e-6, 1, Quantity.Length, nameof(Lateral)); } = 5e-3;

    /// <summary>Time at a station, s, 1 µs to 1 s; 4 ms, assumed.</summary>
    public double Time { get; init => field = Check.Range(value, 1e-6, 1, Quantity.Time, nameof(Time)); } = 4e-3;

    /// <summary>Speed, m/s, 1e-4 to 5; 0.05, assumed.</summary>
    public double Speed { get; init => field = Check.Range(value, 1e-4, 5, Quantity.Speed, nameof(Speed)); } = 0.05;

    /// <summary>Direction of travel, rad, 1e-5 to 0.5; 0.2 degrees, assumed.</summary>
    public double Heading { get; init => field = Check.Range(value, 1e-5, 0.5, Quantity.Angle, nameof(Heading)); } = 0.2 * Units.Degree;

    /// <summary>Spin rate, rad/s, 1e-3 to 20; 1, assumed.</summary>
    public double SpinRate { get; init => field = Check.Range(value, 1e-3, 20, Quantity.SpinRate, nameof(SpinRate)); } = 1;

    /// <summary>Axis rotation, rad, 1e-4 to 1; 3 degrees, assumed.</summary>
    public double AxisRotation { get; init => field = Check.Range(value, 1e-4, 1, Quantity.Angle, nameof(AxisRotation)); } = 3 * Units.Degree;

    /// <summary>Axis tilt, rad, 1e-4 to 1; 3 degrees, assumed.</summary>
    public double AxisTilt { get; init => field = Check.Range(value, 1e-4, 1, Quantity.Angle, nameof(AxisTilt)); } = 3 * Units.Degree;

    /// <summary>The deviations in the units of the trade.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"± {Lateral / Units.Millimetre:0.#} mm across, {1000 * Time:0.#} ms, {Speed / Units.MilesPerHour:0.##} mph, heading {Heading / Units.Degree:0.##}°, {SpinRate / Units.Rpm:0.#} rpm, rotation {AxisRotation / Units.Degree:0.#}°, tilt {AxisTilt / Units.Degree:0.#}°");
}
