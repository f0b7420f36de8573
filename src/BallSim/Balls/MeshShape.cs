namespace BallSim.Balls;

/// <summary>A polyhedron.</summary>
internal sealed class MeshShape : Shape
{
    private readonly Vector3D[] vertices;
    private readonly (int A, int B, int C)[] triangles;

    public MeshShape(TriangleMesh mesh)
    {
        Check.That(mesh.Report.IsSound, $"the mesh bounds no solid: {mesh.Report}", nameof(mesh));
        (vertices, triangles) = ([.. mesh.Vertices], [.. mesh.Triangles]);
        Moments = MeshMoments.Of(vertices, triangles);
    }

    /// <inheritdoc/>
    public override Moments Moments { get; }

    /// <inheritdoc/>
    public override double Reach(Vector3D from) => vertices.Max(v => (v - from).Length);

    /// <inheritdoc/>
    public override void Chords(Vector3D origin, Vector3D direction, List<double> chords)
    {
        var first = chords.Count;
        foreach (var (i, j, k) in triangles)
        {
            // The line passes within the triangle if it has all three edges on the same side (signed volumes of tetrahedra).
            var (a, b, c) = (vertices[i] - origin, vertices[j] - origin, vertices[k] - origin);
            var (u, v, w) = (direction.Dot(c.Cross(b)), direction.Dot(a.Cross(c)), direction.Dot(b.Cross(a)));
            var sum = u + v + w;
            if (sum != 0 && (u >= 0 && v >= 0 && w >= 0 || u <= 0 && v <= 0 && w <= 0))
            {
                chords.Add((u * a.Dot(direction) + v * b.Dot(direction) + w * c.Dot(direction)) / sum);
            }
        }
        chords.Sort(first, chords.Count - first, null);
        // A line through an edge or a corner is counted by each triangle there: equal places are one crossing.
        var kept = first;
        for (var i = first; i < chords.Count; i++)
        {
            if (kept == first || chords[i] - chords[kept - 1] > 1e-12)
            {
                chords[kept++] = chords[i];
            }
        }
        kept -= (kept - first) % 2;
        chords.RemoveRange(kept, chords.Count - kept);
    }

    /// <inheritdoc/>
    public override Moments Within(Shaft shaft)
    {
        var (u, v) = shaft.FrameTowards(Middle);
        var local = MeshInShaft.Integrals(vertices, triangles, p =>
        {
            var d = p - shaft.Bottom;
            return new(d.Dot(u), d.Dot(v), d.Dot(shaft.Axis));
        }, shaft.Radius);
        return local.Turned(Rotation.Between(Vector3D.UnitX, Vector3D.UnitY, u, v)).Moved(shaft.Bottom);
    }
}
