using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using static BallSim.Units;

namespace BallSim.Tests.Laws;

/// <summary>One throw on a lane without edges and pins: what the laws of motion are tried on.</summary>
public record Throwing(Ball Ball, Lane Lane, InitialState Start)
{
    // Long enough to roll on nearly every lane, and past the pins' place.
    public const double Duration = 2.5;

    /// <summary>Gravity, contact and nothing else, to a tolerance far below what the laws are held to.</summary>
    public Shot Pure(double tolerance = 1e-10) => Simulator.Throw(Ball, Lane, Start, new() { Tolerance = tolerance, AirDrag = false, MaxTime = Duration, MaxSteps = 2_000_000 });

    public override string ToString() => $"{Ball}; {Lane}; {Start}; d = {Ball.CentreOfMass}; q = {Start.Orientation}";
}

/// <summary>The inertia is the same about every axis and the centre of mass in the centre.</summary>
public sealed record IsotropicThrowing(Ball Ball, Lane Lane, InitialState Start) : Throwing(Ball, Lane, Start)
{
    /// <summary>(k/R)².</summary>
    public double Beta => Ball.Inertia.Xx / (Ball.Mass * Ball.Radius * Ball.Radius);
}

/// <summary>Any tensor, the centre of mass in the centre.</summary>
public sealed record CentredThrowing(Ball Ball, Lane Lane, InitialState Start) : Throwing(Ball, Lane, Start);

/// <summary>Two equal moments, the centre of mass off the centre on the axis of the third.</summary>
public sealed record AxisymmetricThrowing(Ball Ball, Lane Lane, InitialState Start) : Throwing(Ball, Lane, Start);

/// <summary>Random balls that can be made, releases of both hands, lanes of every kind.</summary>
public static class Worlds
{
    public static Arbitrary<Throwing> Throwings() => Throwing(Drilled, (b, l, s) => new Throwing(b, l, s)).ToArbitrary();

    public static Arbitrary<IsotropicThrowing> Isotropic() => Throwing(IsotropicBall, (b, l, s) => new IsotropicThrowing(b, l, s)).ToArbitrary();

    public static Arbitrary<CentredThrowing> Centred() =>
        Throwing(Drilled.Select(b => b with { CentreOfMass = Vector3D.Zero }), (b, l, s) => new CentredThrowing(b, l, s)).ToArbitrary();

    public static Arbitrary<AxisymmetricThrowing> Axisymmetric() => Throwing(AxisymmetricBall, (b, l, s) => new AxisymmetricThrowing(b, l, s)).ToArbitrary();

    /// <summary>From a million steps: FsCheck's own doubles follow its size and would leave most of a range untried.</summary>
    public static Gen<double> Between(double low, double high) => Gen.Choose(0, 1_000_000).Select(k => low + (high - low) * k / 1e6);

    /// <summary>Even over the sphere.</summary>
    public static Gen<Vector3D> Direction =>
        from turn in Between(-Math.PI, Math.PI)
        from height in Between(-1, 1)
        let level = Math.Sqrt(1 - height * height)
        select new Vector3D(level * Math.Cos(turn), level * Math.Sin(turn), height);

    public static Gen<Rotation> Orientation => from axis in Direction from angle in Between(0, Math.PI) select Rotation.About(axis, angle);

    public static Gen<Hand> AnyHand => Gen.Elements(Hand.Right, Hand.Left);

    private static Gen<Ball> Undrilled =>
        from weight in Between(12 * Pound, 16 * Pound)
        from rg in Between(2.46 * Inch, 2.70 * Inch)
        from differential in Between(0, 0.06 * Inch)
        from share in Between(0, 1)
        from diameter in Between(8.50 * Inch, 8.595 * Inch)
        from offset in Between(0, 1e-3)
        from towards in Direction
        from roughness in Between(0.05e-6, 2e-6)
        from cover in Gen.Elements(Cover.Plastic, Cover.Urethane, Cover.Reactive)
        from hand in AnyHand
        select Ball.FromSpecification(weight, rg, differential, share * differential, diameter, offset * towards, finish: Finish.Measured(roughness), cover: cover)
            with { Marks = new() { Hand = hand } };

    /// <summary>Three pieces taken out near the surface: the tensor becomes full and the centre of mass moves by up to a few
    /// millimetres.</summary>
    public static Gen<Ball> Drilled =>
        from ball in Undrilled
        from grip in Direction
        from holes in Gen.ArrayOf(from mass in Between(0.02, 0.08) from depth in Between(0.01, 0.04) from aside in Direction select (mass, depth, aside), 3)
        select holes.Aggregate(ball, (b, h) => Without(b, h.mass, (b.Radius - h.depth) * (grip + 0.5 * h.aside).Unit));

    private static Gen<Ball> IsotropicBall =>
        from ball in Undrilled
        from k in Between(2.3 * Inch, 3.2 * Inch)
        let moment = ball.Mass * k * k
        select ball with { CentreOfMass = Vector3D.Zero, Inertia = new(moment, moment, moment) };

    private static Gen<Ball> AxisymmetricBall =>
        from ball in Undrilled
        from polar in Between(2.4 * Inch, 2.75 * Inch)
        from equatorial in Between(2.4 * Inch, 2.75 * Inch)
        from offset in Between(-2e-3, 2e-3)
        let I = ball.Mass * equatorial * equatorial
        select ball with { CentreOfMass = new(offset, 0, 0), Inertia = new(ball.Mass * polar * polar, I, I) };

    /// <summary>The ball less a point mass: parallel-axis theorem about the centre of the sphere, there and back.</summary>
    private static Ball Without(Ball ball, double mass, Vector3D at)
    {
        var left = ball.Mass - mass;
        var centre = (ball.Mass * ball.CentreOfMass - mass * at) / left;
        return ball with
        {
            Mass = left,
            Inertia = Plus(Plus(Plus(ball.Inertia, ball.Mass, ball.CentreOfMass), -mass, at), -left, centre),
            CentreOfMass = centre,
        };
    }

    private static InertiaTensor Plus(InertiaTensor I, double m, Vector3D p) => new(
        I.Xx + m * (p.Y * p.Y + p.Z * p.Z), I.Yy + m * (p.X * p.X + p.Z * p.Z), I.Zz + m * (p.X * p.X + p.Y * p.Y),
        I.Xy - m * p.X * p.Y, I.Xz - m * p.X * p.Z, I.Yz - m * p.Y * p.Z);

    public static Gen<Release> AnyRelease =>
        from board in Between(5, 35)
        from launch in Between(-2 * Degree, 5 * Degree)
        from speed in Between(5, 10)
        from spin in Between(5, 55)
        from rotation in Between(-20 * Degree, 110 * Degree)
        from tilt in Between(-10 * Degree, 40 * Degree)
        from phase in Between(-Math.PI, Math.PI)
        from axis in Direction
        select new Release
        {
            Board = board,
            LaunchAngle = launch,
            Speed = speed,
            SpinRate = spin,
            AxisRotation = rotation,
            AxisTilt = tilt,
            RollPhase = phase,
            AxisInBall = axis,
        };

    public static Gen<FrictionMap> Given => Gen.OneOf(
        from mu in Between(0.02, 0.3) select FrictionMap.Constant(mu),
        from a in Between(0.02, 0.1) from b in Between(0.1, 0.3) from at in Between(4, 14) select FrictionMap.Zones((0, a), (at, b), (at + 3, 0.7 * b)),
        from a in Between(0.02, 0.1) from b in Between(0.1, 0.3) from at in Between(4, 14) select FrictionMap.Smoothstep(a, b, at, at + 3),
        from mu in Gen.ArrayOf(Between(0.03, 0.3), 12) select FrictionMap.FromTable([0, 5, 12, 18], [-0.4, 0.1, 0.4], Table(mu, 4, 3)));

    public static Gen<OilMap> Oil => Gen.OneOf(
        from length in Between(25 * Foot, 50 * Foot) from film in Between(0.5e-6, 12e-6) select OilMap.Even(length, film),
        from length in Between(25 * Foot, 50 * Foot) from volume in Between(10 * Millilitre, 35 * Millilitre) select OilMap.Crowned(length, volume),
        from film in Between(5e-6, 10e-6) from perX in Between(-4e-6, 4e-6) from perY in Between(-0.4e-6, 0) select OilMap.Linear(film, perX, perY));

    public static Gen<Lane> Plane => Gen.OneOf(Given.Select(f => Lane.Unbounded(f)), Oil.Select(o => Lane.Unbounded(o)));

    private static double[,] Table(double[] values, int rows, int columns)
    {
        var table = new double[rows, columns];
        Buffer.BlockCopy(values, 0, table, 0, values.Length * sizeof(double));
        return table;
    }

    private static Gen<T> Throwing<T>(Gen<Ball> balls, Func<Ball, Lane, InitialState, T> make) =>
        from ball in balls from lane in Plane from release in AnyRelease select make(ball, lane, release.StartOn(lane, ball));
}
