using BallSim.Drilling;

namespace BallSim.Files;

/// <summary>What a ball known by its specification is taken to be made of where a drill goes.</summary>
public sealed record DensitySheet
{
    /// <summary>Density, kg/m³, 100 to 5000: of the cover where its thickness is given, else of everything.</summary>
    public required double Density { get; init; }

    /// <summary>Thickness of the cover, m, 0.1 to 3 in; within it the density that gives the ball its weight. Null: one density throughout.</summary>
    public double? CoverThickness { get; init; }

    /// <summary>The profile.</summary>
    /// <exception cref="ArgumentException">A number out of its range.</exception>
    public DensityProfile Built() => CoverThickness is { } thickness ? DensityProfile.Shell(thickness, Density) : DensityProfile.Uniform(Density);
}
