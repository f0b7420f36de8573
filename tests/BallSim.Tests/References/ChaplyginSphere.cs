using BallSim.Lanes;
using BallSim.Shots;
using static BallSim.Tests.References.ReferenceFile;

namespace BallSim.Tests.References;

/// <summary>
/// Chaplygin's sphere: an asymmetric ball without offset that rolls with unlimited grip. S. A. Chaplygin, Mat. Sb. 24 (1903) 139, transl. Regul. Chaotic Dyn. 7 (2002) 131; A. V. Borisov and
/// I. S. Mamaev, Regul. Chaotic Dyn. 13 (2008) 443. Solved by two methods, agreement 1e-11.
/// </summary>
public class ChaplyginSphere
{
    private const string File = "rolling-asymmetric.json";

    public static TheoryData<string> Names => ReferenceFile.Names(File);

    [Theory]
    [MemberData(nameof(Names))]
    public void PathSpinAndForce(string name)
    {
        var c = Case(File, name);
        var inputs = c.GetProperty("inputs");
        var I = inputs.Numbers("I_principal");
        // Unlimited grip: the most that a map takes, more than any of the cases asks for.
        var lane = Lane.Unbounded(FrictionMap.Constant(2)) with { Gravity = new(0, 0, -inputs.Number("g")) };
        var samples = c.GetProperty("samples").EnumerateArray().ToArray();
        var shot = Simulator.Throw(inputs.Ball(new(I[0], I[1], I[2])), lane, inputs.Start("omega_lane0"), Tight(samples.Max(s => s.Number("t")) + 0.01, 1e-13));
        var energy = c.GetProperty("expected").Number("energy") + inputs.Number("m") * inputs.Number("g") * inputs.Number("R");
        foreach (var sample in samples)
        {
            var point = shot.At(sample.Number("t"));
            Assert.Equal(ShotPhase.Rolling, point.Phase);
            Matches(sample, point, 1e-8, 1e-6);
            var force = sample.Vector("constraint_force_xy");
            Near(force.X, point.ContactForce.X, 1e-6, "contact force across");
            Near(force.Y, point.ContactForce.Y, 1e-6, "contact force down-lane");
            Near(energy, point.Energy, 1e-7, "energy");
        }
    }
}
