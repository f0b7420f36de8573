namespace BallSim;

/// <summary>
/// The units of the trade as plain numbers. Inside the library everything is SI (metres, seconds, kilograms, radians);
/// multiply on the way in, divide on the way out.
/// </summary>
/// <example><code>
/// double speed = 18 * MilesPerHour;      // 8.05 m/s
/// double angle = shot.Entry.Angle / Degree;
/// </code></example>
/// <remarks>Inch, pound and ounce are exact by the international yard and pound agreement of 1959.</remarks>
public static class Units
{
    /// <summary>One metre.</summary>
    public const double Metre = 1;

    /// <summary>One millimetre, 1e-3 m.</summary>
    public const double Millimetre = 1e-3;

    /// <summary>One micrometre, 1e-6 m.</summary>
    public const double Micrometre = 1e-6;

    /// <summary>One inch, exactly 0.0254 m.</summary>
    public const double Inch = 0.0254;

    /// <summary>One foot, exactly 0.3048 m.</summary>
    public const double Foot = 12 * Inch;

    /// <summary>One kilogram.</summary>
    public const double Kilogram = 1;

    /// <summary>One pound of mass, exactly 0.45359237 kg.</summary>
    public const double Pound = 0.45359237;

    /// <summary>One ounce of mass, a sixteenth of a pound.</summary>
    public const double Ounce = Pound / 16;

    /// <summary>One second.</summary>
    public const double Second = 1;

    /// <summary>One mile an hour, exactly 0.44704 m/s.</summary>
    public const double MilesPerHour = 0.44704;

    /// <summary>One degree of arc, π/180 rad.</summary>
    public const double Degree = Math.PI / 180;

    /// <summary>One turn a minute, 2π/60 rad/s.</summary>
    public const double Rpm = 2 * Math.PI / 60;

    /// <summary>One millilitre, 1e-6 m³.</summary>
    public const double Millilitre = 1e-6;

    /// <summary>One microlitre, 1e-9 m³.</summary>
    public const double Microlitre = 1e-9;

    /// <summary>One gram per millilitre, 1000 kg/m³: the density of water, nearly.</summary>
    public const double GramPerMillilitre = 1000;

    /// <summary>
    /// One unit of oil as a film: 0.0167 cm³ on a square foot, 0.17976 µm. From memory of the governing body's definition; tape readings and
    /// stated volumes disagree by a factor of two and more, so readers of oil maps take the value as a parameter.
    /// </summary>
    public const double OilUnit = 0.0167e-6 / (Foot * Foot);

    /// <summary>Standard gravity, exactly 9.80665 m/s².</summary>
    public const double StandardGravity = 9.80665;
}
