namespace BallSim.Balls;

/// <summary>A solid body without a density yet: a form, placed and turned freely in the frame of a drawing.</summary>
/// <remarks>
/// Solids of revolution have the z axis of their own frame as axis. <see cref="Turned"/> and <see cref="Moved"/> act in the order written:
/// <c>solid.Turned(q).Moved(v)</c> first turns about the origin.
/// </remarks>
public sealed record Solid
{
    private const double Largest = 1;

    private Solid(Shape shape, string name) => (Shape, Name) = (shape, name);

    /// <summary>What the form is called.</summary>
    public string Name { get; }

    /// <summary>From the form's own axes to those of the drawing.</summary>
    public Rotation Orientation { get; private init; } = Rotation.Identity;

    /// <summary>The form's own origin in the drawing, m.</summary>
    public Vector3D Position { get; private init; }

    internal Shape Shape { get; }

    /// <summary>Volume, m³.</summary>
    public double Volume => Shape.Moments.Total;

    /// <summary>Centre of volume in the drawing, m.</summary>
    public Vector3D Centre => Position + Orientation.Apply(Shape.Middle);

    /// <summary>A sphere about the origin.</summary>
    /// <param name="radius">m; above 0, at most 1.</param>
    public static Solid Sphere(double radius) => new(new SphereShape(Size(radius)), "sphere");

    /// <summary>A sphere's cap: centre of the sphere in the origin, the cap towards +z; a height of the radius gives a half
    /// sphere.</summary>
    /// <param name="radius">Radius of the sphere, m; above 0, at most 1.</param>
    /// <param name="height">Height of the cap, m; above 0, at most the diameter.</param>
    public static Solid SphericalCap(double radius, double height)
    {
        Size(radius);
        Size(height);
        Check.That(height < 2 * radius, $"height = {Check.Text(height)} m must be less than the diameter, {Check.Text(2 * radius)} m", nameof(height));
        var (cut, angle) = (radius - height, Math.Acos(1 - height / radius));
        return Revolved(Profile.From(cut, 0).LineTo(cut, radius * Math.Sin(angle))
            .ArcTo(radius * Math.Cos(angle / 2), radius * Math.Sin(angle / 2), radius, 0), "spherical cap");
    }

    /// <summary>A hollow sphere about the origin.</summary>
    /// <param name="inner">Radius of the hollow, m; above 0.</param>
    /// <param name="outer">Radius outside, m; above <paramref name="inner"/>, at most 1.</param>
    public static Solid SphericalShell(double inner, double outer)
    {
        Size(inner);
        Size(outer);
        Check.That(inner < outer, $"inner = {Check.Text(inner)} m must be less than outer = {Check.Text(outer)} m", nameof(inner));
        return Revolved(Profile.From(-outer, 0).ArcTo(0, outer, outer, 0).LineTo(inner, 0).ArcTo(0, inner, -inner, 0), "spherical shell");
    }

    /// <summary>An ellipsoid about the origin.</summary>
    /// <param name="x">Half axis along x, m; above 0, at most 1.</param>
    /// <param name="y">Half axis along y, m; above 0, at most 1.</param>
    /// <param name="z">Half axis along z, m; above 0, at most 1.</param>
    public static Solid Ellipsoid(double x, double y, double z) => new(new EllipsoidShape(Size(x), Size(y), Size(z)), "ellipsoid");

    /// <summary>A cylinder about the z axis, its middle in the origin.</summary>
    /// <param name="radius">m; above 0, at most 1.</param>
    /// <param name="height">m; above 0, at most 1.</param>
    public static Solid Cylinder(double radius, double height)
    {
        var half = Size(height) / 2;
        return Revolved(Profile.From(-half, 0).LineTo(-half, Size(radius)).LineTo(half, radius).LineTo(half, 0), "cylinder");
    }

    /// <summary>A cone with its tip cut off, its base in the plane z = 0 and its top towards +z; a radius of zero gives a whole
    /// cone.</summary>
    /// <param name="baseRadius">m; 0 to 1.</param>
    /// <param name="topRadius">m; 0 to 1.</param>
    /// <param name="height">m; above 0, at most 1.</param>
    public static Solid ConeFrustum(double baseRadius, double topRadius, double height) => Revolved(
        Profile.From(0, 0).LineTo(0, baseRadius).LineTo(Size(height), topRadius).LineTo(height, 0), "cone frustum");

    /// <summary>A ring about the z axis, its middle in the origin.</summary>
    /// <param name="ringRadius">From the axis to the middle of the tube, m; above 0, at most 1.</param>
    /// <param name="tubeRadius">Radius of the tube, m; at most <paramref name="ringRadius"/>.</param>
    public static Solid Torus(double ringRadius, double tubeRadius)
    {
        Size(ringRadius);
        Size(tubeRadius);
        Check.That(tubeRadius <= ringRadius,
            $"tubeRadius = {Check.Text(tubeRadius)} m must not exceed ringRadius = {Check.Text(ringRadius)} m", nameof(tubeRadius));
        return Revolved(Profile.From(-tubeRadius, ringRadius).ArcTo(0, ringRadius + tubeRadius, tubeRadius, ringRadius)
            .ArcTo(0, ringRadius - tubeRadius, -tubeRadius, ringRadius), "torus");
    }

    /// <summary>A box along the axes, its middle in the origin.</summary>
    /// <param name="x">Whole edge along x, m; above 0, at most 1.</param>
    /// <param name="y">Whole edge along y, m; above 0, at most 1.</param>
    /// <param name="z">Whole edge along z, m; above 0, at most 1.</param>
    public static Solid Box(double x, double y, double z)
    {
        var (a, b, c) = (Size(x) / 2, Size(y) / 2, Size(z) / 2);
        var corners = from k in (double[])[-c, c] from j in (double[])[-b, b] from i in (double[])[-a, a] select new Vector3D(i, j, k);
        return new(new MeshShape(TriangleMesh.Of(corners,
        [
            (0, 2, 3), (0, 3, 1), (4, 5, 7), (4, 7, 6), (0, 1, 5), (0, 5, 4), (2, 6, 7), (2, 7, 3), (0, 4, 6), (0, 6, 2), (1, 3, 7), (1, 7, 5),
        ])), "box");
    }

    /// <summary>A solid of revolution about the z axis.</summary>
    /// <exception cref="ArgumentException">The outline crosses itself or encloses nothing.</exception>
    public static Solid Revolved(Profile profile) => Revolved(profile, "solid of revolution");

    /// <summary>A solid bounded by a closed surface of triangles.</summary>
    /// <exception cref="ArgumentException">The surface has holes, triangles that face the wrong way or without area; the message counts
    /// them.</exception>
    public static Solid FromMesh(TriangleMesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        return new(new MeshShape(mesh), $"mesh of {mesh.Triangles.Count} triangles");
    }

    /// <summary>The solid carried by a vector, m.</summary>
    public Solid Moved(Vector3D by) => this with { Position = Position + Check.Finite(by) };

    /// <summary>The solid turned about the origin of the drawing.</summary>
    public Solid Turned(Rotation rotation)
    {
        Check.That(double.IsFinite(rotation.Norm) && rotation.Norm > 0, $"{rotation} is no rotation", nameof(rotation));
        var unit = rotation.Normalised;
        return this with { Orientation = unit * Orientation, Position = unit.Apply(Position) };
    }

    /// <summary>Mass, centre of mass and inertia tensor in the drawing at an even density.</summary>
    /// <param name="density">kg/m³; 0 to 25 000.</param>
    public MassProperties Properties(double density) =>
        (Check.Range(density, 0, Part.Densest, Quantity.Density) * Moments).Properties();

    /// <summary>The form and its place.</summary>
    public override string ToString() => $"{Name} about {Centre} m";

    internal Moments Moments => Shape.Moments.Turned(Orientation).Moved(Position);

    internal double Reach(Vector3D from) => Shape.Reach(Orientation.Inverse.Apply(from - Position));

    // Most parts of a core lie out of the way of most holes, which a sphere round the part tells at once.
    internal Moments Within(Shaft shaft) => shaft.Misses(Centre, Reach(Centre)) ? default : Shape.Within(shaft.SeenFrom(Orientation, Position)).Turned(Orientation).Moved(Position);

    internal void Chords(Vector3D origin, Vector3D direction, List<double> chords) =>
        Shape.Chords(Orientation.Inverse.Apply(origin - Position), Orientation.Inverse.Apply(direction), chords);

    private static Solid Revolved(Profile profile, string name)
    {
        ArgumentNullException.ThrowIfNull(profile);
        return new(new RevolvedShape(profile), name);
    }

    private static double Size(double value, [System.Runtime.CompilerServices.CallerArgumentExpression(nameof(value))] string name = "")
    {
        Check.That(!(value <= 0), $"{name} = {Check.Text(value)} m must be above 0", name);
        return Check.Range(value, 0, Largest, Quantity.Length, name);
    }
}
