using static BallSim.Units;
using static System.FormattableString;

namespace BallSim.Balls;

/// <summary>A solid of one material.</summary>
public sealed record Part
{
    /// <summary>Denser than any metal a core could hold: a guard against grams in place of kilograms.</summary>
    internal const double Densest = 25_000;

    /// <summary>A solid at a density.</summary>
    /// <param name="solid">The solid, placed in the drawing.</param>
    /// <param name="density">kg/m³; 0 to 25 000. The rules allow 3800 in a ball (3.80 g/mL).</param>
    public Part(Solid solid, double density) => (Solid, Density) = (solid, density);

    /// <summary>The solid, placed in the drawing.</summary>
    public Solid Solid { get; init => field = value ?? throw new ArgumentNullException(nameof(Solid)); }

    /// <summary>Density, kg/m³; 0 to 25 000.</summary>
    public double Density { get; init => field = Check.Range(value, 0, Densest, Quantity.Density, nameof(Density)); }

    /// <summary>Mass, centre of mass and inertia tensor in the drawing.</summary>
    public MassProperties Properties => Solid.Properties(Density);

    /// <summary>The part carried by a vector, m.</summary>
    public Part Moved(Vector3D by) => this with { Solid = Solid.Moved(by) };

    /// <summary>The part turned about the origin of the drawing.</summary>
    public Part Turned(Rotation rotation) => this with { Solid = Solid.Turned(rotation) };

    /// <summary>Form, place and density.</summary>
    public override string ToString() => Invariant($"{Solid}, {Density / GramPerMillilitre:F2} g/mL");
}
