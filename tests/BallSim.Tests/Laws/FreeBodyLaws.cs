using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Tests.Laws.Along;

namespace BallSim.Tests.Laws;

/// <summary>The ball in the air: Euler's equations without torque, and the loft.</summary>
[Properties(Arbitrary = [typeof(Worlds)], MaxTest = 100)]
public class FreeBodyLaws
{
    private static readonly Lane Plane = Lane.Unbounded(FrictionMap.Constant(0.1));

    // Through the air at 2 m/s for 10 s: some hundred turns.
    private static Shot Fly(Ball ball, InitialState start, double tolerance) =>
        Simulator.Throw(ball, Plane, start with { VelocityX = 0, VelocityY = 2, Loft = 20 }, new() { Tolerance = tolerance, MaxTime = 9.9, MaxSteps = 2_000_000 });

    [Property]
    public void Without_torque_energy_and_angular_momentum_stay(Throwing t)
    {
        var shot = Fly(t.Ball, t.Start, 1e-11);
        double Spin(PathPoint p) => 0.5 * p.AngularVelocity.Dot(Momentum(p, t.Ball));
        foreach (var p in Points(shot, 100))
        {
            Assert.Equal(ShotPhase.Loft, p.Phase);
            Near(Momentum(shot.Start, t.Ball), Momentum(p, t.Ball), 1e-11, $"L at {p.Time} s");
            Near(Spin(shot.Start), Spin(p), 1e-10 * Spin(shot.Start), $"energy of rotation at {p.Time} s");
        }
    }

    [Property]
    public void Spin_about_the_middle_axis_runs_away_at_the_rate_of_the_linear_theory(Throwing t)
    {
        // L. D. Landau and E. M. Lifshitz, Mechanics, s. 37. With ω₁ = ε and ω₃ = 0 at first: ω₁ = ε cosh λt, λ = ω₂
        // √((I₃-I₂)(I₂-I₁)/(I₁I₃)), while ω₁ is small: here its square grows to 7e-8 of ω₂², which where I₃ is near I₂ counts (I₃-I₁)/(I₃-I₂) times.
        var axes = t.Ball.Inertia.Principal;
        var (I1, I2, I3) = (axes.LeastMoment, axes.MiddleMoment, axes.GreatestMoment);
        const double ω2 = 100, ε = 1e-3;
        var λ = ω2 * Math.Sqrt((I3 - I2) * (I2 - I1) / (I1 * I3));
        var time = 4 / λ;
        if (time > 9.8)
        {
            // Two moments so close that it takes longer than the ball flies.
            return;
        }
        var shot = Fly(t.Ball, t.Start with { Orientation = Rotation.Identity, AngularVelocity = ω2 * axes.Middle + ε * axes.Least }, 1e-11);
        double AboutLeast(double at) => shot.At(at) is var p ? p.Orientation.Inverse.Apply(p.AngularVelocity).Dot(axes.Least) : 0;
        Near(ε * Math.Cosh(2), AboutLeast(time / 2), 1e-4 * ε * Math.Cosh(2), "after two times of growth");
        Near(ε * Math.Cosh(4), AboutLeast(time), 1e-4 * ε * Math.Cosh(4), "after four");
    }

    [Property]
    public void Spin_about_the_least_and_the_greatest_axis_stays(Throwing t, bool least)
    {
        var axes = t.Ball.Inertia.Principal;
        var axis = least ? axes.Least : axes.Greatest;
        var I = least ? axes.LeastMoment : axes.GreatestMoment;
        if (Math.Abs(I - axes.MiddleMoment) < 0.002 * I)
        {
            // All but free to wander in the plane of two equal moments.
            return;
        }
        var aside = axis.Cross(new Vector3D(0.36, 0.48, 0.8)).Unit;
        const double ε = 1e-3;
        var shot = Fly(t.Ball, t.Start with { Orientation = Rotation.Identity, AngularVelocity = 60 * (axis + ε * aside) }, 1e-10);
        // The ratio of the ellipse's axes is √ of a ratio of differences of moments; here it is below √(0.05/0.002) = 5.
        foreach (var p in Points(shot, 100))
        {
            Assert.True(p.Orientation.Inverse.Apply(p.AngularVelocity).AngleTo(axis) < 10 * ε, $"the axis wanders at {p.Time} s");
        }
    }

    [Property]
    public void Lofted_ball_goes_straight_at_its_speed_counts_its_turns_and_lands_at_the_distance(Throwing t)
    {
        const double loft = 0.5;
        var shot = Simulator.Throw(t.Ball, t.Lane, t.Start with { Loft = loft }, new() { Tolerance = 1e-10, MaxTime = Throwing.Duration, MaxSteps = 2_000_000 });
        var landing = shot.PhaseChanges[0];
        Assert.Equal((ShotPhase.Loft, ShotPhase.Sliding), (landing.From, landing.To));
        Near(loft, landing.Distance, 1e-12, "where it lands");
        Near(loft / t.Start.VelocityY, landing.Time, 1e-13, "time of landing");
        foreach (var time in new[] { 0, 0.3, 0.7, 1 }.Select(share => share * landing.Time * (1 - 1e-12)))
        {
            var p = shot.At(time);
            Near(new Vector3D(t.Start.X, 0, 0) + time * t.Start.Velocity, new(p.X, p.Y, 0), 1e-12, $"place at {time} s");
            Near(t.Start.Velocity, Velocity(p), 0, $"velocity at {time} s");
            // The spin rate of a free body swings by the differential, less than 4 %.
            Near(t.Start.AngularVelocity.Length * time / (2 * Math.PI), p.Revolutions, 0.05 * p.Revolutions + 1e-15, $"turns at {time} s");
            Assert.Equal((0, 0), (p.FrictionWork, p.DragWork));
        }
        // Landing changes neither velocity nor spin.
        var (before, after) = (shot.At(landing.Time * (1 - 1e-12)), shot.At(landing.Time + 1e-12));
        Near(before.AngularVelocity, after.AngularVelocity, 1e-7, "spin on landing");
        Near(Velocity(before), Velocity(after), 1e-7, "velocity on landing");
    }
}
