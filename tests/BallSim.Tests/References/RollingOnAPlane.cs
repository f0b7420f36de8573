using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Shots;
using static BallSim.Tests.References.ReferenceFile;

namespace BallSim.Tests.References;

/// <summary>A sphere that rolls on a tilted plane: a = g_t/(1 + k²/R²), any mechanics textbook; closed form.</summary>
public class RollingOnAPlane
{
    private const string File = "rolling-on-a-plane.json";

    // Any mass: the acceleration does not depend on it.
    private const double Mass = 7;

    public static TheoryData<string> Names => ReferenceFile.Names(File);

    [Theory]
    [MemberData(nameof(Names))]
    public void Acceleration(string name)
    {
        var c = Case(File, name);
        var inputs = c.GetProperty("inputs");
        var (R, g) = (inputs.Number("R"), inputs.Number("g"));
        var moment = inputs.Number("beta") * Mass * R * R;
        var (tilt, azimuth) = (inputs.Number("tilt_deg") * Units.Degree, inputs.Number("downhill_azimuth_deg_from_y_towards_x") * Units.Degree);
        var lane = Lane.Unbounded(FrictionMap.Constant(0.5)) with
        {
            Gravity = new(g * Math.Sin(tilt) * Math.Sin(azimuth), g * Math.Sin(tilt) * Math.Cos(azimuth), -g * Math.Cos(tilt)),
        };
        var ball = new Ball { Mass = Mass, Radius = R, Inertia = new(moment, moment, moment) };
        var samples = c.GetProperty("samples").EnumerateArray().ToArray();
        var shot = Simulator.Throw(ball, lane, inputs.Start(), Tight(samples.Max(s => s.Number("t")) + 0.01));
        foreach (var sample in samples)
        {
            var point = shot.At(sample.Number("t"));
            Assert.Equal(ShotPhase.Rolling, point.Phase);
            Matches(sample, point, 1e-8, 1e-6);
        }
    }
}
