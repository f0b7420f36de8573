using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Tests.References;

/// <summary>
/// The free asymmetric top: Jacobi elliptic functions, L. D. Landau and E. M. Lifshitz, Mechanics (3rd ed.), s. 37; NIST DLMF ch. 22. A lofted ball is a free body, so a long loft serves.
/// </summary>
public class TorqueFree
{
    private const string File = "torque-free.json";

    public static TheoryData<string> Names => ReferenceFile.Names(File);

    [Theory]
    [MemberData(nameof(Names))]
    public void SpinAndOrientation(string name)
    {
        var c = ReferenceFile.Case(File, name);
        var inputs = c.GetProperty("inputs");
        var I = inputs.Numbers("I_body_principal");
        var q0 = inputs.Rotation("q0").Normalised;
        // Slow enough that the case ends before the longest loft.
        var until = c.GetProperty("samples").EnumerateArray().Max(s => s.Number("t")) + 0.01;
        var speed = 19 / until;
        // Any mass and radius will do that can carry the inertia.
        var ball = new Ball { Mass = 50, Radius = 0.2, Inertia = new(I[0], I[1], I[2]) };
        var start = new InitialState { VelocityY = Math.Min(speed, 40), Orientation = q0, AngularVelocity = q0.Apply(inputs.Vector("omega_body0")), Loft = 20 };
        var shot = Simulator.Throw(ball, Lane.Unbounded(FrictionMap.Constant(0.1)), start, ReferenceFile.Tight(until, 1e-13));
        foreach (var sample in c.GetProperty("samples").EnumerateArray())
        {
            var point = shot.At(sample.Number("t"));
            Assert.Equal(ShotPhase.Loft, point.Phase);
            var q = ReferenceFile.Off(sample.Rotation("q"), point.Orientation);
            Assert.True(q <= 1e-8, $"t = {point.Time}: q off by {q:E2}");
            var omega = ReferenceFile.Off(sample.Vector("omega_body"), point.Orientation.Inverse.Apply(point.AngularVelocity));
            Assert.True(omega <= 1e-6, $"t = {point.Time}: omega off by {omega:E2}");
        }
    }
}
