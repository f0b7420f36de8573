using BallSim.Balls;

namespace BallSim.Files;

/// <summary>
/// A finish as a driller names it: by the grit it was sanded with, by a measured roughness, or polished (neither number given).
/// </summary>
public sealed record FinishSheet
{
    /// <summary>What the finish is called.</summary>
    public required string Name { get; init; }

    /// <summary>Grit number of the last paper, a pure number, 100 to 10000; null if not sanded last.</summary>
    public double? Grit { get; init; }

    /// <summary>Measured roughness Ra, m, 0.01 to 5 µm; null if not measured.</summary>
    public double? Roughness { get; init; }

    /// <summary>The finish.</summary>
    /// <exception cref="ArgumentException">A number out of its range, or both given.</exception>
    public Finish Built() => (Grit, Roughness) switch
    {
        ({ } grit, null) => Finish.Sanded(grit),
        (null, { } roughness) => Finish.Measured(roughness),
        (null, null) => Finish.Polished,
        _ => throw new ArgumentException("grit and roughness both describe the finish; give one of them"),
    };

    /// <summary>Name and finish.</summary>
    public override string ToString() => $"{Name}: {Built()}";
}
