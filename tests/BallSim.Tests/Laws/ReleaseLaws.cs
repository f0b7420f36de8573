using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Units;

namespace BallSim.Tests.Laws;

/// <summary>What holds of every release of every drilled ball.</summary>
[Properties(Arbitrary = [typeof(ReleaseLaws.Cases)], MaxTest = 300)]
public class ReleaseLaws
{
    public sealed record Case(Ball Ball, Release Release)
    {
        public InitialState State => Release.StartOn(Lane.Regulation, Ball);
    }

    public static class Cases
    {
        public static Arbitrary<Case> Case() => (
            from pinToAxis in Between(0.5 * Inch, 12.8 * Inch)
            from atPin in Between(-Math.PI, Math.PI)
            from atAxis in Between(-Math.PI, Math.PI)
            from over in Between(2 * Inch, 7 * Inch)
            from up in Between(-2 * Inch, 2 * Inch)
            from hand in Gen.Elements(Hand.Right, Hand.Left)
            from board in Between(0.5, 39.5)
            from launch in Between(-20 * Degree, 20 * Degree)
            from speed in Between(0.5, 17.5)
            from spin in Between(0.1, 80)
            from rotation in Between(-179.9 * Degree, 179.9 * Degree)
            from tilt in Between(-89.9 * Degree, 89.9 * Degree)
            from phase in Between(-2 * Math.PI, 2 * Math.PI)
            let ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch, centreOfMass: new(3e-4, -2e-4, 5e-4))
            select new Case(ball.LayOut(new(pinToAxis, atPin, atAxis), Grip.Fingertip, new(over, up, hand)), new Release
            {
                Board = board,
                LaunchAngle = launch,
                Speed = speed,
                SpinRate = spin,
                AxisRotation = rotation,
                AxisTilt = tilt,
                RollPhase = phase,
            })).ToArbitrary();

        private static Gen<double> Between(double low, double high) => Gen.Choose(0, 1_000_000).Select(k => low + (high - low) * k / 1e6);
    }

    [Property]
    public bool What_was_released_is_read_back(Case c)
    {
        var spin = SpinAxis.From(c.State.Velocity, c.State.AngularVelocity, c.State.Hand);
        // Near an upright axis the rotation is known only to rounding over the cosine of the tilt.
        return Math.Abs(spin.SpinRate - c.Release.SpinRate) < 1e-13 * 80
            && Math.Abs(spin.AxisTilt - c.Release.AxisTilt) < 1e-14
            && Math.Abs(spin.AxisRotation - c.Release.AxisRotation) * Math.Cos(c.Release.AxisTilt) < 1e-14;
    }

    [Property]
    public bool The_other_hand_is_the_mirror_image(Case c)
    {
        var (expected, got) = (Mirror.Of(c.State), (c with { Ball = Mirror.Of(c.Ball), Release = c.Release with { Board = 40 - c.Release.Board } }).State);
        // A quaternion and its opposite are the same rotation.
        var (p, q) = (expected.Orientation, got.Orientation);
        return Math.Abs(expected.X - got.X) < 1e-15 && expected.Velocity == got.Velocity && expected.Hand == got.Hand
            && (expected.AngularVelocity - got.AngularVelocity).Length < 1e-13
            && Math.Abs(Math.Abs(p.W * q.W + p.X * q.X + p.Y * q.Y + p.Z * q.Z) - 1) < 1e-14
            && (p.Apply(new(1, 2, 3)) - q.Apply(new(1, 2, 3))).Length < 1e-10;
    }

    [Property]
    public bool The_positive_axis_point_is_on_the_spin_axis_of_the_hand(Case c)
    {
        var hand = c.State.Hand == Hand.Right ? 1 : -1;
        return (c.State.Orientation.Apply(c.Ball.Marks.PositiveAxis!.Value) - hand * c.State.AngularVelocity.Unit).Length < 1e-13;
    }

    [Property]
    public bool At_phase_zero_no_other_phase_has_the_grip_further_behind(Case c)
    {
        double Behind(double phase)
        {
            var state = (c.Release with { RollPhase = phase }).StartOn(Lane.Regulation, c.Ball);
            return -state.Orientation.Apply(c.Ball.Marks.GripCentre!.Value).Dot(state.Velocity.Unit);
        }
        return Behind(c.Release.RollPhase) <= Behind(0) + 1e-13;
    }

    [Property]
    public bool A_growing_phase_turns_the_ball_the_way_it_spins(Case c)
    {
        // Rigid rotation: dr/dφ = ω/|ω| × r, by a central difference over 2e-4 rad (error of third order, 2e-9).
        const double δ = 1e-4;
        var phase = c.Release.RollPhase / 2;
        Vector3D Grip(double φ) => (c.Release with { RollPhase = φ }).StartOn(Lane.Regulation, c.Ball).Orientation.Apply(c.Ball.Marks.GripCentre!.Value);
        var rate = (Grip(phase + δ) - Grip(phase - δ)) / (2 * δ);
        return (rate - c.State.AngularVelocity.Unit.Cross(Grip(phase))).Length < 1e-8;
    }
}
