using System.Collections.Immutable;
using static BallSim.Units;
using static System.FormattableString;

namespace BallSim.Balls;

/// <summary>
/// A ball as it is poured: an inner core of one or more solids, a filler round it (the outer core), a cover of even thickness. All is
/// drawn in one frame with its origin in the centre of the ball; holes for the pin are taken as filled.
/// </summary>
/// <example><code>
/// var build = new BallBuild
/// {
///     Radius = 8.55 / 2 * Inch, CoverThickness = 0.75 * Inch, CoverDensity = 1180, FillerDensity = 900,
///     Core = [new Part(Solid.Ellipsoid(1.6 * Inch, 1.9 * Inch, 2.4 * Inch).Moved(new(0, 0, 0.05 * Inch)), density: 2200)],
/// };
/// Ball ball = build.Ball;
/// </code></example>
public sealed record BallBuild
{
    /// <summary>Radius of the ball, m; 4.15 to 4.35 in (the rules: 4.250 to 4.298 in).</summary>
    public required double Radius { get; init => field = Check.Range(value, 4.15 * Inch, 4.35 * Inch, Quantity.Length, nameof(Radius)); }

    /// <summary>Thickness of the cover, m; 0 to 3 in, usually 0.5 to 1 in (from memory).</summary>
    public required double CoverThickness { get; init => field = Check.Range(value, 0, 3 * Inch, Quantity.Length, nameof(CoverThickness)); }

    /// <summary>Density of the cover, kg/m³; 100 to 5000, usually 1100 to 1250 (from memory).</summary>
    public required double CoverDensity { get; init => field = Check.Range(value, 100, 5000, Quantity.Density, nameof(CoverDensity)); }

    /// <summary>Density of the filler, kg/m³; 100 to 5000, usually 600 to 1100 (from memory), set by the wanted weight.</summary>
    public required double FillerDensity { get; init => field = Check.Range(value, 100, 5000, Quantity.Density, nameof(FillerDensity)); }

    /// <summary>
    /// The solids of the inner core, in the drawing. They displace the filler; one that lies wholly in an earlier one displaces that.
    /// </summary>
    public IReadOnlyList<Part> Core
    {
        get;
        init => field = (value ?? throw new ArgumentNullException(nameof(Core))).ToImmutableArray();
    } = ImmutableArray<Part>.Empty;

    /// <summary>
    /// The side of the drawing on which the pin is set: of the two ends of the axis of lowest radius of gyration the one nearer to this
    /// direction. +z unless given: the axis of a core of revolution.
    /// </summary>
    public Vector3D PinSide { get; init => field = Check.Direction(value, nameof(PinSide)); } = Vector3D.UnitZ;

    /// <summary>The finish; a roughness of 0.5 µm unless given (assumed).</summary>
    public Finish Finish { get; init => field = value ?? throw new ArgumentNullException(nameof(Finish)); } = Finish.Measured(0.5 * Micrometre);

    /// <summary>The cover as the friction law sees it; reactive unless given (assumed).</summary>
    public Cover Cover { get; init => field = value ?? throw new ArgumentNullException(nameof(Cover)); } = Cover.Reactive;

    /// <summary>Mass, centre of mass and inertia tensor in the drawing.</summary>
    /// <exception cref="ArgumentException">The core does not fit into the cover, or parts of it overlap.</exception>
    public MassProperties Properties => Interior.Moments.Properties();

    /// <summary>The ball, in its own frame: x the axis of lowest radius of gyration, y of the highest.</summary>
    /// <exception cref="ArgumentException">The core does not fit into the cover, or parts of it overlap.</exception>
    public Ball Ball => BuildSheet.Of(this).Ball;

    /// <summary>The same ball with its core carried by a vector of the drawing, m.</summary>
    public BallBuild WithCoreMoved(Vector3D by) => this with { Core = [.. Core.Select(p => p.Moved(by))] };

    /// <summary>The same ball with its core turned about the centre of the ball.</summary>
    public BallBuild WithCoreTurned(Rotation rotation) => this with { Core = [.. Core.Select(p => p.Turned(rotation))] };

    internal Interior Interior
    {
        get
        {
            Check.That(CoverThickness < Radius, $"CoverThickness = {Check.Text(CoverThickness)} m leaves no room in a ball of Radius " +
                $"{Check.Text(Radius)} m", nameof(CoverThickness));
            return new(CoverThickness > 0 ? [(Radius - CoverThickness, FillerDensity), (Radius, CoverDensity)] : [(Radius, FillerDensity)], Core);
        }
    }

    /// <summary>Diameter, cover, filler and the number of parts of the core.</summary>
    public override string ToString() => Invariant($"{2 * Radius / Inch:F3} in across, cover {CoverThickness / Inch:F2} in of {CoverDensity / GramPerMillilitre:F2} g/mL, ")
        + Invariant($"filler {FillerDensity / GramPerMillilitre:F2} g/mL, core of {Core.Count} part{(Core.Count == 1 ? "" : "s")}");
}
