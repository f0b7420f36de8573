using BallSim.Benchmarks;
using BallSim.Fitting;
using BallSim.Shots;
using BallSim.Tests.References;

namespace BallSim.Tests.Fitting;

/// <summary>A free ball's own gyroscope: Jacobi's solution (L. D. Landau and E. M. Lifshitz, Mechanics, s. 37; NIST DLMF ch. 22) gives back the inertia.</summary>
public class GyroFitTests
{
    [Fact]
    public void The_elliptic_solution_gives_back_the_ratios_of_the_moments()
    {
        var c = ReferenceFile.Cases("torque-free.json").First();
        var I = c.GetProperty("inputs").Numbers("I_body_principal");
        GyroSample[] samples = [.. c.GetProperty("samples").EnumerateArray().Select(s => new GyroSample(s.Number("t"), s.Vector("omega_body"))).OrderBy(s => s.Time).DistinctBy(s => s.Time)];
        var fit = GyroFit.Of(samples, 1e-4);
        Assert.True(fit.IsConverged, fit.Reason);
        Assert.Equal(I.Min() / I.Max(), fit.LeastToGreatest, 1e-6);
        Assert.Equal(I.Order().ElementAt(1) / I.Max(), fit.MiddleToGreatest, 1e-6);
    }

    [Fact]
    public void With_noise_and_a_turned_sensor_the_errors_are_those_seen()
    {
        var body = new InertiaTensor(0.0270, 0.0281, 0.0279);
        var turn = Rotation.About(new(1, 2, 3), 0.7);
        var spin = TorqueFreeSpin.Of(body, new Vector3D(20, 25, 15));
        var normal = SyntheticTracks.Normals(0);
        double Off() => 0.05 * normal();
        GyroSample[] samples = [.. Enumerable.Range(0, 500).Select(i => new GyroSample(0.01 * i, turn.Apply(spin.AngularVelocityInBall(0.01 * i)) + new Vector3D(Off(), Off(), Off())))];
        var fit = GyroFit.Of(samples, 0.05);
        Assert.True(fit.IsConverged, fit.Reason);
        Assert.InRange(fit.ChiSquare / fit.DegreesOfFreedom, 0.85, 1.15);
        Assert.InRange(Math.Abs(fit.LeastToGreatest - 0.0270 / 0.0281), 0, 3.5 * fit.LeastToGreatestError);
        Assert.InRange(Math.Abs(fit.MiddleToGreatest - 0.0279 / 0.0281), 0, 3.5 * fit.MiddleToGreatestError);
        Assert.InRange(fit.LeastToGreatestError, 1e-6, 1e-3);
    }
}
