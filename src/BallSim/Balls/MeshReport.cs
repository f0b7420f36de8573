using System.Collections.Immutable;

namespace BallSim.Balls;

/// <summary>What is wrong with a mesh as the surface of a solid: counts, and a place to look for each.</summary>
public sealed record MeshReport
{
    private MeshReport(ImmutableArray<string> faults) => Faults = faults;

    /// <summary>Edges that only one triangle has: the rim of a hole.</summary>
    public required int OpenEdges { get; init; }

    /// <summary>Edges that two triangles run in the same direction: one of the two faces the wrong way.</summary>
    public required int FlippedEdges { get; init; }

    /// <summary>Edges that three triangles or more have.</summary>
    public required int CrowdedEdges { get; init; }

    /// <summary>Triangles without area.</summary>
    public required int DegenerateTriangles { get; init; }

    /// <summary>True if the surface is closed but faces inwards as a whole.</summary>
    public required bool IsInsideOut { get; init; }

    /// <summary>True if the surface bounds a solid: closed, facing outwards, without degenerate triangles.</summary>
    public bool IsSound => Faults.Count == 0;

    /// <summary>A sentence for each kind of fault, with its count and an example; empty for a sound mesh.</summary>
    public IReadOnlyList<string> Faults { get; }

    /// <summary>The faults in one line.</summary>
    public override string ToString() => IsSound ? "closed and facing outwards" : string.Join("; ", Faults);

    internal static MeshReport Of(ImmutableArray<Vector3D> vertices, ImmutableArray<(int A, int B, int C)> triangles)
    {
        var edges = new Dictionary<(int Low, int High), (int Rising, int Falling, int Triangle)>(3 * triangles.Length / 2);
        var (degenerate, example) = (0, -1);
        for (var i = 0; i < triangles.Length; i++)
        {
            var (a, b, c) = triangles[i];
            var (p, q, r) = (vertices[a], vertices[b], vertices[c]);
            var longest = Math.Max((q - p).Length, Math.Max((r - q).Length, (p - r).Length));
            if ((q - p).Cross(r - p).Length <= 1e-12 * longest * longest)
            {
                (degenerate, example) = (degenerate + 1, degenerate == 0 ? i : example);
            }
            foreach (var (from, to) in ((int, int)[])[(a, b), (b, c), (c, a)])
            {
                var key = from < to ? (from, to) : (to, from);
                edges.TryGetValue(key, out var seen);
                edges[key] = from < to ? (seen.Rising + 1, seen.Falling, i) : (seen.Rising, seen.Falling + 1, i);
            }
        }
        var faults = ImmutableArray.CreateBuilder<string>();
        string Edge((int Low, int High) key) => $"from {vertices[key.Low]} to {vertices[key.High]} m, triangle {edges[key].Triangle}";
        int Count(Func<(int Rising, int Falling, int Triangle), bool> wrong, Func<int, string> what)
        {
            var found = edges.Where(e => wrong(e.Value)).ToArray();
            if (found.Length > 0)
            {
                faults.Add($"{what(found.Length)} (for example {Edge(found[0].Key)})");
            }
            return found.Length;
        }
        string Edges(int n) => n == 1 ? "1 edge" : $"{n} edges";
        if (degenerate > 0)
        {
            faults.Add($"{degenerate} triangle{(degenerate == 1 ? " has" : "s have")} no area (for example triangle {example}, " +
                $"a corner at {vertices[triangles[example].A]} m)");
        }
        var open = Count(e => e.Rising + e.Falling == 1, n => $"{Edges(n)} with a triangle on one side only: the surface has a hole");
        var flipped = Count(e => e.Rising + e.Falling == 2 && e.Rising != e.Falling, n => $"{Edges(n)} run twice in the same direction: a triangle faces the wrong way");
        var crowded = Count(e => e.Rising + e.Falling > 2, n => $"{Edges(n)} with three triangles or more");
        var insideOut = open + flipped + crowded == 0 && MeshMoments.Of(vertices, triangles).Total < 0;
        if (insideOut)
        {
            faults.Add("the surface faces inwards as a whole: its volume comes out negative; reverse it");
        }
        return new(faults.ToImmutable())
        {
            OpenEdges = open, FlippedEdges = flipped, CrowdedEdges = crowded, DegenerateTriangles = degenerate, IsInsideOut = insideOut,
        };
    }
}
