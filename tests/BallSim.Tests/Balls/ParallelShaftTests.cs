using BallSim.Balls;
using MathNet.Numerics.Integration;

namespace BallSim.Tests.Balls;

/// <summary>
/// A shaft that runs along the axis of a solid of revolution, beside it: the circle of radius ρ about the solid's axis lies in the shaft over the angles ±Φ, cos Φ = (ρ² + e² - a²)/(2 ρ e), so that one integral over ρ gives all ten moments. The rays
/// of the library run across that circle and know nothing of it.
/// </summary>
public class ParallelShaftTests
{
    // Form, radii at which its height has a corner or ends.
    private static readonly Dictionary<string, double[]> Corners = new()
    {
        ["cylinder"] = [0.03], ["frustum"] = [0.015, 0.04], ["cone"] = [0.03], ["ball of arcs"] = [0.04], ["cap"] = [Math.Sqrt(0.0021)], ["shell"] = [0.03, 0.04], ["ring"] = [0.018, 0.042], ["waist"] = [0.01, 0.03],
        ["lemon"] = [0.02, 0.03], ["pulley"] = [0.02, 0.022, 0.04], ["tube"] = [0.01, 0.03], ["two cones"] = [0.03],
    };

    private static readonly GaussLegendreRule Rule = new(0, Math.PI, 100);

    public static TheoryData<string, double, double> Cases
    {
        get
        {
            var cases = new TheoryData<string, double, double>();
            foreach (var name in Corners.Keys)
            {
                // Arcs about rings take their time, a lemon most.
                if (name != "lemon")
                {
                    cases.Add(name, 0.012, 0.0127);
                }
                if (name is not ("ring" or "waist"))
                {
                    cases.Add(name, name == "lemon" ? 0.018 : 0.026, 0.009);
                }
            }
            return cases;
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void All_ten_moments_by_one_integral(string name, double e, double a)
    {
        var solid = RoundForms.Revolved.Single(f => f.Name == name).Solid;
        var expected = ByCircles(solid, Corners[name], e, a);
        // Turned and moved as a whole; and from above. Arcs about rings take their time: once for them.
        var (turn, by) = (Rotation.About(new(0.2, 0.9, -0.4), 2.1), new Vector3D(0.02, 0.01, -0.04));
        Same(expected.Turned(turn).Moved(by), solid.Turned(turn).Moved(by).Within(new(turn.Apply(new(e, 0, -0.2)) + by, turn.Apply(Vector3D.UnitZ), a)));
        if (name is not ("waist" or "lemon" or "pulley" or "ring"))
        {
            Same(expected, solid.Within(new(new(e, 0, 0.3), -Vector3D.UnitZ, a)));
            // A bottom within the solid, and what it leaves below it: together the whole way.
            var shaft = new Shaft(new(e, 0, 0.0219), Vector3D.UnitZ, a);
            Same(expected, solid.Within(shaft) + solid.Within(shaft with { Axis = -Vector3D.UnitZ }), 2e-8);
        }
    }

    // Within 1e-8 of what is taken.
    private static void Same(Moments expected, Moments got, double within = 1e-8)
    {
        var off = (expected - got).Size(0.05);
        Assert.True(off <= within * expected.Total, $"off by {off / expected.Total:E1}");
    }

    private static Moments ByCircles(Solid solid, double[] corners, double e, double a)
    {
        var places = corners.Append(Math.Abs(a - e)).Append(a + e).Append(0).Where(ρ => ρ <= a + e).Distinct().Order().ToArray();
        var sum = default(Moments);
        List<double> chords = [];
        for (var k = 0; k + 1 < places.Length; k++)
        {
            var (middle, half) = ((places[k] + places[k + 1]) / 2, (places[k + 1] - places[k]) / 2);
            // ρ = m - h cos θ: a square root at either end is smooth in θ.
            for (var i = 0; i < Rule.Order; i++)
            {
                var θ = Rule.GetAbscissa(i);
                var ρ = middle - half * Math.Cos(θ);
                var weight = ρ * half * Math.Sin(θ) * Rule.GetWeight(i);
                var Φ = ρ + e <= a ? Math.PI : ρ <= e - a || ρ >= e + a ? 0 : Math.Acos(Math.Clamp((ρ * ρ + e * e - a * a) / (2 * ρ * e), -1, 1));
                chords.Clear();
                solid.Chords(new(ρ, 0, 0), Vector3D.UnitZ, chords);
                var (l1, l2, l3) = (0.0, 0.0, 0.0);
                for (var c = 0; c + 1 < chords.Count; c += 2)
                {
                    var (low, high) = (chords[c], chords[c + 1]);
                    l1 += high - low;
                    l2 += (high * high - low * low) / 2;
                    l3 += (high * high * high - low * low * low) / 3;
                }
                var (round, across) = (2 * Φ, 2 * Math.Sin(Φ));
                sum += weight * new Moments(round * l1, ρ * across * l1, 0, round * l2, ρ * ρ * (Φ + Math.Sin(2 * Φ) / 2) * l1, ρ * ρ * (Φ - Math.Sin(2 * Φ) / 2) * l1, round * l3, 0, 0, ρ * across * l2);
            }
        }
        return sum;
    }
}
