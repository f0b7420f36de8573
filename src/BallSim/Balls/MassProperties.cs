using System.Globalization;

namespace BallSim.Balls;

/// <summary>
/// What mechanics needs to know of a rigid body: mass, centre of mass and inertia tensor about the centre of mass, in one frame. Bodies
/// add, are taken out of one another, moved and turned.
/// </summary>
/// <remarks>
/// Of two bodies with masses m₁, m₂ and centres of mass r apart (Steiner; any textbook of mechanics):
/// <code>
/// I = I₁ ± I₂ ± m₁ m₂/(m₁ ± m₂) (|r|² 1 - r rᵀ)
/// </code>
/// </remarks>
public readonly record struct MassProperties
{
    /// <summary>The properties by their values.</summary>
    /// <param name="mass">Mass, kg; 0 or more.</param>
    /// <param name="centreOfMass">Centre of mass in the frame of the body, m.</param>
    /// <param name="inertia">Inertia tensor about the centre of mass in the same axes, kg m².</param>
    public MassProperties(double mass, Vector3D centreOfMass, InertiaTensor inertia)
    {
        Mass = Check.Range(mass, 0, double.PositiveInfinity, Quantity.Mass);
        CentreOfMass = Check.Finite(centreOfMass);
        Check.That(inertia.IsFinite, "inertia has an entry that is not a number", nameof(inertia));
        Inertia = inertia;
    }

    /// <summary>Mass, kg.</summary>
    public double Mass { get; }

    /// <summary>Centre of mass in the frame of the body, m.</summary>
    public Vector3D CentreOfMass { get; }

    /// <summary>Inertia tensor about the centre of mass, kg m².</summary>
    public InertiaTensor Inertia { get; }

    /// <summary>Principal moments about the centre of mass, kg m², in rising order, and their axes.</summary>
    public PrincipalAxes Principal => Inertia.Principal;

    /// <summary>Lowest radius of gyration about an axis through the centre of mass, m: √(I/m).</summary>
    public double LowRg => Math.Sqrt(Principal.LeastMoment / Mass);

    /// <summary>Radius of gyration about the principal axis between the lowest and the highest, m.</summary>
    public double IntermediateRg => Math.Sqrt(Principal.MiddleMoment / Mass);

    /// <summary>Highest radius of gyration about an axis through the centre of mass, m.</summary>
    public double HighRg => Math.Sqrt(Principal.GreatestMoment / Mass);

    /// <summary>Inertia tensor about any point of the body's frame, kg m²: I + m (|r|² 1 - r rᵀ).</summary>
    public InertiaTensor InertiaAbout(Vector3D point) => Inertia + InertiaTensor.OfPoint(Mass, point - CentreOfMass);

    /// <summary>The body carried by a vector, m.</summary>
    public MassProperties Moved(Vector3D by) => new(Mass, CentreOfMass + by, Inertia);

    /// <summary>The body turned about the origin of its frame.</summary>
    public MassProperties Turned(Rotation rotation)
    {
        var unit = rotation.Normalised;
        return new(Mass, unit.Apply(CentreOfMass), Inertia.Turned(unit));
    }

    /// <summary>The same shape at a density larger by a factor, a pure number of 0 or more.</summary>
    public MassProperties Scaled(double factor) => new(factor * Mass, CentreOfMass, factor * Inertia);

    /// <summary>Both bodies together.</summary>
    public static MassProperties operator +(MassProperties a, MassProperties b)
    {
        var mass = a.Mass + b.Mass;
        return mass == 0
            ? default
            : new(mass, (a.Mass * a.CentreOfMass + b.Mass * b.CentreOfMass) / mass,
                a.Inertia + b.Inertia + InertiaTensor.OfPoint(a.Mass * b.Mass / mass, b.CentreOfMass - a.CentreOfMass));
    }

    /// <summary>What is left of the first body when the second is taken out of it; all of the second must lie within the first.</summary>
    /// <exception cref="ArgumentException">More would be taken out than there is.</exception>
    public static MassProperties operator -(MassProperties a, MassProperties b)
    {
        var mass = a.Mass - b.Mass;
        Check.That(mass > 0 || b.Mass == 0,
            $"a body of {Check.Text(b.Mass)} kg cannot be taken out of one of {Check.Text(a.Mass)} kg", nameof(b));
        return b.Mass == 0
            ? a
            : new(mass, (a.Mass * a.CentreOfMass - b.Mass * b.CentreOfMass) / mass,
                a.Inertia - b.Inertia - InertiaTensor.OfPoint(a.Mass * b.Mass / mass, b.CentreOfMass - a.CentreOfMass));
    }

    /// <summary>Mass in kg, centre of mass in mm, radii of gyration in mm.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Mass:G6} kg, centre of mass {CentreOfMass / Units.Millimetre} mm, radii of gyration {LowRg / Units.Millimetre:G6}, " +
        $"{IntermediateRg / Units.Millimetre:G6}, {HighRg / Units.Millimetre:G6} mm");
}
