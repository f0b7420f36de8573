using System.Globalization;
using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>
/// A hole as the drill makes it: a flat-bottomed cylinder. Its depth counts along the axis from where the axis meets the surface; what
/// stands over that point's plane, the dome of the sphere, goes too.
/// </summary>
public sealed record Hole
{
    /// <summary>A hole by its axis and measures.</summary>
    /// <param name="name">What messages call it.</param>
    /// <param name="entry">Direction from the centre of the ball to where the axis meets the surface; any length but zero.</param>
    /// <param name="axis">Direction of the axis outwards, in the ball frame; any length but zero.</param>
    /// <param name="diameter">Width, m; 0.1 to 2 in.</param>
    /// <param name="depth">Depth along the axis, m; 0.1 to 8 in.</param>
    public Hole(string name, Vector3D entry, Vector3D axis, double diameter, double depth)
    {
        Name = name ?? throw new ArgumentNullException(nameof(name));
        Entry = Check.Direction(entry, nameof(entry));
        Axis = Check.Direction(axis, nameof(axis));
        Diameter = Check.Range(diameter, 0.1 * Inch, 2 * Inch, Quantity.Length);
        Depth = Check.Range(depth, 0.1 * Inch, 8 * Inch, Quantity.Length);
    }

    /// <summary>What messages call it.</summary>
    public string Name { get; }

    /// <summary>Unit direction from the centre of the ball to where the axis meets the surface, in the ball frame.</summary>
    public Vector3D Entry { get; }

    /// <summary>Unit direction of the axis outwards, in the ball frame.</summary>
    public Vector3D Axis { get; }

    /// <summary>Width, m.</summary>
    public double Diameter { get; }

    /// <summary>Depth along the axis from where the axis meets the surface, m.</summary>
    public double Depth { get; }

    /// <summary>Distance by which the axis passes beside the centre of a ball of the given radius (m), m.</summary>
    public double PitchOn(double radius) => radius * Entry.Cross(Axis).Length;

    /// <summary>The measures in inches.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}: {Diameter / Inch:0.###} in wide, {Depth / Inch:0.###} in deep");

    internal Shaft Shaft(double radius) => new(radius * Entry - Depth * Axis, Axis, Diameter / 2);
}
