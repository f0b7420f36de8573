using MathNet.Numerics.Integration;

namespace BallSim.Balls;

/// <summary>Exact integrals over what of a polyhedron lies within a shaft, in the shaft's frame: z along the axis from the flat
/// bottom.</summary>
/// <remarks>
/// Gauss's theorem along the axis: every triangle above the bottom, seen along the axis, contributes with the sign of the side it shows
/// <code>
/// ∬ ∫₀^z (1, x, y, z, ...) dz dx dy   over its shadow within the circle
/// </code>
/// z is linear there, so that the integrand is a cubic polynomial; the shadow is bounded by straight lines and arcs of the circle.
/// </remarks>
internal static class MeshInShaft
{
    // Cubic in the distance from the corner of the fan times that distance: three points are exact. Along a straight edge two would do;
    // on an arc of at most a quarter turn twelve reach rounding.
    private static GaussLegendreRule Out { get; } = new(0, 1, 3);

    private static GaussLegendreRule Round { get; } = new(0, 1, 12);

    public static Moments Integrals(Vector3D[] vertices, (int A, int B, int C)[] triangles, Func<Vector3D, Vector3D> toShaft, double radius)
    {
        var points = Array.ConvertAll(vertices, v => toShaft(v));
        var sum = default(Moments);
        foreach (var (i, j, k) in triangles)
        {
            var (a, b, c) = (points[i], points[j], points[k]);
            if (Math.Max(a.Z, Math.Max(b.Z, c.Z)) <= 0
                || Math.Min(a.X, Math.Min(b.X, c.X)) >= radius || Math.Max(a.X, Math.Max(b.X, c.X)) <= -radius
                || Math.Min(a.Y, Math.Min(b.Y, c.Y)) >= radius || Math.Max(a.Y, Math.Max(b.Y, c.Y)) <= -radius)
            {
                continue;
            }
            var area = (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
            if (area == 0)
            {
                continue;
            }
            // The shadow run counter-clockwise, and the sign kept.
            var corners = AboveBottom(area > 0 ? [a, b, c] : [a, c, b]);
            if (corners.Count >= 3)
            {
                sum += Math.Sign(area) * Shadow(corners, radius);
            }
        }
        return sum;
    }

    private static List<Vector3D> AboveBottom(ReadOnlySpan<Vector3D> corners)
    {
        var kept = new List<Vector3D>(4);
        for (var i = 0; i < corners.Length; i++)
        {
            var (p, q) = (corners[i], corners[(i + 1) % corners.Length]);
            if (p.Z >= 0)
            {
                kept.Add(p);
            }
            if (p.Z > 0 && q.Z < 0 || p.Z < 0 && q.Z > 0)
            {
                kept.Add(p + p.Z / (p.Z - q.Z) * (q - p));
            }
        }
        return kept;
    }

    // The integral over the part of a convex polygon within the circle, by a fan from one point of its boundary: all its points lie on the
    // triangle, where z is bounded however steep the triangle stands.
    private static Moments Shadow(List<Vector3D> corners, double radius)
    {
        var boundary = new List<(Vector3D From, Vector3D To)>();
        for (var i = 0; i < corners.Count; i++)
        {
            var (p, q) = (corners[i], corners[(i + 1) % corners.Count]);
            var d = q - p;
            var (dd, pd, pp) = (d.X * d.X + d.Y * d.Y, p.X * d.X + p.Y * d.Y, p.X * p.X + p.Y * p.Y - radius * radius);
            var square = pd * pd - dd * pp;
            if (dd == 0 || square <= 0)
            {
                continue;
            }
            var (low, high) = (Math.Max(0, (-pd - Math.Sqrt(square)) / dd), Math.Min(1, (-pd + Math.Sqrt(square)) / dd));
            if (low < high)
            {
                boundary.Add((low == 0 ? p : p + low * d, high == 1 ? q : p + high * d));
            }
        }
        var height = Plane(corners);
        if (boundary.Count == 0)
        {
            // Nothing of the outline within the circle: the circle lies within the polygon or beside it.
            return Contains(corners) ? Arc(default, height, radius, 0, 2 * Math.PI) : default;
        }
        var centre = boundary[0].From;
        var sum = default(Moments);
        for (var i = 0; i < boundary.Count; i++)
        {
            var (from, to) = boundary[i];
            var next = boundary[(i + 1) % boundary.Count].From;
            sum += Edge(centre, from, to);
            if (double.Hypot(to.X - next.X, to.Y - next.Y) > 1e-14 * radius)
            {
                // Out of the circle here and in again there: along the circle, counter-clockwise.
                var (start, end) = (Math.Atan2(to.Y, to.X), Math.Atan2(next.Y, next.X));
                sum += Arc(centre, height, radius, start, end > start ? end : end + 2 * Math.PI);
            }
        }
        return sum;
    }

    private static Moments Edge(Vector3D centre, Vector3D from, Vector3D to)
    {
        var cross = (from.X - centre.X) * (to.Y - centre.Y) - (from.Y - centre.Y) * (to.X - centre.X);
        var sum = default(Moments);
        for (var i = 0; i < 3; i++)
        {
            var p = from + Out.GetAbscissa(i) * (to - from);
            sum += Out.GetWeight(i) * cross * Ray(centre, p);
        }
        return sum;
    }

    private static Moments Arc(Vector3D centre, Func<double, double, double> height, double radius, double start, double end)
    {
        var panels = (int)Math.Ceiling((end - start) / (Math.PI / 2));
        var width = (end - start) / panels;
        var from = centre == default ? new(0, 0, height(0, 0)) : centre;
        var sum = default(Moments);
        for (var k = 0; k < panels; k++)
        {
            for (var i = 0; i < 12; i++)
            {
                var angle = start + (k + Round.GetAbscissa(i)) * width;
                var (x, y) = (radius * Math.Cos(angle), radius * Math.Sin(angle));
                // (P - centre) × dP/dφ.
                var cross = (x - from.X) * x + (y - from.Y) * y;
                sum += Round.GetWeight(i) * width * cross * Ray(from, new(x, y, height(x, y)));
            }
        }
        return sum;
    }

    // From the corner of the fan to a point of the boundary: ∫ s f(corner + s (p - corner)) ds.
    private static Moments Ray(Vector3D corner, Vector3D p)
    {
        var sum = default(Moments);
        for (var i = 0; i < 3; i++)
        {
            var s = Out.GetAbscissa(i);
            var (x, y, z) = corner + s * (p - corner);
            sum += Out.GetWeight(i) * s * z * new Moments(1, x, y, z / 2, x * x, y * y, z * z / 3, x * y, y * z / 2, x * z / 2);
        }
        return sum;
    }

    private static Func<double, double, double> Plane(List<Vector3D> corners)
    {
        var (a, b, c) = (corners[0], corners[1], corners[2]);
        var best = 0.0;
        // Of a clipped triangle the largest corner triangle: the others may be slivers.
        for (var i = 0; i < corners.Count; i++)
        {
            var (p, q, r) = (corners[i], corners[(i + 1) % corners.Count], corners[(i + 2) % corners.Count]);
            var size = Math.Abs((q.X - p.X) * (r.Y - p.Y) - (q.Y - p.Y) * (r.X - p.X));
            if (size > best)
            {
                (best, a, b, c) = (size, p, q, r);
            }
        }
        var n = (b - a).Cross(c - a);
        var (low, high) = (corners.Min(p => p.Z), corners.Max(p => p.Z));
        // Rounding must not carry a steep plane beyond its triangle.
        return (x, y) => Math.Clamp(n.Z == 0 ? a.Z : a.Z - (n.X * (x - a.X) + n.Y * (y - a.Y)) / n.Z, low, high);
    }

    private static bool Contains(List<Vector3D> corners)
    {
        for (var i = 0; i < corners.Count; i++)
        {
            var (p, q) = (corners[i], corners[(i + 1) % corners.Count]);
            if (p.X * q.Y - p.Y * q.X < 0)
            {
                return false;
            }
        }
        return true;
    }
}
