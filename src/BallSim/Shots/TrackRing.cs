using BallSim.Drilling;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>One revolution of the track.</summary>
public sealed record TrackRing
{
    /// <summary>Points to a revolution.</summary>
    internal const int PerRevolution = 96;

    private readonly TrackPoint[] points;

    private TrackRing(TrackPoint[] points)
    {
        this.points = points;
        Points = Array.ConvertAll(points, p => p.Contact).AsReadOnly();
    }

    /// <summary>Which revolution since the landing, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>True for a whole turn; false for what is left of the last one.</summary>
    public bool IsWhole => points.Length == PerRevolution + 1;

    /// <summary>
    /// Directions from the centre of the ball to the contact point, in the ball frame: 96 to the revolution at equal shares of it, and the first of the next, so that the ring nearly closes; it
    /// fails to by what the track moved meanwhile.
    /// </summary>
    public IReadOnlyList<Vector3D> Points { get; }

    /// <summary>
    /// Axis of the circle that fits the ring, a unit vector in the ball frame on the side of the positive axis point: the normal of the plane with the least mean square distance from the points. For an open ring the
    /// spin axis in its middle.
    /// </summary>
    public required Vector3D Axis { get; init; }

    /// <summary>Angle at the centre of the ball between the pole opposite <see cref="Axis"/> and the ring, rad, the mean over its points: about π/2 less the axis tilt, π/2 where it is a great circle. A ring is a turn of a spiral, and the circle that fits it is off by up to half of <see cref="Spacing"/>.</summary>
    public required double RadiusAngle { get; init; }

    /// <summary>Distance on the surface from the spin axis at the release (the positive axis point) to the spin axis at the end of this ring, m; NaN if it was released without spin.</summary>
    public required double AxisMigration { get; init; }

    /// <summary>Distance from the ring before at the widest point, m: the greatest over the points of the shortest arc to the track one turn earlier; null for the first ring.</summary>
    public required double? Spacing { get; init; }

    /// <summary>Distance of the ball from the foul line where the ring begins, m.</summary>
    public double StartDistance => points[0].Distance;

    /// <summary>Distance of the ball from the foul line where the ring ends, m.</summary>
    public double EndDistance => points[^1].Distance;

    /// <summary>The ring in words.</summary>
    public override string ToString() => Invariant($"ring {Number} from {StartDistance / Foot:F1} to {EndDistance / Foot:F1} ft, radius {RadiusAngle / Degree:F1} deg, ")
        + (Spacing is { } gap ? Invariant($"{gap / Inch:F2} in beside the ring before, ") : "") + Invariant($"axis migrated {AxisMigration / Inch:F2} in");

    internal ReadOnlySpan<TrackPoint> Places => points;

    internal static TrackRing Of(List<TrackPoint> track, int from, double radius, Vector3D axisAtRelease)
    {
        var count = Math.Min(PerRevolution, track.Count - 1 - from);
        var points = track.GetRange(from, count + 1).ToArray();
        var axis = count == PerRevolution ? Fitted(points) : points[count / 2].SpinAxis;
        var angle = points.Average(p => p.Contact.AngleTo(-axis));
        double? spacing = from == 0 ? null : 0;
        for (var i = from; from > 0 && i <= from + count; i++)
        {
            spacing = Math.Max(spacing!.Value, radius * TurnBefore(track, i));
        }
        return new(points)
        {
            Number = from / PerRevolution + 1,
            Axis = axis,
            RadiusAngle = angle,
            AxisMigration = radius * axisAtRelease.AngleTo(points[^1].SpinAxis),
            Spacing = spacing,
        };
    }

    /// <summary>Arc from a point of the track to where it ran one turn (by half a turn more or less) before, rad.</summary>
    private static double TurnBefore(List<TrackPoint> track, int at)
    {
        var (first, last) = (Math.Max(0, at - PerRevolution * 3 / 2), at - PerRevolution / 2);
        var u = track[at].Contact;
        var nearest = first;
        for (var i = first; i <= last; i++)
        {
            nearest = u.Dot(track[i].Contact) > u.Dot(track[nearest].Contact) ? i : nearest;
        }
        var (before, after) = (track[Math.Max(first, nearest - 1)].Contact, track[Math.Min(last, nearest + 1)].Contact);
        return Math.Min(Sphere.ToArc(u, before, track[nearest].Contact), Sphere.ToArc(u, track[nearest].Contact, after));
    }

    // The points of a circle scatter least along its axis. Without the last point, which repeats the first.
    private static Vector3D Fitted(TrackPoint[] points)
    {
        var ring = points.AsSpan(0, PerRevolution);
        Vector3D mean = default, spin = default;
        foreach (var p in ring)
        {
            (mean, spin) = (mean + p.Contact / PerRevolution, spin + p.SpinAxis);
        }
        double xx = 0, yy = 0, zz = 0, xy = 0, xz = 0, yz = 0;
        foreach (var p in ring)
        {
            var d = p.Contact - mean;
            (xx, yy, zz, xy, xz, yz) = (xx + d.X * d.X, yy + d.Y * d.Y, zz + d.Z * d.Z, xy + d.X * d.Y, xz + d.X * d.Z, yz + d.Y * d.Z);
        }
        var normal = new InertiaTensor(xx, yy, zz, xy, xz, yz).Principal.Least;
        return normal.Dot(spin) < 0 ? -normal : normal;
    }
}
