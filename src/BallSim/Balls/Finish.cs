using System.Globalization;

namespace BallSim.Balls;

/// <summary>How the cover was finished, as the one number that the friction law asks for: its roughness Ra.</summary>
public sealed record Finish
{
    // Ra of a cover sanded very fine tends to this: the cover's own texture. Assumed; polish brings Ra to 0.05-0.15 µm.
    private const double OwnTexture = 0.05e-6;

    // Roughness per median grain size; assumed, with a scatter of some 30 % between covers, machines and hands.
    private const double RoughnessPerGrain = 0.040;

    private Finish(double roughness, string name) => (Roughness, Name) = (roughness, name);

    /// <summary>Arithmetic mean roughness Ra of the cover, m; 0.01 to 5 µm.</summary>
    public double Roughness { get; }

    /// <summary>What was done, in words.</summary>
    public string Name { get; }

    /// <summary>
    /// Sanded with a paper of the given grit number (100 to 10000, a pure number): d50 = 30.2 µm (500/G)^0.776, Ra = hypot(0.040 d50, 0.05
    /// µm).
    /// The power law is fitted to the median grain sizes of the FEPA P grades; the factor 0.040 is assumed and scatters by about 30 %.
    /// 500 gives 1.21 µm, 1000 0.71, 2000 0.41, 4000 0.25.
    /// </summary>
    public static Finish Sanded(double grit)
    {
        Check.Range(grit, 100, 10_000, Quantity.Number, nameof(grit));
        var d50 = 30.2e-6 * Math.Pow(500 / grit, 0.776);
        var (a, b) = (RoughnessPerGrain * d50, OwnTexture);
        return new(Math.Sqrt(a * a + b * b), string.Create(CultureInfo.InvariantCulture, $"sanded at {grit:G5}"));
    }

    /// <summary>Polished to a gloss: Ra 0.10 µm, assumed (the middle of 0.05 to 0.15 µm).</summary>
    public static Finish Polished { get; } = new(0.10e-6, "polished");

    /// <summary>A roughness Ra measured on the cover, m, 0.01 to 5 µm: write <c>0.5 * Micrometre</c>.</summary>
    public static Finish Measured(double roughness) => new(Check.Range(roughness, 0.01e-6, 5e-6, Quantity.Film, nameof(roughness)), "measured");

    /// <summary>The finish and its roughness in micrometres.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}, Ra {Roughness / Units.Micrometre:F2} µm");
}
