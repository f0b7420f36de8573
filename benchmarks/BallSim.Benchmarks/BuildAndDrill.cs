using BallSim.Balls;
using BallSim.Drilling;
using BenchmarkDotNet.Attributes;
using static BallSim.Units;

namespace BallSim.Benchmarks;

/// <summary>
/// A ball built and drilled, everything in between: the solids made, the blend of the filler solved for 15 lb, mass properties, layout, three holes. Covered: a core of an ellipsoid and a cylinder, and
/// the same core as a closed mesh of 20 000 triangles, from lists of corners on; not covered: reading a file.
/// </summary>
[MemoryDiagnoser]
public class BuildAndDrill
{
    private const int Bands = 101;
    private const int Sides = 100;

    private static readonly Layout Layout = new(4.5 * Inch, 55 * Degree, 40 * Degree);
    private static readonly PositiveAxisPoint Axis = new(5 * Inch, 0.5 * Inch);
    private static readonly Vector3D[] Corners = [.. Places()];
    private static readonly (int A, int B, int C)[] Triangles = [.. Faces()];

    [Benchmark(Baseline = true)]
    public double Primitives() => Drilled(
        new(Solid.Ellipsoid(1.3 * Inch, 1.85 * Inch, 2.85 * Inch), 3000),
        new(Solid.Cylinder(0.7 * Inch, 0.8 * Inch).Moved(new(0, 0, 1.4 * Inch)), 3400));

    [Benchmark]
    public double MeshOf20000() => Drilled(new Part(Solid.FromMesh(TriangleMesh.Of(Corners, Triangles)), 3000));

    private static double Drilled(params Part[] core)
    {
        var build = new BallBuild { Radius = 8.55 / 2 * Inch, CoverThickness = 0.7 * Inch, CoverDensity = 1180, FillerDensity = 1000, Core = core };
        build = FillerBlend.For(build.WithCoreTurned(Rotation.About(Vector3D.UnitX, 35 * Degree)), 15 * Pound, 450, 1600).Build;
        return DrillSheet.Of(build.Ball, Layout, Grip.Fingertip, Axis).Ball.LowRg;
    }

    // An ellipsoid by rings of corners between two poles.
    private static IEnumerable<Vector3D> Places()
    {
        Vector3D At(double polar, double round) => new(1.3 * Inch * Math.Sin(polar) * Math.Cos(round), 1.85 * Inch * Math.Sin(polar) * Math.Sin(round), 2.85 * Inch * Math.Cos(polar));
        yield return At(0, 0);
        for (var ring = 1; ring < Bands; ring++)
        {
            for (var side = 0; side < Sides; side++)
            {
                yield return At(Math.PI * ring / Bands, 2 * Math.PI * side / Sides);
            }
        }
        yield return At(Math.PI, 0);
    }

    private static IEnumerable<(int A, int B, int C)> Faces()
    {
        int At(int ring, int side) => 1 + (ring - 1) * Sides + side % Sides;
        var last = 1 + (Bands - 1) * Sides;
        for (var side = 0; side < Sides; side++)
        {
            yield return (0, At(1, side), At(1, side + 1));
            yield return (last, At(Bands - 1, side + 1), At(Bands - 1, side));
            for (var ring = 1; ring < Bands - 1; ring++)
            {
                yield return (At(ring, side), At(ring + 1, side), At(ring + 1, side + 1));
                yield return (At(ring, side), At(ring + 1, side + 1), At(ring, side + 1));
            }
        }
    }
}
