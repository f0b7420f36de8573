using BallSim.Balls;

namespace BallSim.Tests;

/// <summary>Meshes inscribed in round solids.</summary>
internal static class MeshForms
{
    /// <summary>A regular icosahedron in the sphere, its faces quartered and pushed out a number of times.</summary>
    public static TriangleMesh Icosphere(double radius, int level)
    {
        var φ = (1 + Math.Sqrt(5)) / 2;
        var corners = new List<Vector3D>();
        foreach (var a in (double[])[-1, 1])
        {
            foreach (var b in (double[])[-φ, φ])
            {
                corners.AddRange([new(0, a, b), new(a, b, 0), new(b, 0, a)]);
            }
        }
        var points = corners.Select(c => c.Unit).ToList();
        // The faces are the triples at the least distance from each other.
        var edge = points.Skip(1).Min(p => (p - points[0]).Length);
        bool Beside(int i, int j) => Math.Abs((points[i] - points[j]).Length - edge) < 1e-9;
        var faces = (from i in Enumerable.Range(0, 12) from j in Enumerable.Range(i + 1, 11 - i) from k in Enumerable.Range(j + 1, 11 - j)
                     where Beside(i, j) && Beside(j, k) && Beside(i, k)
                     select points[i].Dot(points[j].Cross(points[k])) > 0 ? (i, j, k) : (i, k, j)).ToList();
        for (var n = 0; n < level; n++)
        {
            var middles = new Dictionary<(int, int), int>();
            int Middle(int i, int j)
            {
                var key = (Math.Min(i, j), Math.Max(i, j));
                if (!middles.TryGetValue(key, out var m))
                {
                    middles[key] = m = points.Count;
                    points.Add((points[i] + points[j]).Unit);
                }
                return m;
            }
            var finer = new List<(int, int, int)>();
            foreach (var (i, j, k) in faces)
            {
                var (a, b, c) = (Middle(i, j), Middle(j, k), Middle(k, i));
                finer.AddRange([(i, a, c), (a, j, b), (c, b, k), (a, b, c)]);
            }
            faces = finer;
        }
        return TriangleMesh.Of(points.Select(p => radius * p), faces);
    }

    /// <summary>A ring of straight tubes.</summary>
    public static TriangleMesh Torus(double ring, double tube, int around, int section)
    {
        var points = from i in Enumerable.Range(0, around)
                     from j in Enumerable.Range(0, section)
                     let a = 2 * Math.PI * i / around
                     let b = 2 * Math.PI * j / section
                     let r = ring + tube * Math.Cos(b)
                     select new Vector3D(r * Math.Cos(a), r * Math.Sin(a), tube * Math.Sin(b));
        int At(int i, int j) => i % around * section + j % section;
        var faces = from i in Enumerable.Range(0, around)
                    from j in Enumerable.Range(0, section)
                    from face in ((int, int, int)[])[(At(i, j), At(i + 1, j), At(i + 1, j + 1)), (At(i, j), At(i + 1, j + 1), At(i, j + 1))]
                    select face;
        return TriangleMesh.Of(points, faces);
    }
}
