using BallSim.Lanes;
using BallSim.Shots;
using static BallSim.Tests.References.ReferenceFile;

namespace BallSim.Tests.References;

/// <summary>
/// The full body, offset and asymmetric, under given friction: sliding, rolling, slipping again. Newton-Euler in two formulations that agree to 2e-12 - 6e-11 (1e-9 where the ball slips
/// again); Jellett's integral: J. H. Jellett, A Treatise on the Theory of Friction (1872).
/// </summary>
public class OffsetAsymmetric
{
    private const string File = "offset-asymmetric.json";

    public static TheoryData<string> Names => ReferenceFile.Names(File);

    [Theory]
    [MemberData(nameof(Names))]
    public void PathEventsAndForces(string name)
    {
        var c = Case(File, name);
        var inputs = c.GetProperty("inputs");
        var samples = c.GetProperty("samples").EnumerateArray().ToArray();
        var events = c.GetProperty("events").EnumerateArray().ToArray();
        var slipsAgain = events.Any(e => e.GetProperty("event").GetString() == "roll->slide");
        var until = Math.Max(samples.Max(s => s.Number("t")), events.Select(e => e.Number("t")).DefaultIfEmpty().Max()) + 1e-3;
        var lane = Lane.Unbounded(inputs.Friction()) with { Gravity = new(0, 0, -inputs.Number("g")) };
        var shot = Simulator.Throw(inputs.Ball(inputs.Tensor("I_com_body")), lane, inputs.Start(), Tight(until));

        var within = slipsAgain ? 1e-6 : 1e-8;
        var start = c.GetProperty("initial");
        Near(start.Number("N"), shot.Start.NormalForce, 1e-9, "N at the start");
        foreach (var sample in samples)
        {
            var point = shot.At(sample.Number("t"));
            Matches(sample, point, within, 1e-6);
            Assert.Equal(sample.GetProperty("phase").GetString() == "slide" ? ShotPhase.Sliding : ShotPhase.Rolling, point.Phase);
            Near(sample.Number("N"), point.NormalForce, 1e-5, $"t = {point.Time}: N");
            Near(sample.Number("friction_work"), point.FrictionWork, 1e-5, $"t = {point.Time}: work of friction");
            Near(sample.Number("energy"), point.Energy, 1e-5, $"t = {point.Time}: energy");
            if (sample.GetProperty("at").GetString()!.StartsWith("y=", StringComparison.Ordinal))
            {
                Near(sample.Number("t"), shot.AtDistance(sample.Vector("c").Y).Time, within, "time at a distance");
            }
        }
        Assert.Equal(events.Length, shot.PhaseChanges.Count(p => p.Time <= until - 5e-4));
        foreach (var (expected, actual) in events.Zip(shot.PhaseChanges))
        {
            Near(expected.Number("t"), actual.Time, 1e-8, $"time of {expected.GetProperty("event").GetString()}");
            Assert.Equal(expected.GetProperty("event").GetString() == "slide->roll" ? ShotPhase.Rolling : ShotPhase.Sliding, actual.To);
        }
    }
}
