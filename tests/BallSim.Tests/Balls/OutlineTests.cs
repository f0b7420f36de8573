using BallSim.Balls;

namespace BallSim.Tests.Balls;

/// <summary>Outlines and meshes that bound no solid, and those that only just do.</summary>
public class OutlineTests
{
    [Fact]
    public void A_crossing_is_told_by_its_place()
    {
        // Two lines of a bow: the message names the middle of the first of them, (0.03, 0.02).
        SolidTests.Refused(() => Solid.Revolved(Profile.From(0, 0.01).LineTo(0.06, 0.03).LineTo(0.06, 0.01).LineTo(-0.01, 0.03)), "crosses itself near (0.03, 0.02) m");
        // An arc that dips through the line below it, between the ends of both.
        Profile Dipping(double to) => Profile.From(-0.03, 0.01).LineTo(-0.03, 0.03).ArcTo(0, to, 0.03, 0.03).LineTo(0.03, 0.01);
        SolidTests.Refused(() => Solid.Revolved(Dipping(0.008)), "crosses itself near");
        // A tenth of a millimetre above it, the same outline holds: a ring with a groove all but through.
        Assert.True(Solid.Revolved(Dipping(0.0101)).Volume > 0);
        // Two arcs through each other.
        SolidTests.Refused(() => Solid.Revolved(Profile.From(-0.03, 0.02).ArcTo(0, 0.01, 0.03, 0.02).LineTo(0.03, 0.01).ArcTo(0, 0.025, -0.03, 0.01)), "crosses itself near");
    }

    [Fact]
    public void Corners_that_touch_are_no_crossing()
    {
        // Two cones tip to tip in a cylinder's wall: the outline comes back to a point of itself. Volume: cylinder less two cones, π r² h/3 each.
        const double R = 0.02, H = 0.03;
        var hourglass = Solid.Revolved(Profile.From(-H, 0).LineTo(-H, R).LineTo(0, 0).LineTo(H, R).LineTo(H, 0));
        Assert.Equal(2 * Math.PI * R * R * H / 3, hourglass.Volume, 1e-18);
        // A line goes on along itself.
        Assert.Equal(Math.PI * R * R * H, Solid.Revolved(Profile.From(0, 0).LineTo(0, 0.3 * R).LineTo(0, R).LineTo(0.7 * H, R).LineTo(H, R).LineTo(H, 0)).Volume, 1e-18);
    }

    [Fact]
    public void An_arc_may_touch_the_axis_and_not_cross_it()
    {
        // A ring whose hole has closed to a point (horn torus): V = 2π² R r² with R = r.
        var horn = Profile.From(-0.02, 0.02).ArcTo(0, 0.04, 0.02, 0.02).ArcTo(0, 0, -0.02, 0.02);
        Assert.Equal(2 * Math.PI * Math.PI * Math.Pow(0.02, 3), Solid.Revolved(horn).Volume, 1e-17);
        SolidTests.Refused(() => Profile.From(-0.02, 0.019).ArcTo(0.02, 0.019, 0.001, 0.039), "crosses the axis");
        // A spindle, more than half a circle about a centre beyond the axis: it would cross where it stands upright.
        Assert.True(Solid.Revolved(Profile.From(-0.03, 0).ArcTo(0, 0.02, 0.03, 0)).Volume > 0);
    }

    [Fact]
    public void Three_quarters_of_a_circle_run_either_way_round_draw_one_solid()
    {
        // A bead: a tube of radius r at R, cut flat at z = r √½ on one side only. Pappus: the segment beyond the cut, area r²(α - sin α cos α) with α = π/4, has its centroid at R: V = 2π R (π r² - segment).
        const double Ring = 0.03, R = 0.01;
        var s = R * Math.Sqrt(0.5);
        (double, double) At(double degrees) => (R * Math.Cos(degrees * Math.PI / 180), Ring + R * Math.Sin(degrees * Math.PI / 180));
        var ((a, b), (c, d), (e, f)) = (At(45), At(180), At(315));
        var segment = R * R * (Math.PI / 4 - 0.5);
        var expected = 2 * Math.PI * Ring * (Math.PI * R * R - segment);
        Assert.Equal(s, a, 1e-15);
        foreach (var profile in (Profile[])[Profile.From(a, b).ArcTo(c, d, e, f), Profile.From(e, f).ArcTo(c, d, a, b)])
        {
            var solid = Solid.Revolved(profile);
            Assert.Equal(expected, solid.Volume, 1e-17);
            // The flat face, seen along the axis at the middle of the tube.
            List<double> chords = [];
            solid.Chords(new(Ring, 0, 0), Vector3D.UnitZ, chords);
            Assert.Equal(2, chords.Count);
            Assert.Equal(-R, chords[0], 1e-15);
            Assert.Equal(s, chords[1], 1e-15);
        }
    }

    [Fact]
    public void Sizes_of_solids_are_above_nothing_and_at_most_a_metre()
    {
        foreach (var (name, made, given) in ((string, Func<double, object>, double)[])[
            ("radius", v => Solid.Sphere(v), 0.1), ("radius", v => Solid.SphericalCap(v, 0.01), 0.1), ("height", v => Solid.SphericalCap(0.6, v), 0.1), ("inner", v => Solid.SphericalShell(v, 1), 0.1), ("outer", v => Solid.SphericalShell(0.05, v), 0.1),
            ("x", v => Solid.Ellipsoid(v, 0.1, 0.1), 0.1), ("y", v => Solid.Ellipsoid(0.1, v, 0.1), 0.1), ("z", v => Solid.Ellipsoid(0.1, 0.1, v), 0.1), ("radius", v => Solid.Cylinder(v, 0.1), 0.1), ("height", v => Solid.Cylinder(0.1, v), 0.1),
            ("height", v => Solid.ConeFrustum(0.1, 0.1, v), 0.1), ("ringRadius", v => Solid.Torus(v, 0.01), 0.1), ("tubeRadius", v => Solid.Torus(0.1, v), 0.1),
            ("x", v => Solid.Box(v, 0.1, 0.1), 0.1), ("y", v => Solid.Box(0.1, v, 0.1), 0.1), ("z", v => Solid.Box(0.1, 0.1, v), 0.1)])
        {
            Assert.NotNull(made(given));
            SolidTests.Refused(() => made(0), $"{name} = 0 m must be above 0");
            SolidTests.Refused(() => made(-0.1), $"{name} = -0.1 m must be above 0");
            SolidTests.Refused(() => made(1.001), name);
            SolidTests.Refused(() => made(double.NaN), name);
        }
        Assert.NotNull(Solid.Sphere(1));
        Assert.Contains("inertia", Assert.ThrowsAny<ArgumentException>(() => new MassProperties(1, Vector3D.Zero, new(1, double.NaN, 1))).Message, StringComparison.Ordinal);
        Assert.Equal(default, default(MassProperties) + default(MassProperties));
        SolidTests.Refused(() => TriangleMesh.Of([Vector3D.UnitX], []), "no triangles");
        SolidTests.Refused(() => TriangleMesh.Of([Vector3D.UnitX, Vector3D.UnitY, new(0, double.NaN, 1)], [(0, 1, 2)]), "vertex 2");
        SolidTests.Refused(() => Solid.Sphere(0.1).Turned(new(0, 0, 0, 0)), "no rotation");
        SolidTests.Refused(() => Solid.Sphere(0.1).Moved(new(0, double.NaN, 0)), "by");
    }

    [Fact]
    public void The_centre_of_a_solid_is_that_of_its_volume()
    {
        // A cone's lies at a quarter of its height, half a ball's at 3/8 of the radius, any table; turned and moved with the solid.
        var (turn, by) = (Rotation.About(new(1, -2, 0.5), 0.9), new Vector3D(0.01, 0.02, -0.03));
        foreach (var (solid, z) in ((Solid, double)[])[(Solid.ConeFrustum(0.05, 0, 0.1), 0.025), (Solid.SphericalCap(0.08, 0.08), 0.03), (Solid.Cylinder(0.02, 0.07), 0)])
        {
            Assert.True((solid.Centre - new Vector3D(0, 0, z)).Length < 1e-15);
            Assert.True((solid.Turned(turn).Moved(by).Centre - turn.Apply(new(0, 0, z)) - by).Length < 1e-15);
        }
    }

    [Fact]
    public void A_small_arc_is_an_arc()
    {
        // A cylinder of 2 cm whose edge is rounded by 2 mm, a quarter circle: less the corner, r²(1 - π/4), whose centroid lies r(10 - 3π)/(12 - 3π) from its sides (any table). Pappus. A fillet of a fiftieth of that draws as well.
        foreach (var r in (double[])[2e-3, 4e-5])
        {
            const double R = 0.02, H = 0.03;
            var profile = Profile.From(0, 0).LineTo(0, R).LineTo(H - r, R).ArcTo(H - r + r * Math.Sqrt(0.5), R - r + r * Math.Sqrt(0.5), H, R - r).LineTo(H, 0);
            var corner = r * r * (1 - Math.PI / 4) * 2 * Math.PI * (R - r * (10 - 3 * Math.PI) / (12 - 3 * Math.PI));
            Assert.Equal(Math.PI * R * R * H - corner, Solid.Revolved(profile).Volume, 1e-17);
        }
    }

    [Fact]
    public void A_part_that_does_not_fit_is_told_by_its_number()
    {
        var inch = Units.Inch;
        SolidTests.Refused(() => (BuildTests.Design with { Core = [new(Solid.Sphere(0.5 * inch), 1500), new(Solid.Sphere(0.5 * inch).Moved(new(3.2 * inch, 0, 0)), 1500)] }).Ball, "part 2, sphere");
        SolidTests.Refused(() => (BuildTests.Design with { Core = [new(Solid.Sphere(0.5 * inch), 1500), new(Solid.Sphere(0.5 * inch).Moved(new(0.6 * inch, 0, 0)), 1500)] }).Ball, "part 2, sphere");
        SolidTests.Refused(() => (BuildTests.Design with { Core = [new(Solid.Sphere(0.5 * inch), 1500), new(Solid.Sphere(0.5 * inch).Moved(new(0.6 * inch, 0, 0)), 1500)] }).Ball, "and part 1, sphere");
    }

    [Fact]
    public void Measurements_are_refused_beyond_their_ranges()
    {
        PendulumReading[] periods = [.. new[] { Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ, new Vector3D(1, 1, 0), new Vector3D(0, 1, 1), new Vector3D(1, 0, 1) }.Select(n => new PendulumReading(n, 1))];
        foreach (var (name, made) in ((string, Func<double, object>)[])[
            ("stiffness", v => MeasuredInertia.FromPeriods(periods, v, 1e-3)), ("periodError", v => MeasuredInertia.FromPeriods(periods, 1, v)), ("cradle", v => MeasuredInertia.FromPeriods(periods, 1, 1e-3, v)),
            ("mass", v => MeasuredInertia.FromPeriods(periods, 1, 1e-3, 0, v)), ("mass", v => MeasuredCentre.FromBalance([new(Vector3D.UnitX, 0), new(Vector3D.UnitY, 0), new(Vector3D.UnitZ, 0)], v)),
            ("readingError", v => MeasuredCentre.FromBalance([new(Vector3D.UnitX, 0), new(Vector3D.UnitY, 0), new(Vector3D.UnitZ, 0)], 6, v))])
        {
            foreach (var wrong in (double[])[-1, 2e4, double.NaN])
            {
                SolidTests.Refused(() => made(wrong), name);
            }
        }
        SolidTests.Refused(() => MeasuredCentre.FromBalance([new(Vector3D.UnitX, 0), new(Vector3D.UnitY, 0), new(new(1, 1, 0), 0)], 6), "they magnify errors without bound");
        SolidTests.Refused(() => MeasuredCentre.FromBalance([new(Vector3D.UnitX, 0), new(Vector3D.UnitY, 0), new(new(1, 1, 0.05), 0)], 6), " times");
    }

    [Fact]
    public void The_pin_goes_to_the_side_that_is_asked_for()
    {
        var sheet = BuildSheet.Of(BuildTests.Design);
        Assert.True((BuildSheet.Of(BuildTests.Design with { PinSide = -BuildTests.Design.PinSide }).Pin + sheet.Pin).Length < 1e-12);
        // A flat round core is hardest to turn about its axis, and as easy about every line across: the pin lies across, as near to its side as it can.
        var flat = BuildSheet.Of(BuildTests.Design with { Core = [new(Solid.Ellipsoid(0.05, 0.05, 0.03), 2000)], PinSide = new(1, 0, 1) });
        Assert.True((flat.Pin - Vector3D.UnitX).Length < 1e-9);
    }

    [Fact]
    public void A_core_of_two_parts_is_carried_as_far_as_both_fit()
    {
        var inch = Units.Inch;
        var build = BuildTests.Design with { Core = [new(Solid.Sphere(1 * inch), 1000), new(Solid.Sphere(0.5 * inch).Moved(new(0, 0, 1.7 * inch)), 950)], PinSide = Vector3D.UnitZ };
        var greatest = CoreShift.For(build, CoreShift.For(build, 0.05 * Units.Ounce).GreatestTopWeight);
        // The outer part ends 2.2 in up, the cover leaves 3.525 in.
        Assert.Equal((3.525 - 2.2) * inch, greatest.Shift, 1e-9);
        Assert.NotNull(greatest.Build.Ball);
    }

    [Fact]
    public void Triangles_without_area_are_counted_in_words()
    {
        Vector3D[] line = [new(0, 0, 0), new(1, 0, 0), new(2, 0, 0)];
        Assert.Contains("1 triangle has no area", TriangleMesh.Of(line, [(0, 1, 2)]).Report.ToString(), StringComparison.Ordinal);
        Assert.Contains("2 triangles have no area (for example triangle 0", TriangleMesh.Of(line, [(0, 1, 2), (2, 1, 0)]).Report.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_needle_has_area_and_a_line_has_none()
    {
        // A triangle 1 m long, wherever its longest edge stands: a height of 1e-9 of it is an area, one of 1e-14 is rounding.
        foreach (var size in (double[])[1e-3, 1, 50])
        {
            foreach (var (height, degenerate) in ((double, int)[])[(1e-9, 0), (1e-14, 1), (0, 1)])
            {
                foreach (var foot in (double[])[0.3, 1e-3])
                {
                    Vector3D[] points = [new(0, 0, 0), new(size, 0, 0), new(foot * size, height * size, 0)];
                    foreach (var corners in ((int, int, int)[])[(0, 1, 2), (1, 2, 0), (2, 0, 1), (0, 2, 1)])
                    {
                        Assert.Equal(degenerate, TriangleMesh.Of(points, [corners]).Report.DegenerateTriangles);
                    }
                }
            }
        }
    }

    [Fact]
    public void Only_a_closed_surface_is_inside_out()
    {
        // Faces inwards, one triangle missing and another the wrong way: three open edges, three flipped ones, and no word about its inside.
        var inwards = MeshForms.Icosphere(0.05, 1).Reversed();
        var far = inwards.Triangles.Select((t, i) => (t, i)).Last(p => inwards.Triangles[0] is var (a, b, c) && !new[] { p.t.A, p.t.B, p.t.C }.Intersect([a, b, c]).Any()).i;
        var (x, y, z) = inwards.Triangles[far];
        var torn = TriangleMesh.Of(inwards.Vertices, inwards.Triangles.Where((_, i) => i != far).Skip(1).Append((x, z, y)));
        Assert.Equal((3, 3, 0, false), (torn.Report.OpenEdges, torn.Report.FlippedEdges, torn.Report.CrowdedEdges, torn.Report.IsInsideOut));
        Assert.Equal(2, torn.Report.Faults.Count);
        Assert.Equal((0, 0, 0, true), (inwards.Report.OpenEdges, inwards.Report.FlippedEdges, inwards.Report.CrowdedEdges, inwards.Report.IsInsideOut));
        // A pair of triangles that both run the same edge the same way is flipped, whichever way that is.
        Vector3D[] square = [new(0, 0, 0), new(1, 0, 0), new(1, 1, 0), new(0, 1, 0)];
        Assert.Equal(1, TriangleMesh.Of(square, [(0, 2, 1), (0, 2, 3)]).Report.FlippedEdges);
        Assert.Equal(1, TriangleMesh.Of(square, [(2, 0, 1), (2, 0, 3)]).Report.FlippedEdges);
        Assert.Equal(0, TriangleMesh.Of(square, [(0, 1, 2), (0, 2, 3)]).Report.FlippedEdges);
    }
}
