using static BallSim.Units;

namespace BallSim.Files;

/// <summary>What an oil file leaves open.</summary>
public sealed record OilMapCsvOptions
{
    /// <summary>The unit of films: "um", "units", "mm" or "m". Reading takes it where the file states none, and refuses the file if both are silent; writing takes "um" if it is null.</summary>
    public string? FilmUnit { get; init; }

    /// <summary>
    /// What one unit of oil is as a film, m, 0.01 to 10 µm; 0.0167 cm³ on a square foot (0.17976 µm), from memory of the governing body's definition. Tape readings and stated volumes disagree by a factor of
    /// two and more: a file in units is only as good as this number.
    /// </summary>
    public double UnitFilm
    {
        get;
        init => field = double.IsFinite(value) && value >= 0.01 * Micrometre && value <= 10 * Micrometre ? value
            : throw new ArgumentOutOfRangeException(nameof(UnitFilm), value,
                FormattableString.Invariant($"UnitFilm = {value:G6} m is out of [1E-08, 1E-05] m; for micrometres write {value:G6} * Micrometre"));
    } = OilUnit;
}
