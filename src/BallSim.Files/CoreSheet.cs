using BallSim.Balls;

namespace BallSim.Files;

/// <summary>
/// One piece of a core as a file describes it: a form with the sizes that it needs, a density, a place and turns. Which sizes a form needs is said at
/// <see cref="CoreForm"/>; others stay null.
/// </summary>
public sealed record CoreSheet
{
    /// <summary>The form.</summary>
    public required CoreForm Form { get; init; }

    /// <summary>Density, kg/m³; 0 to 25 000 (the rules allow 3800).</summary>
    public required double Density { get; init; }

    /// <summary>Diameter of a sphere, a cap's sphere, a cylinder, a cone's base or a ring's middle circle; the outer one of a shell, m.</summary>
    public double? Diameter { get; init; }

    /// <summary>Diameter of a shell's hollow, m.</summary>
    public double? InnerDiameter { get; init; }

    /// <summary>Diameter of a cone's top, m; zero for a whole cone.</summary>
    public double? TopDiameter { get; init; }

    /// <summary>Diameter of a ring's tube, m.</summary>
    public double? TubeDiameter { get; init; }

    /// <summary>Extent along x, m.</summary>
    public double? Width { get; init; }

    /// <summary>Extent along y, m.</summary>
    public double? Depth { get; init; }

    /// <summary>Extent along z, m.</summary>
    public double? Height { get; init; }

    /// <summary>Outline of a turned piece, at least three points.</summary>
    public IReadOnlyList<OutlinePoint> Outline { get; init; } = [];

    /// <summary>The STL file of a mesh, relative to the folder of the drawing.</summary>
    public string? File { get; init; }

    /// <summary>What one of the numbers in that file is, m; the format itself does not say.</summary>
    public double FileUnit { get; init; } = Units.Millimetre;

    /// <summary>What the file holds; a piece of the form <see cref="CoreForm.Mesh"/> needs it.</summary>
    public TriangleMesh? Mesh { get; init; }

    /// <summary>Turns about the origin of the drawing, one after the other, before the piece is put in its place.</summary>
    public IReadOnlyList<CoreTurn> Turns { get; init; } = [];

    /// <summary>Where the piece's own origin goes in the drawing, m; the centre of the ball is zero.</summary>
    public Vector3D Place { get; init; }

    /// <summary>The piece.</summary>
    /// <exception cref="ArgumentException">A size is missing or out of its range, or the sizes make no solid.</exception>
    public Part Built()
    {
        var solid = Form switch
        {
            CoreForm.Sphere => Solid.Sphere(Needed(Diameter, "diameter") / 2),
            CoreForm.Shell when InnerDiameter >= Diameter => throw new ArgumentException("the hollow must be smaller than the shell's own diameter", "innerDiameter"),
            CoreForm.Cap when Height >= Diameter => throw new ArgumentException("a cap must be lower than its sphere's diameter", "height"),
            CoreForm.Ring when TubeDiameter > Diameter => throw new ArgumentException("the tube must not be wider than the circle in its middle", "tubeDiameter"),
            CoreForm.Cap => Solid.SphericalCap(Needed(Diameter, "diameter") / 2, Needed(Height, "height")),
            CoreForm.Shell => Solid.SphericalShell(Needed(InnerDiameter, "innerDiameter") / 2, Needed(Diameter, "diameter") / 2),
            CoreForm.Ellipsoid => Solid.Ellipsoid(Needed(Width, "width") / 2, Needed(Depth, "depth") / 2, Needed(Height, "height") / 2),
            CoreForm.Cylinder => Solid.Cylinder(Needed(Diameter, "diameter") / 2, Needed(Height, "height")),
            CoreForm.Cone => Solid.ConeFrustum(Needed(Diameter, "diameter") / 2, Needed(TopDiameter, "topDiameter") / 2, Needed(Height, "height")),
            CoreForm.Ring => Solid.Torus(Needed(Diameter, "diameter") / 2, Needed(TubeDiameter, "tubeDiameter") / 2),
            CoreForm.Box => Solid.Box(Needed(Width, "width"), Needed(Depth, "depth"), Needed(Height, "height")),
            CoreForm.Mesh => Solid.FromMesh(Mesh ?? throw new ArgumentException("a mesh needs the triangles that its file holds", "file")),
            _ => Solid.Revolved(Lines()),
        };
        foreach (var turn in Turns)
        {
            solid = solid.Turned(Rotation.About(turn.About, turn.By));
        }
        return new(solid.Moved(Place), Density);
    }

    private static double Needed(double? size, string name) =>
        size ?? throw new ArgumentException($"this form needs a {name}", name);

    private Profile Lines()
    {
        if (Outline.Count < 3)
        {
            throw new ArgumentException($"an outline needs at least three points; this one has {Outline.Count}", "outline");
        }
        var profile = Profile.From(Outline[0].Along, Outline[0].Off);
        foreach (var point in Outline.Skip(1))
        {
            profile = point.Through is { } through
                ? profile.ArcTo(through.Along, through.Off, point.Along, point.Off)
                : profile.LineTo(point.Along, point.Off);
        }
        return profile;
    }
}
