using BallSim.Balls;
using BallSim.Files.Text;
using static BallSim.Units;

namespace BallSim.Files.Json;

/// <summary>The tables of numbers of a drawing. The library's own build is asked whether each is possible.</summary>
internal static class DrawingShapes
{
    private static readonly BallBuild Probe = new() { Radius = 8.55 / 2 * Inch, CoverThickness = 0.75 * Inch, CoverDensity = 1200, FillerDensity = 1000 };

    public static Shape<BallDrawing> Whole { get; } = new(
        new("diameter", UnitKind.Length, d => d.Diameter, (d, v) => After(Within.Half(() => Probe with { Radius = v / 2 }), d with { Diameter = v })),
        new("topWeight", UnitKind.Mass, d => d.TopWeight, (d, v) => d with { TopWeight = Within.Range(v, 0, 8 * Ounce, "topWeight") }),
        new("balanceLever", UnitKind.Length, d => d.BalanceLever, (d, v) => d with { BalanceLever = Within.Range(v, 1 * Inch, 10 * Inch, "balanceLever") }));

    public static Shape<BallDrawing> Cover { get; } = new(
        new("thickness", UnitKind.Length, d => d.CoverThickness, (d, v) => After(Probe with { CoverThickness = v }, d with { CoverThickness = v })),
        new("density", UnitKind.Density, d => d.CoverDensity, (d, v) => After(Probe with { CoverDensity = v }, d with { CoverDensity = v })));

    public static Shape<BallDrawing> Filler { get; } = new(
        new("density", UnitKind.Density, d => d.FillerDensity, (d, v) => After(Probe with { FillerDensity = v }, d with { FillerDensity = v })),
        new("weight", UnitKind.Mass, d => d.Weight, (d, v) => d with { Weight = Within.Range(v, 5 * Pound, 16.05 * Pound, "weight") }),
        new("light", UnitKind.Density, d => d.LightFiller, (d, v) => After(Probe with { FillerDensity = v }, d with { LightFiller = v })),
        new("dense", UnitKind.Density, d => d.DenseFiller, (d, v) => After(Probe with { FillerDensity = v }, d with { DenseFiller = v })));

    /// <summary>A drawing before any field is read; what a file must give is NaN.</summary>
    public static BallDrawing Blank { get; } = new() { Name = "", CoverThickness = double.NaN, CoverDensity = double.NaN };

    public static Shape<CoreSheet> Core { get; } = new(
        new("density", UnitKind.Density, c => c.Density, (c, v) => c with { Density = Within.Range(v, 0, 25_000, "density") }),
        new("diameter", UnitKind.Length, c => c.Diameter, (c, v) => c with { Diameter = Within.Size(v, "diameter") }),
        new("innerDiameter", UnitKind.Length, c => c.InnerDiameter, (c, v) => c with { InnerDiameter = Within.Size(v, "innerDiameter") }),
        new("topDiameter", UnitKind.Length, c => c.TopDiameter, (c, v) => c with { TopDiameter = Within.Range(v, 0, 9 * Inch, "topDiameter") }),
        new("tubeDiameter", UnitKind.Length, c => c.TubeDiameter, (c, v) => c with { TubeDiameter = Within.Size(v, "tubeDiameter") }),
        new("width", UnitKind.Length, c => c.Width, (c, v) => c with { Width = Within.Size(v, "width") }),
        new("depth", UnitKind.Length, c => c.Depth, (c, v) => c with { Depth = Within.Size(v, "depth") }),
        new("height", UnitKind.Length, c => c.Height, (c, v) => c with { Height = Within.Size(v, "height") }));

    /// <summary>Which sizes each form needs; it knows no others.</summary>
    public static (CoreForm Form, string Word, string[] Needed)[] Forms { get; } =
    [
        (CoreForm.Sphere, "sphere", ["diameter"]),
        (CoreForm.Cap, "cap", ["diameter", "height"]),
        (CoreForm.Shell, "shell", ["diameter", "innerDiameter"]),
        (CoreForm.Ellipsoid, "ellipsoid", ["width", "depth", "height"]),
        (CoreForm.Cylinder, "cylinder", ["diameter", "height"]),
        (CoreForm.Cone, "cone", ["diameter", "topDiameter", "height"]),
        (CoreForm.Ring, "ring", ["diameter", "tubeDiameter"]),
        (CoreForm.Box, "box", ["width", "depth", "height"]),
        (CoreForm.Turned, "turned", []),
        (CoreForm.Mesh, "mesh", []),
    ];

    /// <summary>What one of the numbers in a mesh file can be.</summary>
    public static (string Word, double Size)[] MeshUnits { get; } = [("mm", Millimetre), ("cm", 0.01), ("m", Metre), ("in", Inch)];

    public static Shape<Vector3D> Place { get; } = new(
        new("x", UnitKind.Length, p => p.X, (p, v) => new(Within.Range(v, -9 * Inch, 9 * Inch, "x"), p.Y, p.Z)),
        new("y", UnitKind.Length, p => p.Y, (p, v) => new(p.X, Within.Range(v, -9 * Inch, 9 * Inch, "y"), p.Z)),
        new("z", UnitKind.Length, p => p.Z, (p, v) => new(p.X, p.Y, Within.Range(v, -9 * Inch, 9 * Inch, "z"))));

    public static Shape<Vector3D> Direction { get; } = new(
        new("x", null, p => p.X, (p, v) => new(v, p.Y, p.Z)),
        new("y", null, p => p.Y, (p, v) => new(p.X, v, p.Z)),
        new("z", null, p => p.Z, (p, v) => new(p.X, p.Y, v)));

    public static Shape<CoreTurn> Turn { get; } = new(
        new Property<CoreTurn>("by", UnitKind.Angle, t => t.By, (t, v) => t with { By = Within.Range(v, -2 * Math.PI, 2 * Math.PI, "by") }));

    public static Shape<OutlinePoint> Point { get; } = new(
        new("along", UnitKind.Length, p => p.Along, (p, v) => p with { Along = Within.Range(v, -9 * Inch, 9 * Inch, "along") }),
        new("off", UnitKind.Length, p => p.Off, (p, v) => p with { Off = Within.Range(v, 0, 9 * Inch, "off") }));

    public static Shape<DensitySheet> Density { get; } = new(
        new("density", UnitKind.Density, d => d.Density, (d, v) => After((d with { Density = v }).Built(), d with { Density = v })),
        new("coverThickness", UnitKind.Length, d => d.CoverThickness, (d, v) => After((d with { CoverThickness = v }).Built(), d with { CoverThickness = v })));

    // What was built only to be asked goes.
    private static T After<T>(object asked, T result) => result;
}
