using BallSim.Lanes;
using BallSim.Shots;
using static BallSim.Tests.References.ReferenceFile;

namespace BallSim.Tests.References;

/// <summary>
/// A uniform (or isotropic) sphere under constant friction, closed form: C. Frohlich, "What makes bowling balls hook?", Am. J. Phys. 72 (2004) 1170; D. C. Hopkins and J. D. Patterson,
/// Am. J. Phys. 45 (1977) 263 (both from memory).
/// </summary>
public class SlidingSphere
{
    private const string File = "sliding-sphere.json";

    public static TheoryData<string> Names => ReferenceFile.Names(File);

    [Theory]
    [MemberData(nameof(Names))]
    public void PathAndStartOfRoll(string name)
    {
        var c = Case(File, name);
        var inputs = c.GetProperty("inputs");
        var moment = inputs.Number("beta = I/(m R^2)") * inputs.Number("m") * inputs.Number("R") * inputs.Number("R");
        var samples = c.GetProperty("samples").EnumerateArray().ToArray();
        var expected = c.GetProperty("expected");
        var until = Math.Max(samples.Max(s => s.Number("t")), expected.Number("t_roll")) + 0.01;
        var lane = Lane.Unbounded(inputs.Friction()) with { Gravity = new(0, 0, -inputs.Number("g")) };
        var shot = Simulator.Throw(inputs.Ball(new(moment, moment, moment)), lane, inputs.Start(), Tight(until));

        foreach (var sample in samples)
        {
            var point = shot.At(sample.Number("t"));
            Matches(sample, point, 1e-8, 1e-6, "q_numeric");
            Assert.Equal(sample.GetProperty("phase").GetString() == "slide" ? ShotPhase.Sliding : ShotPhase.Rolling, point.Phase);
        }
        var roll = shot.StartOfRoll!.Value;
        Near(expected.Number("t_roll"), roll.Time, 1e-8, "start of roll");
        var cRoll = expected.Vector("c_roll");
        Near(cRoll.X, roll.X, 1e-8, "c.x at the start of roll");
        Near(cRoll.Y, roll.Distance, 1e-8, "c.y at the start of roll");
        var turn = shot.End.Heading - expected.Number("path_angle_deg_final") * Units.Degree;
        Near(0, Math.IEEERemainder(turn, 2 * Math.PI), 1e-8, "final path angle");
        Near(expected.Number("friction_work"), shot.End.FrictionWork, 1e-6, "work of friction");
    }
}
