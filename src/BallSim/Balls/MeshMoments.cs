namespace BallSim.Balls;

/// <summary>Exact volume integrals of a polyhedron: signed tetrahedra from a point to every triangle.</summary>
/// <remarks>
/// A tetrahedron with corners 0, a, b, c and V = a · (b × c)/6, s = a + b + c (the quadratic forms of a simplex; any table of them):
/// <code>
/// ∫x = V s/4,   ∫x xᵀ = V/20 (s sᵀ + a aᵀ + b bᵀ + c cᵀ)
/// </code>
/// </remarks>
internal static class MeshMoments
{
    public static Moments Of(IReadOnlyList<Vector3D> vertices, IReadOnlyList<(int A, int B, int C)> triangles)
    {
        // From a corner of the mesh, so that a mesh far from the origin loses nothing.
        var from = vertices[triangles[0].A];
        var sum = default(Moments);
        foreach (var (i, j, k) in triangles)
        {
            var (a, b, c) = (vertices[i] - from, vertices[j] - from, vertices[k] - from);
            var volume = a.Dot(b.Cross(c)) / 6;
            var s = a + b + c;
            double Second(Func<Vector3D, double> p, Func<Vector3D, double> q) =>
                volume / 20 * (p(s) * q(s) + p(a) * q(a) + p(b) * q(b) + p(c) * q(c));
            static double X(Vector3D v) => v.X;
            static double Y(Vector3D v) => v.Y;
            static double Z(Vector3D v) => v.Z;
            sum += new Moments(volume, volume / 4 * s.X, volume / 4 * s.Y, volume / 4 * s.Z,
                Second(X, X), Second(Y, Y), Second(Z, Z), Second(X, Y), Second(Y, Z), Second(Z, X));
        }
        return sum.Moved(from);
    }
}
