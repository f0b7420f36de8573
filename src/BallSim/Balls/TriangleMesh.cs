using System.Collections.Immutable;

namespace BallSim.Balls;

/// <summary>
/// A surface of triangles. Its corners run counter-clockwise as seen from outside. Any mesh can be held and looked at
/// (<see cref="Report"/>); only a closed one with all triangles facing outwards becomes a solid.
/// </summary>
public sealed record TriangleMesh
{
    private TriangleMesh(ImmutableArray<Vector3D> vertices, ImmutableArray<(int A, int B, int C)> triangles)
    {
        Vertices = vertices;
        Triangles = triangles;
        Report = MeshReport.Of(vertices, triangles);
    }

    /// <summary>The corners, m.</summary>
    public IReadOnlyList<Vector3D> Vertices { get; }

    /// <summary>The triangles as places in the list of corners, counter-clockwise as seen from outside.</summary>
    public IReadOnlyList<(int A, int B, int C)> Triangles { get; }

    /// <summary>What is wrong with the surface, if anything.</summary>
    public MeshReport Report { get; }

    /// <summary>A mesh of shared corners.</summary>
    /// <param name="vertices">The corners, m.</param>
    /// <param name="triangles">Three places in that list for each triangle, counter-clockwise as seen from outside.</param>
    /// <exception cref="ArgumentException">A corner is no number, or a place is not in the list.</exception>
    public static TriangleMesh Of(IEnumerable<Vector3D> vertices, IEnumerable<(int A, int B, int C)> triangles)
    {
        var (points, faces) = (vertices.ToImmutableArray(), triangles.ToImmutableArray());
        for (var i = 0; i < points.Length; i++)
        {
            Check.Finite(points[i], $"vertex {i}");
        }
        for (var i = 0; i < faces.Length; i++)
        {
            var (a, b, c) = faces[i];
            Check.That(Math.Min(a, Math.Min(b, c)) >= 0 && Math.Max(a, Math.Max(b, c)) < points.Length,
                $"triangle {i} names the corners {a}, {b}, {c}; there are {points.Length}, counted from 0", nameof(triangles));
        }
        Check.That(faces.Length > 0, "the mesh has no triangles", nameof(triangles));
        return new(points, faces);
    }

    /// <summary>A mesh from loose triangles, as files of the shop hold them: corners that coincide are made one.</summary>
    /// <param name="triangles">Three corners each, m, counter-clockwise as seen from outside.</param>
    /// <param name="within">Corners nearer than this are the same, m; 0, the default, joins only those with equal coordinates.</param>
    public static TriangleMesh Joined(IEnumerable<(Vector3D A, Vector3D B, Vector3D C)> triangles, double within = 0)
    {
        Check.Range(within, 0, 1e-3, Quantity.Length);
        var vertices = new List<Vector3D>();
        var known = new Dictionary<(long, long, long), List<int>>();
        (long X, long Y, long Z) Cell(Vector3D p) => within == 0
            // Adding zero makes one of the two zeros.
            ? (BitConverter.DoubleToInt64Bits(p.X + 0.0), BitConverter.DoubleToInt64Bits(p.Y + 0.0), BitConverter.DoubleToInt64Bits(p.Z + 0.0))
            : ((long)Math.Floor(p.X / within), (long)Math.Floor(p.Y / within), (long)Math.Floor(p.Z / within));
        int Place(Vector3D p)
        {
            Check.Finite(p, "a corner");
            var (x, y, z) = Cell(p);
            var reach = within == 0 ? 0 : 1;
            for (var i = -reach; i <= reach; i++)
            {
                for (var j = -reach; j <= reach; j++)
                {
                    for (var k = -reach; k <= reach; k++)
                    {
                        if (known.TryGetValue((x + i, y + j, z + k), out var near) && near.FindIndex(n => (vertices[n] - p).Length <= within) is >= 0 and var at)
                        {
                            return near[at];
                        }
                    }
                }
            }
            if (!known.TryGetValue((x, y, z), out var list))
            {
                known[(x, y, z)] = list = [];
            }
            list.Add(vertices.Count);
            vertices.Add(p);
            return vertices.Count - 1;
        }
        var faces = triangles.Select(t => (Place(t.A), Place(t.B), Place(t.C))).ToArray();
        return Of(vertices, faces);
    }

    /// <summary>The same surface with every triangle run the other way.</summary>
    public TriangleMesh Reversed() => Of(Vertices, Triangles.Select(t => (t.A, t.C, t.B)));

    /// <summary>The mesh scaled about its origin by a factor, a pure number above 0: for a drawing in other units.</summary>
    public TriangleMesh Scaled(double factor)
    {
        Check.Range(factor, 1e-6, 1e6, Quantity.Number);
        return Of(Vertices.Select(v => factor * v), Triangles);
    }

    /// <summary>The counts and what is wrong.</summary>
    public override string ToString() => $"{Triangles.Count} triangles, {Vertices.Count} corners; {Report}";
}
