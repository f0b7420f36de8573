using System.Collections.Immutable;
using MathNet.Numerics.Integration;

namespace BallSim.Balls;

/// <summary>A solid of revolution about the z axis, from the closed outline of its half section.</summary>
/// <remarks>
/// The volume integrals become integrals along the outline (Gauss's theorem in the half section), r the distance from the axis:
/// <code>
/// V = ∮ π r² dz,   ∫z = ∮ π r² z dz,   ∫zz = ∮ π r² z² dz,   ∫xx = ∫yy = ∮ (π/4) r⁴ dz
/// </code>
/// On a straight piece they are polynomials of fifth degree, which three Gauss points integrate exactly; on an arc trigonometric
/// polynomials of fifth degree, which sixteen points a quarter turn integrate to rounding.
/// </remarks>
internal sealed class RevolvedShape : Shape, RayIntegral.ISilhouette
{
    private static GaussLegendreRule Straight { get; } = new(0, 1, 3);

    private static GaussLegendreRule Round { get; } = new(0, 1, 16);

    private readonly ImmutableArray<ProfilePiece> pieces;
    private readonly double[] heights;
    private readonly (double Along, double Off, double Radius)[] circles;

    public RevolvedShape(Profile profile)
    {
        pieces = profile.Closed();
        heights = [.. pieces.SelectMany(p => new[] { p.FromAlong, p.ToAlong }).Distinct()];
        // Pieces of one circle share its surface.
        circles = [.. pieces.Where(p => p.IsArc).Select(p => (p.CentreAlong, p.CentreOff, p.Radius)).Distinct()];
        var moments = pieces.Aggregate(default(Moments), (sum, p) => sum + Along(p));
        // Run either way round: the sign of the volume tells which.
        Moments = moments.Total < 0 ? -1 * moments : moments;
        Check.That(Moments.Total > 0, "the outline encloses no volume", nameof(profile));
        OutlineCheck.Simple(pieces, nameof(profile));
    }

    /// <inheritdoc/>
    public override Moments Moments { get; }

    /// <inheritdoc/>
    public override double Reach(Vector3D from)
    {
        // The farthest point lies opposite in the half plane; along a piece the distance is greatest at an end, or where an arc bulges
        // away.
        var off = Math.Sqrt(from.X * from.X + from.Y * from.Y);
        double Distance(double along, double r) => double.Hypot(along - from.Z, r + off);
        var greatest = 0.0;
        foreach (var p in pieces)
        {
            greatest = Math.Max(greatest, Math.Max(Distance(p.FromAlong, p.FromOff), Distance(p.ToAlong, p.ToOff)));
            if (p.IsArc)
            {
                var angle = Math.Atan2(p.CentreOff + off, p.CentreAlong - from.Z);
                var (low, high) = (Math.Min(p.FromAngle, p.ToAngle), Math.Max(p.FromAngle, p.ToAngle));
                angle += 2 * Math.PI * Math.Ceiling((low - angle) / (2 * Math.PI));
                if (angle <= high)
                {
                    greatest = Math.Max(greatest, Distance(p.CentreAlong, p.CentreOff) + p.Radius);
                }
            }
        }
        return greatest;
    }

    /// <inheritdoc/>
    public override void Chords(Vector3D origin, Vector3D direction, List<double> chords)
    {
        // Every place where the line may cross the surface; which stretches lie within is asked of the half section in their middle, so
        // that a crossing counted twice, or one that is none, does no harm.
        var first = chords.Count;
        Span<double> roots = stackalloc double[4];
        var (a, b, c) = (direction.X * direction.X + direction.Y * direction.Y, origin.X * direction.X + origin.Y * direction.Y,
            origin.X * origin.X + origin.Y * origin.Y);
        if (direction.Z != 0)
        {
            foreach (var height in heights)
            {
                chords.Add((height - origin.Z) / direction.Z);
            }
        }
        foreach (var (along, off, radius) in circles)
        {
            var z = origin.Z - along;
            if (off == 0)
            {
                RayIntegral.Roots(1, b + z * direction.Z, c + z * z - radius * radius, chords);
                continue;
            }
            var count = TorusRay.Crossings(a, b, c, z, direction.Z, off, radius, roots);
            for (var i = 0; i < count; i++)
            {
                chords.Add(roots[i]);
            }
        }
        foreach (var p in pieces)
        {
            if (!p.IsArc && p.ToAlong != p.FromAlong)
            {
                var slope = (p.ToOff - p.FromOff) / (p.ToAlong - p.FromAlong);
                var (r, q) = (p.FromOff + slope * (origin.Z - p.FromAlong), slope * direction.Z);
                RayIntegral.Roots(a - q * q, b - r * q, c - r * r, chords);
            }
        }
        chords.Sort(first, chords.Count - first, null);
        var kept = first;
        for (var i = first; i + 1 < chords.Count; i++)
        {
            var (low, high) = (chords[i], chords[i + 1]);
            var middle = (low + high) / 2;
            if (high > low && Holds(origin.Z + middle * direction.Z, Math.Sqrt(Math.Max(0, a * middle * middle + 2 * b * middle + c))))
            {
                // Two stretches side by side are one. Writing at `kept` never overtakes reading at i + 1.
                if (kept > first && chords[kept - 1] == low)
                {
                    chords[kept - 1] = high;
                }
                else
                {
                    (chords[kept], chords[kept + 1]) = (low, high);
                    kept += 2;
                }
            }
        }
        chords.RemoveRange(kept, chords.Count - kept);
    }

    /// <inheritdoc/>
    public override Moments Within(Shaft shaft) => RayIntegral.Of(this, shaft);

    /// <inheritdoc/>
    // The outline of a torus is a curve of eighth degree.
    public bool HidesGrazes => circles.Any(c => c.Off != 0);

    /// <inheritdoc/>
    public void Extents(Vector3D direction, List<double> places)
    {
        var lean = Math.Sqrt(Math.Max(0, 1 - direction.Z * direction.Z));
        foreach (var p in pieces)
        {
            foreach (var (along, off, more) in ((double, double, double)[])
                [(p.FromAlong, p.FromOff, 0), (p.ToAlong, p.ToOff, 0), (p.CentreAlong, p.CentreOff, p.Radius), (p.CentreAlong, p.CentreOff, -p.Radius)])
            {
                places.Add(along * direction.Z + off * lean + more);
                places.Add(along * direction.Z - off * lean - more);
            }
        }
    }

    /// <inheritdoc/>
    public void Grazes(Vector3D origin, Vector3D across, Vector3D along, List<double> places)
    {
        double Flat(Vector3D a, Vector3D b) => a.X * b.X + a.Y * b.Y;
        var n = across.Z * across.Z + along.Z * along.Z;
        foreach (var p in pieces)
        {
            // The rim of the piece: where the plane meets its circle.
            if (n > 1e-24)
            {
                var rise = p.FromAlong - origin.Z;
                var foot = origin + rise / n * (across.Z * across + along.Z * along);
                var line = along.Z * across - across.Z * along;
                var first = places.Count;
                RayIntegral.Roots(Flat(line, line), Flat(foot, line), Flat(foot, foot) - p.FromOff * p.FromOff, places);
                for (var i = first; i < places.Count; i++)
                {
                    places[i] = rise / n * across.Z + places[i] * along.Z;
                }
            }
            if (p.IsArc && p.CentreOff == 0)
            {
                var o = origin - new Vector3D(0, 0, p.CentreAlong);
                RayIntegral.Roots(1, o.Dot(across), o.Dot(o) - o.Dot(along) * o.Dot(along) - p.Radius * p.Radius, places);
            }
            else if (!p.IsArc && p.ToAlong != p.FromAlong)
            {
                // Where the quadratic of a ray and the cone has a double root: quadratic in v itself.
                var slope = (p.ToOff - p.FromOff) / (p.ToAlong - p.FromAlong);
                var (r0, r1, q) = (p.FromOff + slope * (origin.Z - p.FromAlong), slope * across.Z, slope * along.Z);
                var a = Flat(along, along) - q * q;
                var (b0, b1) = (Flat(origin, along) - r0 * q, Flat(across, along) - r1 * q);
                RayIntegral.Roots(b1 * b1 - a * (Flat(across, across) - r1 * r1), b0 * b1 - a * (Flat(origin, across) - r0 * r1),
                    b0 * b0 - a * (Flat(origin, origin) - r0 * r0), places);
            }
        }
    }

    // Whether a point of the half plane lies within the outline: it does if an odd number of pieces lies farther out at its height.
    private bool Holds(double along, double off)
    {
        var inside = false;
        foreach (var p in pieces)
        {
            if (p.FromAlong > along != p.ToAlong > along && p.OffAt(along) > off)
            {
                inside = !inside;
            }
        }
        return inside;
    }

    private static Moments Along(ProfilePiece p)
    {
        var sum = default(Moments);
        void Add(double z, double r, double dz)
        {
            var (disc, second) = (Math.PI * r * r * dz, Math.PI / 4 * r * r * r * r * dz);
            sum += new Moments(disc, 0, 0, disc * z, second, second, disc * z * z, 0, 0, 0);
        }
        if (!p.IsArc)
        {
            for (var i = 0; i < 3; i++)
            {
                var t = Straight.GetAbscissa(i);
                Add(p.FromAlong + t * (p.ToAlong - p.FromAlong), p.FromOff + t * (p.ToOff - p.FromOff), Straight.GetWeight(i) * (p.ToAlong - p.FromAlong));
            }
            return sum;
        }
        var panels = (int)Math.Ceiling(Math.Abs(p.ToAngle - p.FromAngle) / (Math.PI / 2));
        var width = (p.ToAngle - p.FromAngle) / panels;
        for (var k = 0; k < panels; k++)
        {
            for (var i = 0; i < 16; i++)
            {
                var angle = p.FromAngle + (k + Round.GetAbscissa(i)) * width;
                Add(p.CentreAlong + p.Radius * Math.Cos(angle), p.CentreOff + p.Radius * Math.Sin(angle),
                    -p.Radius * Math.Sin(angle) * Round.GetWeight(i) * width);
            }
        }
        return sum;
    }
}
