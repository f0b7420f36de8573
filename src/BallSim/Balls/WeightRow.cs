using System.Globalization;
using static BallSim.Units;

namespace BallSim.Balls;

/// <summary>One weight of a line of balls that share core, cover and size; only the filler differs.</summary>
public sealed record WeightRow
{
    private WeightRow()
    {
    }

    /// <summary>The wanted weight, kg.</summary>
    public required double Weight { get; init; }

    /// <summary>The filler; null if no blend gives this weight.</summary>
    public FillerBlend? Blend { get; init; }

    /// <summary>The ball; null if no blend gives this weight.</summary>
    public BuildSheet? Sheet { get; init; }

    /// <summary>Why there is no such ball; empty if there is one.</summary>
    public string Refusal { get; init; } = "";

    /// <summary>The whole line from 6 to 16 lb with one core.</summary>
    /// <param name="build">Core, cover and size.</param>
    /// <param name="light">Density of the light component of the filler, kg/m³; 100 to 5000.</param>
    /// <param name="dense">Density of the dense component, kg/m³; above <paramref name="light"/>, at most 5000.</param>
    public static IReadOnlyList<WeightRow> Line(BallBuild build, double light, double dense) =>
        [.. Enumerable.Range(6, 11).Select(pounds => Of(build, pounds * Pound, light, dense))];

    /// <summary>One weight of the line.</summary>
    /// <param name="build">Core, cover and size.</param>
    /// <param name="weight">Wanted mass of the ball, kg; 5 to 16.05 lb.</param>
    /// <param name="light">Density of the light component of the filler, kg/m³; 100 to 5000.</param>
    /// <param name="dense">Density of the dense component, kg/m³; above <paramref name="light"/>, at most 5000.</param>
    public static WeightRow Of(BallBuild build, double weight, double light, double dense)
    {
        try
        {
            var blend = FillerBlend.For(build, weight, light, dense);
            return new() { Weight = weight, Blend = blend, Sheet = BuildSheet.Of(blend.Build) };
        }
        catch (ArgumentException e) when (e.ParamName == "weight" && e is not ArgumentOutOfRangeException)
        {
            return new() { Weight = weight, Refusal = e.Message };
        }
    }

    /// <summary>The row in the units of the trade.</summary>
    public override string ToString() => Sheet?.ToString() ?? string.Create(CultureInfo.InvariantCulture, $"{Weight / Pound:F2} lb: {Refusal}");
}
