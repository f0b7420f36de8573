using BallSim.Balls;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BallSim.Tests.Laws;

/// <summary>What holds of the mass properties of every solid.</summary>
[Properties(Arbitrary = [typeof(MassLaws.Cases)], MaxTest = 200)]
public class MassLaws
{
    public sealed record Case(Part First, Part Second, Rotation Turn, Vector3D Move);

    public static class Cases
    {
        public static Arbitrary<Case> Case() => (
            from first in AnySolid.Placed() from second in AnySolid.Placed() from turn in AnySolid.Turn() from move in AnySolid.Vector(0.2)
            select new Case(first, second, turn, move)).ToArbitrary();
    }

    private const double Trust = 1e-12;

    private static bool Same(InertiaTensor a, InertiaTensor b, double size, double within = Trust)
    {
        var d = a - b;
        return new[] { d.Xx, d.Yy, d.Zz, d.Xy, d.Xz, d.Yz }.All(x => Math.Abs(x) <= within * size);
    }

    private static bool Same(MassProperties a, MassProperties b, double within = Trust) =>
        Math.Abs(a.Mass - b.Mass) <= within * a.Mass && (a.CentreOfMass - b.CentreOfMass).Length <= within * 0.1
        && Same(a.Inertia, b.Inertia, a.Mass * 0.01, within);

    [Property]
    public bool Moments_about_any_point_add(Case c)
    {
        var (a, b) = (c.First.Properties, c.Second.Properties);
        var both = a + b;
        return both.Mass == a.Mass + b.Mass
            && Same(both.InertiaAbout(c.Move), a.InertiaAbout(c.Move) + b.InertiaAbout(c.Move), both.Mass * 0.1)
            && Same(both - b, a, 1e-10 * both.Mass / a.Mass);
    }

    [Property]
    public bool The_tensor_turns_with_the_body(Case c)
    {
        var turned = c.First.Turned(c.Turn).Properties;
        var w = c.Turn.Apply(c.Move);
        // The moment about an axis that turns along is the same, and the principal moments are.
        return Same(turned, c.First.Properties.Turned(c.Turn))
            && Math.Abs(turned.Inertia.About(w) - c.First.Properties.Inertia.About(c.Move)) <= Trust * turned.Mass * 0.01
            && Math.Abs(turned.HighRg - c.First.Properties.HighRg) <= 1e-12;
    }

    [Property]
    public bool Parallel_axes_add_the_mass_times_the_square_of_their_distance(Case c)
    {
        // The body moved away and integrated there, about the old place of its centre of mass.
        var (here, there) = (c.First.Properties, c.First.Moved(c.Move).Properties);
        var axis = c.Second.Solid.Orientation.Apply(Vector3D.UnitZ);
        var distance = axis.Cross(c.Move).Length;
        return Math.Abs(there.InertiaAbout(here.CentreOfMass).About(axis) - here.Inertia.About(axis) - here.Mass * distance * distance) <= Trust * here.Mass * 0.1;
    }

    [Property]
    public bool No_moment_exceeds_the_sum_of_the_others(Case c)
    {
        var p = (c.First.Properties + c.Second.Properties).Principal;
        return p.LeastMoment > 0 && p.GreatestMoment <= (p.LeastMoment + p.MiddleMoment) * (1 + 1e-12);
    }

    [Property]
    public bool Mass_is_linear_in_the_density(Case c) =>
        Same((c.First with { Density = 2 * c.First.Density }).Properties, c.First.Properties.Scaled(2))
        && Same(c.First.Properties + c.First.Properties, c.First.Properties.Scaled(2));

    [Fact]
    public void An_inscribed_mesh_converges_to_its_solid_at_second_order()
    {
        // The order from three halvings of the edge, between 1.95 and 2.05; every mesh is too light.
        double[] Errors(Func<int, TriangleMesh> mesh, Solid solid, Func<MassProperties, double> of) =>
            [.. Enumerable.Range(0, 4).Select(n => of(solid.Properties(1)) - of(Solid.FromMesh(mesh(n)).Properties(1)))];
        foreach (var of in (Func<MassProperties, double>[])[m => m.Mass, m => m.Inertia.Zz, m => m.Inertia.Xx])
        {
            foreach (var errors in (double[][])[
                Errors(n => MeshForms.Icosphere(0.1, n + 2), Solid.Sphere(0.1), of),
                Errors(n => MeshForms.Torus(0.06, 0.015, 24 << n, 16 << n), Solid.Torus(0.06, 0.015), of)])
            {
                Assert.All(errors, e => Assert.True(e > 0));
                Assert.InRange(Math.Log2(errors[2] / errors[3]), 1.95, 2.05);
            }
        }
    }
}
