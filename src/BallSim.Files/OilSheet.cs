using BallSim.Lanes;
using static BallSim.Units;

namespace BallSim.Files;

/// <summary>
/// The oil of a lane as a scenario describes it: a shape and its numbers, or a file. What is null takes the shape's default.
/// </summary>
public sealed record OilSheet
{
    /// <summary>Which description it is.</summary>
    public OilShape Shape { get; init; }

    /// <summary>The oil file, relative to the scenario's folder.</summary>
    public string? File { get; init; }

    /// <summary>What one unit of oil in the file is as a film, m; 0.17976 µm, from memory (see <see cref="Units.OilUnit"/>).</summary>
    public double UnitFilm { get; init; } = OilUnit;

    /// <summary>What the file holds; a sheet of shape <see cref="OilShape.File"/> needs it.</summary>
    public OilMap? Table { get; init; }

    /// <summary>Where the film ends, m.</summary>
    public double? Length { get; init; }

    /// <summary>Film, m: even, or tapered at the foul line.</summary>
    public double? Film { get; init; }

    /// <summary>Volume of a crowned pattern, m³.</summary>
    public double? Volume { get; init; }

    /// <summary>Distance to which a tapered or crowned film is full, m.</summary>
    public double? FullTo { get; init; }

    /// <summary>Film towards which a tapered one falls, m.</summary>
    public double? EndFilm { get; init; }

    /// <summary>Fraction of the full film towards which a crowned one falls, a number in [0, 1].</summary>
    public double? EndFraction { get; init; }

    /// <summary>Rightmost full board of a crowned pattern.</summary>
    public double? FullFrom { get; init; }

    /// <summary>Leftmost full board of a crowned pattern.</summary>
    public double? FullUpTo { get; init; }

    /// <summary>Fraction of the middle's film on the edge boards of a crowned pattern, a number in [0, 1].</summary>
    public double? EdgeFraction { get; init; }

    /// <summary>Length of the last stretch, on which the film falls to zero, m.</summary>
    public double? Runout { get; init; }

    /// <summary>The oil.</summary>
    /// <exception cref="ArgumentException">A number that the shape needs is missing, or one is out of its range.</exception>
    public OilMap Built() => Shape switch
    {
        OilShape.Dry => OilMap.Dry,
        OilShape.Even => OilMap.Even(Needed(Length, "length"), Needed(Film, "film"), Runout ?? Foot),
        OilShape.Tapered => OilMap.Tapered(Needed(Film, "film"), FullTo ?? 8 * Foot, Needed(EndFilm, "endFilm"), Needed(Length, "length"), Runout ?? Foot),
        OilShape.Crowned => OilMap.Crowned(Needed(Length, "length"), Needed(Volume, "volume"), FullTo ?? 8 * Foot, EndFraction ?? 0.25,
            FullFrom ?? 13, FullUpTo ?? 27, EdgeFraction ?? 0.125, Runout ?? Foot),
        _ => Table ?? throw new ArgumentException("a sheet that names a file needs the table that the file holds", nameof(Table)),
    };

    private double Needed(double? value, string name) => value
        ?? throw new ArgumentException($"{Shape.ToString().ToLowerInvariant()} oil needs \"{name}\"", name);

    /// <summary>The oil that is described.</summary>
    public override string ToString() => $"{(File is null ? "" : File + ": ")}{Built()}";
}
