using BallSim.Balls;
using BallSim.Drilling;
using static BallSim.Units;

namespace BallSim.Tests.Balls;

/// <summary>Ranges of balls and their parts at their ends, sentences in the units of the trade, and what scaling and carrying do in closed form.</summary>
public class BallsEdgeTests
{
    private static Ball Spec(double weight = 15, double rg = 2.5, double differential = 0.05, double intermediate = 0, double diameter = 8.55, double? pinToCg = null, double top = 0, double lever = 3.36) => Ball.FromSpecification(
        weight * Pound, rg * Inch, differential * Inch, intermediate * Inch, diameter * Inch, pinToCg: pinToCg * Inch, topWeight: top * Ounce, balanceLever: lever * Inch);

    public static TheoryData<string, double, double> Ranges => new()
    {
        { "weight", 5, 16.05 }, { "lowRg", 2.3, 2.9 }, { "differential", 0, 0.1 }, { "intermediateDifferential", 0, 0.1 }, { "diameter", 8.3, 8.7 }, { "topWeight", 0.001, 8 }, { "pinToCg", 0, 10 }, { "balanceLever", 1, 10 }, { "Radius", 4.15, 4.35 },
        { "CoverThickness", 0, 3 }, { "CoverDensity", 100, 5000 }, { "FillerDensity", 100, 5000 }, { "Pores", 0, 5 }, { "Modulus", 0.01, 1000 }, { "PoissonRatio", 0, 0.5 }, { "Absorption", 0, 100 }, { "Density", 0, 25_000 }, { "Mass", 0.001, 100 },
        { "imbalance", -16, 16 }, { "grit", 100, 10_000 }, { "roughness", 0.01, 5 }, { "factor", 1e-3, 1e3 },
    };

    [Theory, MemberData(nameof(Ranges))]
    public void Ranges_hold_at_their_ends_and_nowhere_beyond(string name, double low, double high)
    {
        var build = BuildTests.Design;
        object Made(double v) => name switch
        {
            "weight" => Spec(weight: v, rg: 2.6, differential: 0),
            "lowRg" => Spec(rg: v),
            "differential" => Spec(differential: v),
            "intermediateDifferential" => Spec(rg: 2.4, differential: 0.1, intermediate: v),
            "diameter" => Spec(diameter: v),
            "topWeight" => Spec(pinToCg: 3, top: v),
            "pinToCg" => Spec(pinToCg: v, top: 1),
            "balanceLever" => Spec(pinToCg: 3, top: 1, lever: v),
            "Radius" => build with { Radius = v * Inch },
            "CoverThickness" => build with { CoverThickness = v * Inch },
            "CoverDensity" => build with { CoverDensity = v },
            "FillerDensity" => build with { FillerDensity = v },
            "Pores" => Cover.Reactive with { Pores = v * 1e-6 },
            "Modulus" => Cover.Reactive with { Modulus = v * 1e9 },
            "PoissonRatio" => Cover.Reactive with { PoissonRatio = v },
            "Absorption" => Cover.Reactive with { Absorption = v },
            "Density" => new Part(Solid.Sphere(1 * Inch), v),
            "Mass" => new Ball { Mass = v, Radius = 0.1, Inertia = new(v * 4e-3, v * 4e-3, v * 4e-3) },
            "imbalance" => new BalanceReading(Vector3D.UnitX, v * Ounce),
            "grit" => Finish.Sanded(v),
            "roughness" => Finish.Measured(v * 1e-6),
            _ => MeshForms.Icosphere(1, 1).Scaled(v),
        };
        _ = Made(low);
        _ = Made(high);
        var beyond = 1e-3 * Math.Max(high - low, Math.Abs(low));
        if (name != "topWeight" && name != "factor")
        {
            SolidTests.Refused(() => Made(low - Math.Max(beyond, 1e-9)), name);
        }
        if (name != "factor")
        {
            SolidTests.Refused(() => Made(high + beyond), name);
        }
        SolidTests.Refused(() => Made(double.NaN), name);
    }

    [Fact]
    public void A_mesh_scales_with_the_third_and_fifth_power()
    {
        var ball = MeshForms.Icosphere(0.03, 2);
        var (one, two) = (Solid.FromMesh(ball).Properties(1000), Solid.FromMesh(ball.Scaled(2)).Properties(1000));
        Assert.Equal(8 * one.Mass, two.Mass, 1e-14);
        Assert.Equal(32 * one.Inertia.Xx, two.Inertia.Xx, 1e-16);
        Assert.Equal(0, (2 * one.CentreOfMass - two.CentreOfMass).Length, 1e-16);
        // Carried, a body keeps its mass and its tensor about its own centre.
        var by = new Vector3D(0.01, -0.02, 0.03);
        var carried = one.Moved(by);
        Assert.Equal((one.Mass, one.Inertia, one.CentreOfMass + by), (carried.Mass, carried.Inertia, carried.CentreOfMass));
    }

    [Fact]
    public void No_step_of_a_change_leads_to_a_body_that_cannot_be()
    {
        SolidTests.Refused(() => Spec() with { Radius = 0.06 }, "Inertia needs mass outside the ball");
        SolidTests.Refused(() => Spec() with { Mass = 1 }, "Inertia needs mass outside the ball");
        SolidTests.Refused(() => Spec() with { Inertia = new(0.06, 0.06, 0.06) }, "Inertia needs mass outside the ball");
        SolidTests.Refused(() => Spec() with { CentreOfMass = new(0.11, 0, 0) }, "outside the ball");
    }

    [Fact]
    public void Balls_print_in_pounds_and_inches()
    {
        var ball = Spec(intermediate: 0.015, pinToCg: 3, top: 3) with { Finish = Finish.Sanded(1000) };
        Assert.Equal("15.00 lb, diameter 8.550 in, RG 2.500 in, differential 0.050 in, intermediate 0.015 in, centre of mass off by 1.07 mm, reactive cover, sanded at 1000, Ra 0.71 µm, undrilled", ball.ToString());
        var layout = new Layout(4.5 * Inch, 50 * Degree, 40 * Degree);
        Assert.EndsWith("drilled for the left hand", ball.LayOut(layout, Grip.Fingertip, new(5 * Inch, 0, Hand.Left)).ToString());
        Assert.EndsWith("drilled for the right hand", ball.LayOut(layout, Grip.Fingertip, new(5 * Inch, 0)).ToString());
        Assert.Equal("2 oz towards (1, 0, 0)", new BalanceReading(Vector3D.UnitX, 2 * Ounce).ToString());
        // A pound out of the middle by a lever of 3.36 in is (1 lb/15 lb) 3.36 in = 5.68960 mm off, and a reading good to a sixteenth of an ounce tells 1/240 of an ounce in a pound: 0.0222250 mm.
        var centre = MeasuredCentre.FromBalance([new(Vector3D.UnitX, 1 * Pound), new(Vector3D.UnitY, 0), new(Vector3D.UnitZ, 0)], 15 * Pound);
        Assert.Equal(3.36 * Inch / 15, centre.CentreOfMass.X, 1e-15);
        Assert.Equal(3.36 * Inch / 240 / 16, centre.StandardErrors.X, 1e-15);
        Assert.Equal($"{centre.CentreOfMass * 1000} mm, standard errors {centre.StandardErrors * 1000} mm", centre.ToString());
        var blend = FillerBlend.For(BuildTests.Design, 14 * Pound, light: 400, dense: 1400);
        Assert.Equal(FormattableString.Invariant($"filler of {blend.Build.FillerDensity / 1000:F3} g/mL, {blend.LightShare:P1} of its volume the light component"), blend.ToString());
        var sheet = BuildSheet.Of(BuildTests.Design);
        Assert.StartsWith(FormattableString.Invariant($"{sheet.Ball.Mass / Pound:F2} lb, diameter {2 * sheet.Ball.Radius / Inch:F3} in; RG {sheet.Ball.LowRg / Inch:F3} in, differential {sheet.Ball.Differential / Inch:F3} in, "), sheet.ToString());
        Assert.EndsWith(FormattableString.Invariant($"filler {BuildTests.Design.FillerDensity / GramPerMillilitre:F3} g/mL"), sheet.ToString());
    }

    [Fact]
    public void Builds_and_balances_print_in_units_of_the_trade()
    {
        Assert.EndsWith("core of 2 parts", BuildTests.Design.ToString());
        Assert.EndsWith("; right-handed", new BallMarks().ToString());
        Assert.Equal("0.5 s about (0, 0, 1)", new PendulumReading(Vector3D.UnitZ, 0.5).ToString());
        var refused = WeightRow.Line(BuildTests.Design, 500, 1300).First(r => r.Sheet is null);
        Assert.Equal($"{(refused.Weight / Pound).ToString("F2", System.Globalization.CultureInfo.InvariantCulture)} lb: {refused.Refusal}", refused.ToString());
        var build = BuildTests.Design with { Core = [new(Solid.Ellipsoid(1.5 * Inch, 1.6 * Inch, 2.2 * Inch), 2200)] };
        var shift = CoreShift.For(build, 2 * Ounce);
        var there = build with { Core = [build.Core[0] with { Solid = build.Core[0].Solid.Moved(new(0, 0, shift.Shift)) }] };
        Assert.Equal(2 * Ounce, BuildSheet.Of(there).TopWeight(), 1e-12);
        Assert.StartsWith(FormattableString.Invariant($"core moved by {shift.Shift / Inch:F3} in; top weights from {shift.LeastTopWeight / Ounce:F1} to {shift.GreatestTopWeight / Ounce:F1} oz"), shift.ToString());
    }

    [Fact]
    public void Nothing_for_an_argument_is_told_by_its_name()
    {
        Assert.Throws<ArgumentNullException>("ball", () => Resurfacing.Ground(null!, 0.1 * Inch));
        Assert.Throws<ArgumentNullException>("ball", () => MarkCheck.Of(null!, new(0.028, 0.03, 0.029)));
        Assert.Throws<ArgumentNullException>("build", () => BuildSheet.Of(null!));
        Assert.Throws<ArgumentNullException>("readings", () => MeasuredCentre.FromBalance(null!, 6));
        Assert.Throws<ArgumentNullException>("readings", () => MeasuredInertia.FromPeriods(null!, 1, 1e-3));
    }

    [Fact]
    public void What_cannot_be_is_refused_for_its_own_reason()
    {
        var ball = Spec();
        SolidTests.Refused(() => ball with { CentreOfMass = new(0, 0, 1.01 * ball.Radius) }, "outside the ball of Radius");
        SolidTests.Refused(() => MeasuredInertia.FromPeriods([.. Enumerable.Repeat(new PendulumReading(Vector3D.UnitX, 1), 6)], 1, 1e-3, 0, 1, new(double.NaN, 0, 0)), "centreOfMass");
        var corner = new Vector3D(double.NaN, 0, 0);
        SolidTests.Refused(() => TriangleMesh.Joined([(corner, Vector3D.UnitX, Vector3D.UnitY)]), "corner");
        SolidTests.Refused(() => TriangleMesh.Joined([(Vector3D.Zero, Vector3D.UnitX, Vector3D.UnitY)], 2e-3), "within");
        Assert.Same(Cover.Urethane, (Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0.04 * Inch, cover: Cover.Urethane)).Cover);
    }
}
