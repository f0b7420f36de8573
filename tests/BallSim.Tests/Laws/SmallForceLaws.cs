using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Tests.Laws.Along;
using static BallSim.Units;

namespace BallSim.Tests.Laws;

/// <summary>The small forces, each with its switch, against what can be derived exactly.</summary>
[Properties(Arbitrary = [typeof(Worlds)], MaxTest = 60)]
public class SmallForceLaws
{
    private static SimulatorOptions Options(double time = Throwing.Duration) => new() { Tolerance = 1e-10, AirDrag = false, MaxTime = time, MaxSteps = 50_000 };

    private static Lane Plane(double mu) => Lane.Unbounded(FrictionMap.Constant(mu));

    // Rolling along its launch.
    private static InitialState Rolling(Throwing t, double ω_z = 0)
    {
        var v = t.Start.Velocity;
        return t.Start with { AngularVelocity = new(-v.Y / t.Ball.Radius, v.X / t.Ball.Radius, ω_z) };
    }

    [Property]
    public void Rolling_resistance_slows_a_rolling_isotropic_ball_by_c_g_over_1_plus_k2_over_R2(IsotropicThrowing t, bool tilted)
    {
        // About the contact: m (k² + R²) dω/dt = -c m g R, and v = ω R. With spin about the normal only the horizontal part resists.
        const double c = 0.01;
        var shot = Simulator.Throw(t.Ball, Plane(0.5), Rolling(t, tilted ? 15 : 0), Options() with { RollingResistance = true, RollingResistanceCoefficient = c });
        var a = c * StandardGravity / (1 + t.Beta);
        foreach (var p in Points(shot, 20))
        {
            Near(t.Start.Speed - a * p.Time, p.Speed, 1e-9, $"speed at {p.Time} s");
            Near(shot.Start.Heading, p.Heading, 1e-9, $"heading at {p.Time} s");
            Near(shot.Start.AngularVelocity.Z, p.AngularVelocity.Z, 1e-9, $"spin about the normal at {p.Time} s");
            Near(shot.Start.Energy + p.FrictionWork, p.Energy, 1e-9 * shot.Start.Energy, $"energy at {p.Time} s");
        }
    }

    [Property]
    public void Pivoting_friction_slows_a_rolling_isotropic_ball_about_the_normal_alone(IsotropicThrowing t)
    {
        // At zero slip the moment is (3π/16) μ N r_c, and m k² dω_z/dt = -moment as long as the ball pivots. It fades out below 1e-3
        // rad/s, which costs (1e-3/9)²/2 of it here.
        const double mu = 0.3;
        var contact = Contact.Of(t.Ball, Plane(mu)).ContactRadius;
        var a = 3 * Math.PI / 16 * mu * StandardGravity * contact / (t.Ball.Inertia.Xx / t.Ball.Mass);
        var shot = Simulator.Throw(t.Ball, Plane(mu), Rolling(t, 9), Options() with { PivotingFriction = true });
        foreach (var p in Points(shot, 20))
        {
            Assert.Equal(ShotPhase.Rolling, p.Phase);
            Near(9 - a * p.Time, p.AngularVelocity.Z, 3e-8, $"spin about the normal at {p.Time} s");
            Near(t.Start.Speed, p.Speed, 1e-9, $"speed at {p.Time} s");
        }
    }

    [Property]
    public void Pivoting_friction_wears_the_spin_about_the_normal_and_never_gives_energy(IsotropicThrowing t)
    {
        var shot = Simulator.Throw(t.Ball, t.Lane, t.Start, Options() with { PivotingFriction = true });
        var (spin, energy) = (Math.Abs(shot.Start.AngularVelocity.Z), shot.Start.Energy);
        foreach (var p in Points(shot))
        {
            Assert.True(Math.Abs(p.AngularVelocity.Z) <= spin + 1e-8, $"|ω·n| rises by {Math.Abs(p.AngularVelocity.Z) - spin:E2} at {p.Time} s");
            Assert.True(p.Energy <= energy + 1e-8, $"energy rises by {p.Energy - energy:E2} J at {p.Time} s");
            (spin, energy) = (Math.Abs(p.AngularVelocity.Z), p.Energy);
        }
        Near(shot.Start.Energy + shot.End.FrictionWork, shot.End.Energy, 1e-9 * shot.Start.Energy, "energy at the end");
    }

    [Property]
    public void Dry_friction_brings_the_ball_to_rest_and_leaves_it_there(IsotropicThrowing t)
    {
        // From 1 m/s at 0.05 g/(1 + k²/R²) it rests after some 3 s; its spin about the normal, from 0.2 rad/s, before that.
        var v = t.Start.Velocity.Unit;
        var start = t.Start with { VelocityX = v.X, VelocityY = v.Y, AngularVelocity = new(-v.Y / t.Ball.Radius, v.X / t.Ball.Radius, 0.2) };
        var options = Options(6) with { RollingResistance = true, RollingResistanceCoefficient = 0.05, PivotingFriction = true };
        var shot = Simulator.Throw(t.Ball, Plane(0.3), start, options);
        Assert.Equal(StopReason.TimeLimit, shot.StopReason);
        var stop = (1 + t.Beta) / (0.05 * StandardGravity);
        Near(start.Speed - 1 / stop * 0.5 * stop, shot.At(0.5 * stop).Speed, 1e-6, "speed at half the time to rest");
        Near(0, shot.End.Speed, 1e-5, "speed at the end");
        Near(0, shot.End.AngularVelocity.Z, 1e-4, "spin about the normal at the end");
        Near(new Vector3D(shot.Start.X, 0, 0) + 0.5 * stop * v, new(shot.End.X, shot.End.Y, 0), 1e-4, "way to rest");
    }

    [Property]
    public void Pivoting_takes_grip_from_sliding(IsotropicThrowing t)
    {
        // |s|/√(s² + (8 r_c ω_z/3π)²) of the friction is left, at the first instant.
        const double mu = 0.2;
        var contact = Contact.Of(t.Ball, Plane(mu)).ContactRadius;
        var p = Simulator.Throw(t.Ball, Plane(mu), t.Start, Options(0.01) with { PivotingFriction = true }).Start;
        var w = 8 * contact * p.AngularVelocity.Z / (3 * Math.PI);
        var expected = mu * p.NormalForce * p.SlipSpeed / Math.Sqrt(p.SlipSpeed * p.SlipSpeed + w * w);
        Near(expected, Math.Sqrt(p.ContactForce.X * p.ContactForce.X + p.ContactForce.Y * p.ContactForce.Y), 1e-11, "grip");
    }

    [Property]
    public void Magnus_force_is_square_to_the_travel_and_turns_the_heading_at_its_rate(IsotropicThrowing t)
    {
        // Without friction: m dv/dt = l ω_z n × v, l = ½ ρ C_L π R³, a circle at the angular velocity l ω_z/m.
        var shot = Simulator.Throw(t.Ball, Plane(0), t.Start, Options() with { MagnusForce = true });
        var l = 0.5 * 1.2 * Math.PI * Math.Pow(t.Ball.Radius, 3);
        var rate = l * shot.Start.AngularVelocity.Z / t.Ball.Mass;
        foreach (var p in Points(shot, 20))
        {
            Near(t.Start.Speed, p.Speed, 1e-10, $"speed at {p.Time} s");
            Near(0, p.DragWork, 1e-12, $"work of the air at {p.Time} s");
            Near(shot.Start.Heading - rate * p.Time, p.Heading, 1e-10, $"heading at {p.Time} s");
        }
    }

    [Property]
    public void Air_drag_alone_slows_a_ball_as_one_over_time(IsotropicThrowing t)
    {
        // Without friction: v = v₀/(1 + κ v₀ t), κ = ½ ρ C_d π R²/m.
        var shot = Simulator.Throw(t.Ball, Plane(0), t.Start, Options() with { AirDrag = true });
        var κ = 0.5 * 1.2 * 0.5 * Math.PI * t.Ball.Radius * t.Ball.Radius / t.Ball.Mass;
        foreach (var p in Points(shot, 20))
        {
            Near(t.Start.Speed / (1 + κ * t.Start.Speed * p.Time), p.Speed, 1e-10, $"speed at {p.Time} s");
            Near(shot.Start.AngularVelocity, p.AngularVelocity, 1e-10, $"spin at {p.Time} s");
        }
    }

    [Property]
    public void Tilted_topography_is_inclined_gravity_to_first_order(CentredThrowing t)
    {
        // What is left between the two is of second order: at every slope below slope² times the way that a body falls in the time. An
        // error of first order would stick out at the small ones.
        const double time = 0.8;
        foreach (var slope in new[] { 0.02, 0.002, 0.0002 })
        {
            var (across, along) = (0.9 * slope, -0.4 * slope);
            var norm = Math.Sqrt(1 + across * across + along * along);
            var lane = Plane(0.1);
            var tilted = Simulator.Throw(t.Ball, lane with { Topography = Topography.Tilted(across, along) }, t.Start, Options(time)).End;
            var inclined = Simulator.Throw(t.Ball, lane with { Gravity = -StandardGravity / norm * new Vector3D(across, along, 1) }, t.Start, Options(time)).End;
            Near(new Vector3D(inclined.X, inclined.Y, 0), new(tilted.X, tilted.Y, 0), slope * slope * 0.5 * StandardGravity * time * time, $"place at a slope of {slope}");
        }
    }

    [Property]
    public void On_an_incline_a_rolling_ball_gains_five_sevenths_of_what_a_sliding_block_would(IsotropicThrowing t, bool uniform)
    {
        var moment = 0.4 * t.Ball.Mass * t.Ball.Radius * t.Ball.Radius;
        var ball = uniform ? t.Ball with { Inertia = new(moment, moment, moment) } : t.Ball;
        var (sin, cos) = Math.SinCos(8 * Degree);
        var down = t.Start.Velocity.Cross(Vector3D.UnitZ).Unit;
        var lane = Plane(0.5) with { Gravity = StandardGravity * (sin * down - cos * Vector3D.UnitZ) };
        var shot = Simulator.Throw(ball, lane, Rolling(t), Options());
        var a = StandardGravity * sin * (uniform ? 5 / 7.0 : 1 / (1 + t.Beta));
        foreach (var p in Points(shot, 20))
        {
            Assert.Equal(ShotPhase.Rolling, p.Phase);
            Near(t.Start.Velocity + a * p.Time * down, Velocity(p), 1e-9, $"velocity at {p.Time} s");
        }
    }

    [Property]
    public void Rolling_with_an_offset_along_the_spin_axis_turns_the_heading(AxisymmetricThrowing t)
    {
        // m g d R/((I + m R²) v) to first order in d/R and in the turn of one revolution: 1 % here. The polar moment is the one that rolls.
        var (d, I) = (t.Ball.CentreOfMass.X, t.Ball.Inertia.Xx);
        var speed = t.Start.Speed;
        var start = t.Start with
        {
            VelocityX = 0,
            VelocityY = speed,
            Orientation = Rotation.Identity,
            AngularVelocity = new(-speed / t.Ball.Radius, 0, 0),
        };
        var shot = Simulator.Throw(t.Ball, Plane(0.5), start, Options());
        var rate = t.Ball.Mass * StandardGravity * d * t.Ball.Radius / ((I + t.Ball.Mass * t.Ball.Radius * t.Ball.Radius) * speed);
        var whole = shot.Duration * Math.Floor(shot.End.Revolutions) / shot.End.Revolutions;
        Near(rate, shot.At(whole).Heading / whole, 0.01 * Math.Abs(rate), "heading rate");
    }
}
