using System.Globalization;
using static BallSim.Units;

namespace BallSim.Balls;

/// <summary>
/// The filler that gives a ball its weight at its fixed size: hollow glass bubbles and a denser filler in one blend, volumes adding.
/// </summary>
/// <remarks>The mass of a ball is linear in the density of its filler, so that the blend is a division; nothing is searched for.</remarks>
public sealed record FillerBlend
{
    private FillerBlend()
    {
    }

    /// <summary>The build with that filler.</summary>
    public required BallBuild Build { get; init; }

    /// <summary>Share of the filler's volume taken by the light component, a pure number from 0 to 1.</summary>
    public required double LightShare { get; init; }

    /// <summary>Density of the blend, kg/m³.</summary>
    public double Density => Build.FillerDensity;

    /// <summary>Weight of the ball if the filler were all of the light component, kg.</summary>
    public required double LeastWeight { get; init; }

    /// <summary>Weight of the ball if the filler were all of the dense component, kg.</summary>
    public required double GreatestWeight { get; init; }

    /// <summary>The blend for a wanted weight.</summary>
    /// <param name="build">The ball; its own filler density does not count.</param>
    /// <param name="weight">Wanted mass of the ball, kg; 5 to 16.05 lb.</param>
    /// <param name="light">Density of the filler with as many hollow bubbles as it takes, kg/m³; 100 to 5000.</param>
    /// <param name="dense">Density of the filler without any, kg/m³; above <paramref name="light"/>, at most 5000.</param>
    /// <exception cref="ArgumentException">No blend gives that weight; the message says which weights can be reached.</exception>
    public static FillerBlend For(BallBuild build, double weight, double light, double dense)
    {
        ArgumentNullException.ThrowIfNull(build);
        Check.Range(weight, 5 * Pound, 16.05 * Pound, Quantity.Mass);
        Check.Range(light, 100, 5000, Quantity.Density);
        Check.Range(dense, 100, 5000, Quantity.Density);
        Check.That(light < dense, $"light = {Check.Text(light)} kg/m³ must be less than dense = {Check.Text(dense)} kg/m³", nameof(light));
        var interior = build.Interior;
        double Mass(double density) => interior.Moments.Total + (density - build.FillerDensity) * interior.FillerVolume;
        var (least, greatest) = (Mass(light), Mass(dense));
        // Half a grain of rounding is no impossibility.
        var share = (greatest - weight) / (greatest - least);
        Check.That(share is >= -1e-12 and <= 1 + 1e-12, string.Create(CultureInfo.InvariantCulture,
            $"a weight of {weight / Pound:F3} lb is out of reach of this core and cover: with fillers from {light:G6} to {dense:G6} kg/m³ the ball weighs " +
            $"from {least / Pound:F3} to {greatest / Pound:F3} lb"), nameof(weight));
        share = Math.Clamp(share, 0, 1);
        return new()
        {
            Build = build with { FillerDensity = share * light + (1 - share) * dense },
            LightShare = share,
            LeastWeight = least,
            GreatestWeight = greatest,
        };
    }

    /// <summary>The blend in words.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"filler of {Density / GramPerMillilitre:F3} g/mL, {LightShare:P1} of its volume the light component");
}
