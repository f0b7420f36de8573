using BallSim.Balls;
using BallSim.Drilling;
using static BallSim.Units;

namespace BallSim.Files;

/// <summary>
/// An undrilled ball as its specification describes it, or with the numbers that follow from its drawing. They are checked together when the
/// <see cref="Ball"/> is built from them.
/// </summary>
public sealed record BallSheet
{
    /// <summary>What the ball is called.</summary>
    public required string Name { get; init; }

    /// <summary>The file that holds this sheet, relative to the scenario's folder; null when the scenario holds it itself.</summary>
    public string? File { get; init; }

    /// <summary>Mass, kg: 5 to 16.05 lb.</summary>
    public required double Weight { get; init; }

    /// <summary>Lowest radius of gyration, m: 2.3 to 2.9 in.</summary>
    public required double LowRg { get; init; }

    /// <summary>Highest less lowest radius of gyration, m: 0 to 0.10 in.</summary>
    public required double Differential { get; init; }

    /// <summary>Highest less intermediate radius of gyration, m: 0 (a symmetric ball) to the total differential.</summary>
    public double IntermediateDifferential { get; init; }

    /// <summary>Diameter, m: 8.3 to 8.7 in; 8.55 in, assumed.</summary>
    public double Diameter { get; init; } = 8.55 * Inch;

    /// <summary>Arc from the pin to the mark over the centre of gravity, m: 0 to 10 in; null for a ball taken as balanced.</summary>
    public double? PinToCg { get; init; }

    /// <summary>Static imbalance towards that mark, as a mass in kg: 0 to 8 oz; null for a ball taken as balanced.</summary>
    public double? TopWeight { get; init; }

    /// <summary>Lever length of the balance scale, m: 1 to 10 in; 3.36 in, assumed (3 oz on 16 lb make 1 mm).</summary>
    public double BalanceLever { get; init; } = 3.36 * Inch;

    /// <summary>The cover material; reactive unless given.</summary>
    public Cover Cover { get; init; } = Cover.Reactive;

    /// <summary>What a drill takes out of a ball known by its specification; null: its mean density (assumed).</summary>
    public DensitySheet? Density { get; init; }

    /// <summary>The drawing that the ball is built from; where it is given, the numbers above only say what comes out of it. Null: the numbers count.</summary>
    public BallDrawing? Drawing { get; init; }

    /// <summary>The sheet of a ball that is built from a drawing.</summary>
    /// <exception cref="ArgumentException">The drawing cannot be built; the message says why.</exception>
    public static BallSheet Of(BallDrawing drawing)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        var poured = drawing.Poured();
        var ball = poured.Sheet.Ball;
        return new()
        {
            Name = drawing.Name,
            File = drawing.File,
            Weight = ball.Mass,
            LowRg = ball.LowRg,
            Differential = ball.Differential,
            IntermediateDifferential = ball.IntermediateDifferential,
            Diameter = 2 * ball.Radius,
            PinToCg = poured.Sheet.PinToCg,
            TopWeight = poured.Sheet.PinToCg is null ? null : poured.TopWeight,
            BalanceLever = drawing.BalanceLever,
            Cover = drawing.Material,
            Drawing = drawing,
        };
    }

    /// <summary>The undrilled ball.</summary>
    /// <exception cref="ArgumentException">A number out of its range, or numbers that no ball can have together.</exception>
    public Ball Built() => Drawing is { } drawing ? drawing.Poured().Sheet.Ball : Ball.FromSpecification(Weight, LowRg, Differential, IntermediateDifferential, Diameter,
        pinToCg: PinToCg, topWeight: TopWeight ?? 0, balanceLever: BalanceLever, cover: Cover);

    /// <summary>The ball drilled for a bowler.</summary>
    /// <exception cref="ArgumentException">The layout, the grip or a hole is impossible on this ball.</exception>
    public DrillSheet Drilled(Layout layout, Bowler bowler)
    {
        ArgumentNullException.ThrowIfNull(bowler);
        return DrillSheet.Of(Built(), layout, bowler.Grip, bowler.Axis, Drawing is null ? Density?.Built() : null);
    }

    /// <summary>A sheet from a file of its own, with the field names that a scenario uses.</summary>
    /// <param name="path">The file, JSON, at most 4 MB.</param>
    /// <exception cref="BadFileException">
    /// The file cannot be read, or something in it is wrong; the message says where and what would be right.
    /// </exception>
    public static BallSheet Read(string path) => Json.ScenarioReader.BallFile(path);

    /// <summary>Writes the sheet as a file of its own, by way of a temporary file that is renamed.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="BadFileException">The file cannot be written.</exception>
    public void Write(string path) => Json.JsonFile.Write(path, writer => Json.ScenarioWriter.Ball(writer, this with { File = null }));
}
