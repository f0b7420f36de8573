using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BallSim.Tests.Laws;

/// <summary>What holds of every free body, by the closed form: Euler's equation, energy and momentum, the start, the period.</summary>
[Properties(Arbitrary = [typeof(TorqueFreeLaws.Cases)], MaxTest = 300)]
public class TorqueFreeLaws
{
    public sealed record Case(InertiaTensor Inertia, Vector3D Spin, Rotation Start, double Time)
    {
        public TorqueFreeSpin Motion => TorqueFreeSpin.Of(Inertia, Spin, Start);
    }

    public static class Cases
    {
        public static Arbitrary<Case> Case() => (
            from a in Between(0.02, 0.035)
            from b in Gen.OneOf(Between(0.02, 0.035), Gen.Constant(0.025))
            from c in Gen.OneOf(Between(0.02, 0.035), Gen.Constant(0.025))
            from turned in Gen.Elements(true, false)
            from q in Vector()
            from w in Between(-1, 1)
            from spin in Gen.OneOf(Vector(), Gen.Elements(Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ))
            from size in Between(1, 50)
            from time in Between(-20, 20)
            let start = new Rotation(w, q.X, q.Y, q.Z).Normalised
            select new Case(turned ? Turned(new(a, b, c), start) : new(a, b, c), size * spin, start, time)).ToArbitrary();

        private static Gen<Vector3D> Vector() =>
            from x in Between(-1, 1)
            from y in Between(-1, 1)
            from z in Between(0.01, 1)
            select new Vector3D(x, y, z).Unit;

        private static Gen<double> Between(double low, double high) => Gen.Choose(0, 1_000_000).Select(k => low + (high - low) * k / 1e6);

        private static InertiaTensor Turned(InertiaTensor tensor, Rotation by)
        {
            Vector3D Column(Vector3D e) => by.Apply(tensor.Apply(by.Inverse.Apply(e)));
            var (x, y, z) = (Column(Vector3D.UnitX), Column(Vector3D.UnitY), Column(Vector3D.UnitZ));
            return new(x.X, y.Y, z.Z, x.Y, x.Z, y.Z);
        }
    }

    [Property]
    public bool It_starts_as_given(Case c) =>
        (c.Motion.AngularVelocityInBall(0) - c.Spin).Length < 1e-12 * c.Spin.Length + 1e-13
        && (c.Motion.Orientation(0).Apply(Vector3D.UnitX) - c.Start.Apply(Vector3D.UnitX)).Length < 1e-12
        && (c.Motion.Orientation(0).Apply(Vector3D.UnitY) - c.Start.Apply(Vector3D.UnitY)).Length < 1e-12;

    [Property]
    public bool Energy_and_momentum_are_constant(Case c)
    {
        var ω = c.Motion.AngularVelocityInBall(c.Time);
        var L = c.Inertia.Apply(ω);
        return Math.Abs(0.5 * ω.Dot(L) / c.Motion.Energy - 1) < 1e-12
            && (c.Motion.Orientation(c.Time).Apply(L) - c.Motion.Momentum).Length < 1e-11 * c.Motion.Momentum.Length;
    }

    [Property]
    public bool Euler_s_equation_holds(Case c)
    {
        // A central difference of fourth order: its own error is of the order of (ω h)⁴ ω² and of rounding over h.
        var h = 2e-3 / c.Spin.Length;
        Vector3D At(double t) => c.Motion.AngularVelocityInBall(c.Time + t);
        var rate = (8 * (At(h) - At(-h)) - (At(2 * h) - At(-2 * h))) / (12 * h);
        var ω = At(0);
        return (c.Inertia.Apply(rate) + ω.Cross(c.Inertia.Apply(ω))).Length < 1e-9 * c.Spin.Dot(c.Spin) * 0.03;
    }

    [Property]
    public bool Orientation_turns_with_the_angular_velocity(Case c)
    {
        var h = 2e-3 / c.Spin.Length;
        var ω = c.Motion.Orientation(c.Time).Apply(c.Motion.AngularVelocityInBall(c.Time));
        foreach (var e in (Vector3D[])[Vector3D.UnitX, Vector3D.UnitZ])
        {
            Vector3D At(double t) => c.Motion.Orientation(c.Time + t).Apply(e);
            var rate = (8 * (At(h) - At(-h)) - (At(2 * h) - At(-2 * h))) / (12 * h);
            if ((rate - ω.Cross(At(0))).Length > 1e-8 * c.Spin.Length)
            {
                return false;
            }
        }
        return true;
    }

    [Property]
    public bool After_a_period_the_spin_is_back(Case c) => c.Motion.Period is not { } p
        || (c.Motion.AngularVelocityInBall(c.Time + p) - c.Motion.AngularVelocityInBall(c.Time)).Length < 1e-9 * c.Spin.Length;

    [Property]
    public bool A_polhode_is_closed_and_lies_on_the_sphere(Case c)
    {
        var curve = c.Motion.Polhode(25);
        return curve.All(p => Math.Abs(p.Length - 1) < 1e-14) && (c.Motion.Period is null || (curve[0] - curve[^1]).Length < 1e-10);
    }
}
