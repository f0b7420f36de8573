using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Tests.Laws.Along;

namespace BallSim.Tests.Laws;

/// <summary>What mechanics keeps, on any ball, release and lane: energy, the velocity of rolling that friction cannot change, the momentum about the contact, Jellett's integral.</summary>
[Properties(Arbitrary = [typeof(Worlds)], MaxTest = 100)]
public class ConservationLaws
{
    // Path to 1e-10 m; energies are some 300 J, momenta some 1 kg m²/s, and the constants of motion are velocities of some 10 m/s.
    private const double Tight = 1e-10;

    [Property]
    public void Energy_changes_by_the_work_of_friction_and_drag_alone(Throwing t)
    {
        var shot = Simulator.Throw(t.Ball, t.Lane, t.Start, new() { Tolerance = Tight, MaxTime = Throwing.Duration, MaxSteps = 2_000_000 });
        var start = Energy(shot.Start, t.Ball, t.Lane.Gravity);
        foreach (var p in Points(shot))
        {
            Near(start + p.FrictionWork + p.DragWork, Energy(p, t.Ball, t.Lane.Gravity), 1e-9 * start, $"energy at {p.Time} s");
            Near(p.Energy, Energy(p, t.Ball, t.Lane.Gravity), 1e-12 * start, "the energy that the point reports");
        }
    }

    [Property]
    public void Energy_never_rises_on_a_level_lane(Throwing t)
    {
        var shot = Simulator.Throw(t.Ball, t.Lane, t.Start, new() { Tolerance = Tight, MaxTime = Throwing.Duration, MaxSteps = 2_000_000 });
        var (last, work, drag) = (shot.Start.Energy, 0.0, 0.0);
        foreach (var p in Points(shot, 400))
        {
            Assert.True(p.Energy <= last + 1e-9 * shot.Start.Energy, $"energy rises by {p.Energy - last:E2} J at {p.Time} s");
            Assert.True(p.FrictionWork <= work + 1e-10 * shot.Start.Energy, $"friction did {p.FrictionWork - work:E2} J of work at {p.Time} s");
            Assert.True(p.DragWork <= drag + 1e-12 * shot.Start.Energy, $"drag did {p.DragWork - drag:E2} J of work at {p.Time} s");
            (last, work, drag) = (p.Energy, p.FrictionWork, p.DragWork);
        }
    }

    [Property]
    public void Isotropic_ball_keeps_its_rolling_velocity_whatever_the_friction(IsotropicThrowing t)
    {
        var shot = t.Pure();
        var kept = Velocity(shot.Start) + t.Beta * Turning(shot.Start, t.Ball.Radius);
        var direction = new Vector3D(shot.Start.SlipX, shot.Start.SlipY, 0).Unit;
        foreach (var p in Points(shot))
        {
            Near(kept, Velocity(p) + t.Beta * Turning(p, t.Ball.Radius), 1e-9, $"v + (k/R)² ω × R n at {p.Time} s");
            if (p.Phase == ShotPhase.Rolling)
            {
                Near(kept / (1 + t.Beta), Velocity(p), 1e-9, $"the rolling velocity at {p.Time} s");
            }
            else if (p.SlipSpeed > 1e-3)
            {
                Near(direction, new Vector3D(p.SlipX, p.SlipY, 0).Unit, 1e-8 / p.SlipSpeed, $"the direction of the slip at {p.Time} s");
            }
        }
    }

    [Property]
    public void Isotropic_ball_at_constant_friction_goes_along_a_parabola_and_then_straight(IsotropicThrowing t)
    {
        var mu = t.Lane.GivenFriction?.At(0, 0) ?? 0.08;
        var lane = Lane.Unbounded(FrictionMap.Constant(mu));
        var shot = (t with { Lane = lane }).Pure();
        var v0 = Velocity(shot.Start);
        var slip = new Vector3D(shot.Start.SlipX, shot.Start.SlipY, 0);
        var a = -mu * Units.StandardGravity * slip.Unit;
        // |s| falls at μ g (1 + 1/β).
        var roll = slip.Length / (mu * Units.StandardGravity * (1 + 1 / t.Beta));
        Vector3D Place(double time) => Math.Min(time, roll) is var s
            ? new Vector3D(shot.Start.X, shot.Start.Y, 0) + s * v0 + 0.5 * s * s * a + (time - s) * (v0 + s * a)
            : default;
        if (roll < shot.Duration)
        {
            Near(roll, shot.StartOfRoll!.Value.Time, 1e-9, "start of roll");
        }
        foreach (var p in Points(shot))
        {
            Near(Place(p.Time), new(p.X, p.Y, 0), 1e-9, $"place at {p.Time} s");
        }
    }

    [Property]
    public void Centred_ball_keeps_the_lane_vector_of_momentum_sliding_rolling_and_slipping_again(CentredThrowing t)
    {
        Vector3D Kept(PathPoint p) => Momentum(p, t.Ball) + t.Ball.Radius * t.Ball.Mass * Vector3D.UnitZ.Cross(Velocity(p));
        var shot = t.Pure();
        foreach (var p in Points(shot))
        {
            Near(Kept(shot.Start), Kept(p), 1e-9, $"L_G + R n × m v at {p.Time} s ({p.Phase})");
        }
    }

    [Property]
    public void Axisymmetric_ball_with_its_offset_on_the_axis_keeps_Jelletts_integral(AxisymmetricThrowing t)
    {
        // J. H. Jellett, A Treatise on the Theory of Friction (1872); any friction at the contact.
        double Kept(PathPoint p) => Momentum(p, t.Ball).Dot(Arm(p, t.Ball));
        var shot = t.Pure();
        foreach (var p in Points(shot))
        {
            Near(Kept(shot.Start), Kept(p), 1e-10, $"L_G · (G - C) at {p.Time} s ({p.Phase})");
        }
    }

    [Property]
    public void Rolling_centred_ball_keeps_energy_and_the_momentum_about_the_contact(CentredThrowing t)
    {
        // Chaplygin's sphere: as thrown, but rolling from the start with all the grip it asks for.
        var ω = t.Start.AngularVelocity;
        var start = t.Start with { VelocityX = t.Ball.Radius * ω.Y, VelocityY = -t.Ball.Radius * ω.X };
        var shot = (t with { Lane = Lane.Unbounded(FrictionMap.Constant(2)), Start = start }).Pure();
        Vector3D AboutContact(PathPoint p) => Momentum(p, t.Ball) + t.Ball.Mass * Arm(p, t.Ball).Cross(Velocity(p));
        foreach (var p in Points(shot))
        {
            Assert.Equal(ShotPhase.Rolling, p.Phase);
            Near(AboutContact(shot.Start), AboutContact(p), 1e-10, $"momentum about the contact at {p.Time} s");
            Near(shot.Start.Energy, Energy(p, t.Ball, t.Lane.Gravity), 1e-10 * shot.Start.Energy, $"energy at {p.Time} s");
        }
    }
}
