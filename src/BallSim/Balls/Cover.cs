using System.Globalization;

namespace BallSim.Balls;

/// <summary>The cover material as the friction law sees it: what its pores swallow, how it yields, how fast it drinks oil.</summary>
/// <remarks>Every value of the ready-made covers is assumed; the classes differ mainly in their pores.</remarks>
public sealed record Cover
{
    /// <summary>What the material is called.</summary>
    public string Name { get; init; } = "plastic";

    /// <summary>Oil swallowed by the pores under the contact, h_p, as a film in m; 0 to 5 µm, default 0.</summary>
    public double Pores { get; init => field = Check.Range(value, 0, 5e-6, Quantity.Film, nameof(Pores)); }

    /// <summary>Young's modulus of the cover, Pa; 1e7 to 1e12, default 0.8e9 (assumed; 0.2e9 to 3e9 is plausible).</summary>
    public double Modulus { get; init => field = Check.Range(value, 1e7, 1e12, Quantity.Of("Pa"), nameof(Modulus)); } = 0.8e9;

    /// <summary>Poisson's ratio of the cover, a pure number; 0 to 0.5, default 0.40 (assumed).</summary>
    public double PoissonRatio { get; init => field = Check.Range(value, 0, 0.5, Quantity.Number, nameof(PoissonRatio)); } = 0.40;

    /// <summary>
    /// Rate at which oil on the cover soaks in, k_abs, 1/s; 0 to 100, default 0 (a fast reactive cover is assumed to reach 3).
    /// </summary>
    public double Absorption { get; init => field = Check.Range(value, 0, 100, Quantity.Of("1/s"), nameof(Absorption)); }

    /// <summary>Polyester: no pores, no absorption (assumed).</summary>
    public static Cover Plastic { get; } = new();

    /// <summary>Plain urethane: pores 0.2 µm, absorption 0.2 1/s (assumed).</summary>
    public static Cover Urethane { get; } = new() { Name = "urethane", Pores = 0.2e-6, Absorption = 0.2 };

    /// <summary>Reactive urethane: pores 0.6 µm, absorption 1 1/s (assumed; 0.3 to 1 µm and up to 3 1/s are plausible).</summary>
    public static Cover Reactive { get; } = new() { Name = "reactive", Pores = 0.6e-6, Absorption = 1 };

    /// <summary>The name, the pores in micrometres and the modulus in gigapascals.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}, pores {Pores / Units.Micrometre:0.##} µm, {Modulus / 1e9:0.##} GPa, drinks {Absorption:0.##} of its oil a second");
}
