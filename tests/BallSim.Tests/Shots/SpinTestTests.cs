using BallSim.Balls;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Shots;

public class SpinTestTests
{
    private static Ball Asymmetric => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch);

    private static readonly Vector3D NearThePin = 300 * Rpm * new Vector3D(1, 0.05, 0.03).Unit;

    [Fact]
    public void Without_dissipation_nothing_migrates()
    {
        var run = SpinTest.Run(Asymmetric, NearThePin, SpinDissipation.None, 20);
        Assert.True(run.IsComplete);
        var settling = run.Settle(10 * Degree);
        Assert.Null(settling.FirstWithin);
        Assert.Null(settling.WithinForGood);
        Assert.Contains("without dissipation nothing migrates", settling.Reason);
        // Beside the closed form, all the way.
        var closed = TorqueFreeSpin.Of(run.Ball, NearThePin);
        foreach (var m in run.Samples(101))
        {
            Assert.True((m.AngularVelocityInBall - closed.AngularVelocityInBall(m.Time)).Length < 1e-6);
            Assert.True((m.AngularVelocity - closed.Orientation(m.Time).Apply(closed.AngularVelocityInBall(m.Time))).Length < 1e-6);
            Assert.Equal(run.Start.Momentum, m.Momentum);
        }
    }

    [Theory]
    [InlineData(0, 0, 0.1)]
    [InlineData(0.2, 0.01, 0)]
    public void With_a_rotor_or_a_square_torque_it_migrates_to_the_hard_axis(double coupling, double moment, double square)
    {
        var dissipation = new SpinDissipation { RotorCoupling = coupling, RotorMoment = moment, SquareToMomentum = square };
        var run = SpinTest.Run(Asymmetric, NearThePin, dissipation, 150, options: new() { Tolerance = 1e-8 });
        var settling = run.Settle(5 * Degree);
        Assert.True(settling.FirstWithin is > 0, settling.ToString());
        Assert.True(settling.WithinForGood >= settling.FirstWithin);
        // At the located instants the axis is at the angle, before them outside, at the end inside.
        Assert.Equal(5 * Degree, run.At(settling.FirstWithin!.Value).AngleToPreferredAxis, 1e-9);
        Assert.Equal(5 * Degree, run.At(settling.WithinForGood!.Value).AngleToPreferredAxis, 1e-9);
        Assert.True(run.At(settling.FirstWithin.Value - 0.01).AngleToPreferredAxis > 5 * Degree);
        Assert.True(run.End.AngleToPreferredAxis < 5 * Degree);
        Assert.True(Math.Abs(run.End.AxisInBall.Y) > Math.Cos(5 * Degree));
    }

    [Fact]
    public void Air_and_slowing_slow_it_without_bringing_it_there()
    {
        foreach (var dissipation in (SpinDissipation[])[new() { Air = 0.001 }, new() { Slowing = 0.04 }])
        {
            var run = SpinTest.Run(Asymmetric, NearThePin, dissipation, 60);
            Assert.True(run.End.AngularVelocity.Length < 0.15 * run.Start.AngularVelocity.Length);
            Assert.Contains("slows the spin", run.Settle(20 * Degree).Reason);
        }
    }

    [Fact]
    public void More_dissipation_settles_sooner()
    {
        double Time(double c) => SpinTest.Run(Asymmetric, NearThePin, new() { SquareToMomentum = c }, 15 / c, options: new() { Tolerance = 1e-8 })
            .Settle(10 * Degree).WithinForGood!.Value;
        // Twice the torque, half the time, but for where on the polhode the angle is met.
        Assert.Equal(2, Time(0.1) / Time(0.2), 0.1);
    }

    [Fact]
    public void A_ball_symmetric_about_its_pin_prefers_the_whole_plane_across()
    {
        var symmetric = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch);
        var run = SpinTest.Run(symmetric, NearThePin, SpinDissipation.None, 1);
        Assert.Equal(Math.PI / 2 - NearThePin.AngleTo(Vector3D.UnitX), run.Start.AngleToPreferredAxis, 1e-12);
        var round = new Ball { Mass = 7, Radius = 0.108, Inertia = new(0.03, 0.03, 0.03) };
        Assert.Equal(0, SpinTest.Run(round, NearThePin, SpinDissipation.None, 1).End.AngleToPreferredAxis);
    }

    [Fact]
    public void A_test_ended_by_its_steps_says_so()
    {
        var run = SpinTest.Run(Asymmetric, NearThePin, SpinDissipation.None, 60, options: new() { MaxSteps = 50 });
        Assert.False(run.IsComplete);
        Assert.True(run.Duration < 60);
        Assert.Contains("MaxSteps", run.ToString());
    }

    [Fact]
    public void Nonsense_is_refused()
    {
        Refused(() => SpinTest.Run(Asymmetric, Vector3D.Zero, SpinDissipation.None, 1), "angularVelocity");
        Refused(() => SpinTest.Run(Asymmetric, new(double.NaN, 0, 0), SpinDissipation.None, 1), "not a number");
        Refused(() => SpinTest.Run(Asymmetric, NearThePin, new() { RotorCoupling = 1 }, 1), "RotorMoment");
        Refused(() => SpinTest.Run(Asymmetric, NearThePin, SpinDissipation.None, -1), "duration");
        Refused(() => SpinTest.Run(Asymmetric, NearThePin, SpinDissipation.None, 1, new Rotation(2, 0, 0, 0)), "unit quaternion");
        Refused(() => new SpinDissipation { Air = -1 }, "Air");
        Refused(() => SpinTest.Run(Asymmetric, NearThePin, SpinDissipation.None, 1).Settle(45), "45 * Degree");
    }

    private static void Refused(Func<object> build, string part) => Assert.Contains(part, Assert.ThrowsAny<ArgumentException>(build).Message);
}
