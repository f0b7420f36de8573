using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Files;

/// <summary>
/// A ball as its engineer draws it: core, filler, cover, and what is wished for: a weight, which the blend of the filler gives, and a top weight, which
/// the place of the core gives. <see cref="Poured"/> solves for both.
/// </summary>
public sealed record BallDrawing
{
    /// <summary>What the ball is called.</summary>
    public required string Name { get; init; }

    /// <summary>The file that holds this drawing, relative to the scenario's folder; null when the scenario holds it itself.</summary>
    public string? File { get; init; }

    /// <summary>Diameter, m: 8.3 to 8.7 in; 8.55 in, assumed.</summary>
    public double Diameter { get; init; } = 8.55 * Inch;

    /// <summary>Thickness of the cover, m; 0 to 3 in.</summary>
    public required double CoverThickness { get; init; }

    /// <summary>Density of the cover, kg/m³; 100 to 5000.</summary>
    public required double CoverDensity { get; init; }

    /// <summary>The cover as the friction law sees it; reactive unless given.</summary>
    public Cover Material { get; init; } = Cover.Reactive;

    /// <summary>Density of the filler, kg/m³, 100 to 5000; null where <see cref="Weight"/> is wished for instead.</summary>
    public double? FillerDensity { get; init; }

    /// <summary>Wished weight of the ball, kg, 5 to 16.05 lb; null where the filler's density is given instead.</summary>
    public double? Weight { get; init; }

    /// <summary>Density of the filler with as many hollow bubbles as it takes, kg/m³; null where no blend is to be solved.</summary>
    public double? LightFiller { get; init; }

    /// <summary>Density of the filler without bubbles, kg/m³; null where no blend is to be solved.</summary>
    public double? DenseFiller { get; init; }

    /// <summary>Wished static imbalance, as a mass in kg, 0 to 8 oz, for which the core moves along z of the drawing; null to leave the core where it is drawn.</summary>
    public double? TopWeight { get; init; }

    /// <summary>Lever length of the balance scale, m: 1 to 10 in; 3.36 in, assumed (3 oz on 16 lb make 1 mm).</summary>
    public double BalanceLever { get; init; } = 3.36 * Inch;

    /// <summary>The pieces of the core; a piece that lies wholly in an earlier one displaces that.</summary>
    public IReadOnlyList<CoreSheet> Cores { get; init; } = [];

    /// <summary>Turns of the whole core about the centre of the ball, one after the other: a core that leans away from z sets the pin off the centre of gravity.</summary>
    public IReadOnlyList<CoreTurn> Turns { get; init; } = [];

    /// <summary>The ball as poured, both wishes solved.</summary>
    /// <exception cref="ArgumentException">
    /// A number out of its range, a core that does not fit, or a wish that cannot be had; the message says what can.
    /// </exception>
    public PouredBall Poured()
    {
        var build = new BallBuild
        {
            Radius = Diameter / 2,
            CoverThickness = CoverThickness,
            CoverDensity = CoverDensity,
            FillerDensity = FillerDensity ?? LightFiller ?? throw new ArgumentException("give the filler's density, or a weight and the densities light and dense"),
            Core = [.. Cores.Select(c => c.Built())],
            Cover = Material,
        };
        build = Turns.Aggregate(build, (b, turn) => b.WithCoreTurned(Rotation.About(turn.About, turn.By)));
        var blend = (Weight, LightFiller, DenseFiller) switch
        {
            (null, _, _) => null,
            ({ } weight, { } light, { } dense) => FillerBlend.For(build, weight, light, dense),
            _ => throw new ArgumentException("a weight needs the densities light and dense of the filler to be blended from", "weight"),
        };
        build = blend?.Build ?? build;
        // The core carries its excess with it and leaves filler behind, so that this keeps the weight.
        var shift = TopWeight is { } top ? CoreShift.For(build, top, balanceLever: BalanceLever) : null;
        return new() { Drawing = this, Sheet = BuildSheet.Of(shift?.Build ?? build), Blend = blend, Shift = shift };
    }

    /// <summary>The line of balls from 6 to 16 lb that share this core, cover and size; only the filler, and for a top weight the core's place, differ.</summary>
    /// <exception cref="ArgumentException">The densities that the filler is blended from are not given.</exception>
    public IReadOnlyList<PouredRow> Line()
    {
        if (LightFiller is null || DenseFiller is null)
        {
            throw new ArgumentException("a line of weights needs the densities light and dense of the filler to be blended from");
        }
        return [.. Enumerable.Range(6, 11).Select(pounds => Row(pounds * Pound))];
    }

    /// <summary>A drawing from its file.</summary>
    /// <param name="path">The file, JSON, at most 4 MB.</param>
    /// <exception cref="BadFileException">
    /// The file cannot be read, or something in it is wrong; the message says where and what would be right.
    /// </exception>
    public static BallDrawing Read(string path) => Json.DrawingReader.Own(Json.JsonFile.Opened(path));

    /// <summary>Writes the drawing as a file of its own, by way of a temporary file that is renamed.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="BadFileException">The file cannot be written.</exception>
    public void Write(string path) => Json.JsonFile.Write(path, writer => Json.DrawingWriter.Whole(writer, this));

    private PouredRow Row(double weight)
    {
        try
        {
            return new(weight, (this with { Weight = weight, FillerDensity = null }).Poured(), "");
        }
        catch (ArgumentException e) when (e.ParamName is "weight" or "topWeight" && e is not ArgumentOutOfRangeException)
        {
            return new(weight, null, Json.Worded.Sentence(e));
        }
    }
}
