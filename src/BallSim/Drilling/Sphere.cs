namespace BallSim.Drilling;

/// <summary>
/// Great circles on the unit sphere: arcs are angles, points are unit vectors, tangents are unit vectors square to their point.
/// </summary>
internal static class Sphere
{
    /// <summary>The point reached from a point after an arc along a tangent.</summary>
    public static Vector3D Along(Vector3D point, Vector3D tangent, double arc) => Math.Cos(arc) * point + Math.Sin(arc) * tangent;

    /// <summary>The tangent carried along its own great circle by an arc from the point where it starts.</summary>
    public static Vector3D Carried(Vector3D point, Vector3D tangent, double arc) => Math.Cos(arc) * tangent - Math.Sin(arc) * point;

    /// <summary>A tangent turned counter-clockwise as seen from outside.</summary>
    public static Vector3D Turned(Vector3D point, Vector3D tangent, double angle) =>
        Math.Cos(angle) * tangent + Math.Sin(angle) * point.Cross(tangent);

    /// <summary>The tangent at a point towards another direction; null where both lie on one line through the centre.</summary>
    public static Vector3D? Towards(Vector3D point, Vector3D other)
    {
        // From the cross product: no cancellation where the two are close.
        var across = point.Cross(other);
        return across.Length > 1e-9 * other.Length ? across.Cross(point).Unit : null;
    }

    /// <summary>The angle from a point to the nearest place of the shorter arc between two others.</summary>
    public static double ToArc(Vector3D point, Vector3D from, Vector3D to)
    {
        var pole = from.Cross(to);
        var size = pole.Length;
        return size > 0 && pole.Cross(from).Dot(point) >= 0 && to.Cross(pole).Dot(point) >= 0
            ? Math.Asin(Math.Min(1, Math.Abs(pole.Dot(point)) / size))
            : Math.Min(point.AngleTo(from), point.AngleTo(to));
    }

    /// <summary>The angle from one tangent to another at a point, counter-clockwise as seen from outside, in (-π, π].</summary>
    public static double Angle(Vector3D point, Vector3D from, Vector3D to) => Math.Atan2(point.Dot(from.Cross(to)), from.Dot(to));
}
