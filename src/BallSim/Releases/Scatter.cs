using System.Globalization;

namespace BallSim.Releases;

/// <summary>
/// How much one bowler's releases differ from throw to throw: a standard deviation for each number of the release, taken as independent unless correlations are given.
/// Every default is assumed: it stands for a practised amateur, and no measurement backs it. Give your own where you have them.
/// </summary>
public sealed record Scatter
{
    /// <summary>Speed, m/s; 0 to 5, default 0.2 mph (assumed).</summary>
    public double Speed { get; init => field = Check.Range(value, 0, 5, Quantity.Speed, nameof(Speed)); } = 0.2 * Units.MilesPerHour;

    /// <summary>Launch angle, rad; 0 to 10 degrees, default 0.25 degrees (assumed).</summary>
    public double LaunchAngle { get; init => field = Check.Range(value, 0, 10 * Units.Degree, Quantity.Angle, nameof(LaunchAngle)); } = 0.25 * Units.Degree;

    /// <summary>Board at the foul line, boards; 0 to 10, default 0.5 (assumed).</summary>
    public double Board { get; init => field = Check.Range(value, 0, 10, Quantity.Of("boards"), nameof(Board)); } = 0.5;

    /// <summary>Spin rate, rad/s; 0 to 30, default 10 rpm (assumed).</summary>
    public double SpinRate { get; init => field = Check.Range(value, 0, 30, Quantity.SpinRate, nameof(SpinRate)); } = 10 * Units.Rpm;

    /// <summary>Axis rotation, rad; 0 to 45 degrees, default 3 degrees (assumed).</summary>
    public double AxisRotation { get; init => field = Check.Range(value, 0, 45 * Units.Degree, Quantity.Angle, nameof(AxisRotation)); } = 3 * Units.Degree;

    /// <summary>Axis tilt, rad; 0 to 45 degrees, default 1.5 degrees (assumed).</summary>
    public double AxisTilt { get; init => field = Check.Range(value, 0, 45 * Units.Degree, Quantity.Angle, nameof(AxisTilt)); } = 1.5 * Units.Degree;

    /// <summary>How the six numbers go together; null: independent (assumed).</summary>
    public ScatterCorrelations? Correlations { get; init; }

    /// <summary>A release of this bowler.</summary>
    /// <param name="middle">The release aimed at, the mean of all.</param>
    /// <param name="deviates">Six independent standard normal numbers, in the order speed, launch angle, board, spin rate, axis rotation, axis tilt.</param>
    /// <exception cref="ArgumentException">There are not six, or the release would be none: a number falls outside its range. A spin rate below zero is taken as zero.</exception>
    public Release Of(Release middle, params ReadOnlySpan<double> deviates)
    {
        ArgumentNullException.ThrowIfNull(middle);
        Check.That(deviates.Length == ScatterCorrelations.Count, $"{deviates.Length} numbers; a release has {ScatterCorrelations.Count} that scatter", nameof(deviates));
        Span<double> z = stackalloc double[ScatterCorrelations.Count];
        deviates.CopyTo(z);
        if (Correlations is { } correlations)
        {
            for (var i = 0; i < z.Length; i++)
            {
                z[i] = 0;
                for (var j = 0; j < z.Length; j++)
                {
                    z[i] += correlations.Root[ScatterCorrelations.Count * i + j] * deviates[j];
                }
            }
        }
        return middle with
        {
            Speed = middle.Speed + z[0] * Speed,
            LaunchAngle = middle.LaunchAngle + z[1] * LaunchAngle,
            Board = middle.Board + z[2] * Board,
            SpinRate = Math.Max(0, middle.SpinRate + z[3] * SpinRate),
            AxisRotation = middle.AxisRotation + z[4] * AxisRotation,
            AxisTilt = middle.AxisTilt + z[5] * AxisTilt,
        };
    }

    /// <summary>The deviations in the units of the trade.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"± {Speed / Units.MilesPerHour:0.##} mph, launch {LaunchAngle / Units.Degree:0.##}°, board {Board:0.##}, {SpinRate / Units.Rpm:0.#} rpm, rotation {AxisRotation / Units.Degree:0.#}°, tilt {AxisTilt / Units.Degree:0.#}°{(Correlations is null ? "" : ", correlated")}");
}
