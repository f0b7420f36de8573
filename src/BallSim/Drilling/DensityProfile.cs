using System.Globalization;
using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>
/// What a ball known by its numbers only is taken to be made of where a drill goes. Its radii of gyration do not say how its mass is
/// spread; the profile says it for the few per cent that a drill removes.
/// </summary>
/// <remarks>
/// What it neglects: a core that a hole reaches is denser than the mean, a filler lighter; a cover of 1.2 g/mL on a ball of mean 1.25
/// g/mL makes the removed mass wrong by some 4 %, about a tenth of an ounce in the balance.
/// </remarks>
public sealed record DensityProfile
{
    private readonly double? density;
    private readonly double thickness;

    private DensityProfile(double? density, double thickness) => (this.density, this.thickness) = (density, thickness);

    /// <summary>The same density everywhere: the ball's mass over its volume. Assumed where nothing is said.</summary>
    public static DensityProfile Mean { get; } = new(null, 0);

    /// <summary>The same density everywhere.</summary>
    /// <param name="density">kg/m³; 100 to 5000.</param>
    public static DensityProfile Uniform(double density) => new(Check.Range(density, 100, 5000, Quantity.Density), 0);

    /// <summary>A cover of known thickness and density; within it the density that gives the ball its mass.</summary>
    /// <param name="thickness">Thickness of the cover, m; 0.1 to 3 in.</param>
    /// <param name="density">Density of the cover, kg/m³; 100 to 5000.</param>
    public static DensityProfile Shell(double thickness, double density) =>
        new(Check.Range(density, 100, 5000, Quantity.Density), Check.Range(thickness, 0.1 * Inch, 3 * Inch, Quantity.Length));

    /// <summary>The profile in words.</summary>
    public override string ToString() => density is not { } ρ
        ? "mean density throughout (assumed)"
        : thickness == 0
            ? string.Create(CultureInfo.InvariantCulture, $"{ρ / GramPerMillilitre:F3} g/mL throughout")
            : string.Create(CultureInfo.InvariantCulture, $"cover of {ρ / GramPerMillilitre:F3} g/mL, {thickness / Inch:0.###} in thick, the rest by the ball's mass");

    internal Interior InteriorOf(Ball ball)
    {
        double Volume(double radius) => 4 * Math.PI / 3 * radius * radius * radius;
        var r = ball.Radius;
        if (thickness == 0)
        {
            return new([(r, density ?? ball.Mass / Volume(r))], []);
        }
        Check.That(thickness < r, $"a cover of {Check.Text(thickness)} m leaves no room in a ball of Radius {Check.Text(r)} m", nameof(thickness));
        var inside = Volume(r - thickness);
        var rest = (ball.Mass - density!.Value * (Volume(r) - inside)) / inside;
        Check.That(rest > 0, $"a cover of {Check.Text(density.Value)} kg/m³ and {Check.Text(thickness)} m alone outweighs the ball of {Check.Text(ball.Mass)} kg",
            nameof(density));
        return new([(r - thickness, rest), (r, density.Value)], []);
    }
}
