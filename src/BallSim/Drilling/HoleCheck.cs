using System.Globalization;
using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>Whether holes can be drilled: each into the ball and not out of it, and none into another.</summary>
internal static class HoleCheck
{
    /// <summary>Refuses holes that miss the ball, come out on its other side or meet.</summary>
    public static void Possible(IReadOnlyList<Hole> holes, double radius)
    {
        foreach (var hole in holes)
        {
            Fits(hole, radius);
        }
        for (var i = 0; i < holes.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var wall = Wall(holes[j], holes[i], radius);
                Check.That(wall > 0, string.Create(CultureInfo.InvariantCulture,
                    $"the holes \"{holes[j].Name}\" and \"{holes[i].Name}\" meet: {Apart(holes[j], holes[i], radius)}; lean them apart (lateral pitch), drill them " +
                    $"shallower or narrower, or set them farther apart (bridge, span)"), nameof(holes));
            }
        }
    }

    /// <summary>Least thickness of the wall between two holes, m; 0 where they meet.</summary>
    public static double Wall(Hole a, Hole b, double radius)
    {
        // Projections to and fro between two convex bodies come to their nearest points (von Neumann); two that meet give zero.
        var (p, q) = (Cylinder.Of(a, radius), Cylinder.Of(b, radius));
        var x = p.Bottom;
        var gap = double.PositiveInfinity;
        for (var i = 0; i < 2000; i++)
        {
            var y = q.Nearest(x);
            x = p.Nearest(y);
            var now = (x - y).Length;
            if (gap - now < 1e-12)
            {
                gap = now;
                break;
            }
            gap = now;
        }
        return gap > 1e-6 ? gap : 0;
    }

    private static void Fits(Hole hole, double radius)
    {
        var (bottom, axis, a) = hole.Shaft(radius);
        var (height, pitch) = (bottom.Dot(axis), hole.PitchOn(radius));
        string In(double length) => string.Create(CultureInfo.InvariantCulture, $"{length / Inch:F3} in");
        Check.That(hole.Entry.Dot(hole.Axis) > 0 && pitch + a < radius,
            $"the hole \"{hole.Name}\" misses the ball: its axis passes {In(pitch)} beside the centre and it is {In(2 * a)} wide; the whole of it must enter " +
            $"a ball of {In(radius)} radius from outside", "holes");
        Check.That(height < Math.Sqrt(radius * radius - (pitch + a) * (pitch + a)),
            $"the hole \"{hole.Name}\" is too shallow: {In(hole.Depth)} deep and {In(2 * a)} wide, its flat bottom does not lie under the surface all round",
            "holes");
        Check.That(double.Hypot(height, pitch + a) < radius,
            $"the hole \"{hole.Name}\" comes out on the other side: {In(hole.Depth)} deep, its bottom reaches {In(double.Hypot(height, pitch + a))} from the " +
            $"centre of a ball of {In(radius)} radius", "holes");
    }

    // The measures that a driller can change: how far the axes are apart at the surface and at the shallower bottom, beside the half
    // widths.
    private static string Apart(Hole a, Hole b, double radius)
    {
        var depth = Math.Min(a.Depth, b.Depth);
        Vector3D At(Hole h, double d) => radius * h.Entry - d * h.Axis;
        return string.Create(CultureInfo.InvariantCulture,
            $"their axes are {(At(a, 0) - At(b, 0)).Length / Inch:F3} in apart at the surface and {(At(a, depth) - At(b, depth)).Length / Inch:F3} in at a depth of " +
            $"{depth / Inch:F3} in, their half widths add to {(a.Diameter + b.Diameter) / 2 / Inch:F3} in");
    }

    private readonly record struct Cylinder(Vector3D Bottom, Vector3D Axis, double Radius, double Length)
    {
        public static Cylinder Of(Hole hole, double radius)
        {
            var (bottom, axis, a) = hole.Shaft(radius);
            // Up to the highest point of the surface over the hole.
            var nearest = Math.Max(0, hole.PitchOn(radius) - a);
            return new(bottom, axis, a, Math.Sqrt(radius * radius - nearest * nearest) - bottom.Dot(axis));
        }

        public Vector3D Nearest(Vector3D point)
        {
            var d = point - Bottom;
            var along = d.Dot(Axis);
            var across = d - along * Axis;
            var off = across.Length;
            return Bottom + Math.Clamp(along, 0, Length) * Axis + (off > Radius ? Radius / off : 1) * across;
        }
    }
}
