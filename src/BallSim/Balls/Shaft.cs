namespace BallSim.Balls;

/// <summary>
/// The way of a drill: everything within a radius of an axis, from a flat bottom outwards without end. The bodies drilled lie wholly on the
/// inner side of where the hole opens, so that nothing limits it outwards.
/// </summary>
/// <param name="Bottom">Centre of the flat bottom, m.</param>
/// <param name="Axis">Unit vector from the bottom outwards.</param>
/// <param name="Radius">Radius of the hole, m.</param>
internal readonly record struct Shaft(Vector3D Bottom, Vector3D Axis, double Radius)
{
    /// <summary>The shaft as seen from a frame that is turned and moved.</summary>
    public Shaft SeenFrom(Rotation orientation, Vector3D position) =>
        new(orientation.Inverse.Apply(Bottom - position), orientation.Inverse.Apply(Axis), Radius);

    /// <summary>True if a sphere lies outside for certain: all of the shaft is within its radius of the half line upwards from its bottom.</summary>
    public bool Misses(Vector3D centre, double radius)
    {
        var from = centre - Bottom;
        return (from - Math.Max(0, from.Dot(Axis)) * Axis).Length > radius + Radius;
    }

    /// <summary>
    /// A frame on the bottom with its third axis along the shaft and its second towards a point: what is cut at the side of the shaft is
    /// then cut evenly about the second axis.
    /// </summary>
    public (Vector3D U, Vector3D V) FrameTowards(Vector3D point)
    {
        var across = point - Bottom - (point - Bottom).Dot(Axis) * Axis;
        if (across.Length < 1e-9 * Radius)
        {
            across = Axis.Cross(Math.Abs(Axis.X) < 0.6 ? Vector3D.UnitX : Vector3D.UnitY);
        }
        var v = across.Unit;
        return (v.Cross(Axis), v);
    }
}
