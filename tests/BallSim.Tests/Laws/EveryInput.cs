using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using static BallSim.Tests.Laws.Worlds;
using static BallSim.Units;

namespace BallSim.Tests.Laws;

/// <summary>One throw from anywhere in the space of inputs that the types let pass, their corners above all.</summary>
public sealed record AnyThrow(Ball Ball, Lane Lane, InitialState Start, SimulatorOptions Options)
{
    public override string ToString() => $"{Ball}; m {Ball.Mass}, R {Ball.Radius}, I {Ball.Inertia}, d {Ball.CentreOfMass}, cover {Ball.Cover}\n{Lane}; g {Lane.Gravity}, {Lane.Topography}, w {Lane.Width}, l {Lane.Length}\n"
        + $"{Start}; q {Start.Orientation}, v {Start.Velocity}, ω {Start.AngularVelocity}, loft {Start.Loft}\n{Options}";
}

/// <summary>
/// The whole input space. Every number is taken from its documented range: in the middle, at an end, or, where ends lie decades apart, evenly over the decades. Nothing here is a likely throw: a ball light as a feather or a metre in radius, gravity along the lane.
/// </summary>
public static class EveryInput
{
    public static Arbitrary<AnyThrow> AnyThrows() => (
        from ball in AnyBall
        from lane in AnyLane
        from start in AnyStart
        from options in AnyOptions
        select new AnyThrow(ball, lane, start, options)).ToArbitrary();

    /// <summary>Within a range, and often at its very ends.</summary>
    private static Gen<double> Within(double low, double high) => Gen.Frequency((6, Between(low, high)), (1, Gen.Constant(low)), (1, Gen.Constant(high)));

    /// <summary>Even over the decades of a range above zero.</summary>
    private static Gen<double> Decades(double low, double high) => Within(Math.Log(low), Math.Log(high)).Select(l => Math.Clamp(Math.Exp(l), low, high));

    // A sphere's moments are at most 2/5 ... 2/3 m R²; a body's least is anything above zero within the triangle inequality.
    private static Gen<Ball> AnyBall =>
        from mass in Decades(1e-3, 100)
        from radius in Decades(0.02, 1)
        from greatest in Decades(1e-3, 0.6)
        from middle in Within(0.5, 1)
        from least in Within(0.01, 1)
        from offset in Gen.Frequency((2, Gen.Constant(0.0)), (2, Decades(1e-6, 0.3)))
        from towards in Direction
        from hand in AnyHand
        from cover in AnyCover
        from roughness in Decades(0.01e-6, 5e-6)
        let i = mass * radius * radius * greatest
        let second = i * middle
        let third = Math.Min(second, Math.Max(i * least, (i - second) * 1.000001))
        select new Ball
        {
            Mass = mass,
            Radius = radius,
            Inertia = new(third, i, second),
            CentreOfMass = offset * radius * towards,
            Cover = cover,
            Finish = Finish.Measured(roughness),
            Marks = new() { Hand = hand },
        };

    private static Gen<Cover> AnyCover =>
        from pores in Within(0, 5e-6)
        from modulus in Decades(1e7, 1e12)
        from ratio in Within(0, 0.5)
        from absorption in Within(0, 100)
        select new Cover { Name = "any", Pores = pores, Modulus = modulus, PoissonRatio = ratio, Absorption = absorption };

    private static Gen<Lane> AnyLane =>
        from unbounded in Gen.Elements(true, false)
        from given in Gen.OneOf(Given, Within(0, 1).Select(FrictionMap.Constant), (from a in Within(0, 1) from b in Within(0, 1) select FrictionMap.Zones((0, a), (1, b), (2, a), (12, b))))
        from oil in Gen.OneOf(Oil, Within(0, 0.5e-3).Select(f => OilMap.Even(40 * Foot, f, 0.01)), Gen.Constant(OilMap.Dry))
        from ofFilm in Gen.Elements(true, false)
        let bare = (unbounded, ofFilm) switch
        {
            (true, true) => Lane.Unbounded(oil),
            (true, false) => Lane.Unbounded(given),
            (false, true) => Lane.Regulation with { Oil = oil },
            _ => Lane.Regulation with { GivenFriction = given },
        }
        from width in Within(0.9, 1.2)
        from length in Within(18.2753, 30)
        from roughness in Decades(0.01e-6, 5e-6)
        from modulus in Decades(0.1e9, 1000e9)
        from viscosity in Decades(0.001, 1)
        from temperature in Within(0, 50)
        from air in Within(0, 2)
        from gravity in Gen.Frequency((3, Gen.Constant(new Vector3D(0, 0, -StandardGravity))), (1, from d in Direction from size in Decades(0.01, 100) select size * new Vector3D(d.X, d.Y, -Math.Abs(d.Z) - 1e-3)))
        from slopes in Gen.ArrayOf(Within(-0.02, 0.02), 2)
        from level in Gen.Elements(true, false)
        select bare with
        {
            Width = width,
            Length = length,
            Roughness = roughness,
            Modulus = modulus,
            OilViscosity = viscosity,
            Temperature = temperature,
            AirDensity = air,
            Gravity = gravity,
            Topography = level ? Topography.Flat : Topography.Tilted(slopes[0], slopes[1]),
        };

    private static Gen<InitialState> AnyStart =>
        from x in Gen.Frequency((8, Within(-0.5, 0.5)), (1, Within(-1000, 1000)))
        from y in Gen.Frequency((4, Gen.Constant(0.0)), (4, Within(0, 18)), (1, Within(-1000, 1000)))
        from v in Gen.ArrayOf(Gen.OneOf(Within(-50, 50), Within(-10, 10), Gen.Constant(0.0)), 2)
        from size in Gen.OneOf(Gen.Constant(0.0), Decades(1e-6, 500), Within(0, 60))
        from about in Direction
        from orientation in Orientation
        from loft in Gen.Frequency((3, Gen.Constant(0.0)), (1, Within(0, 20)))
        from hand in AnyHand
        select new InitialState
        {
            X = x,
            Y = y,
            VelocityX = v[0],
            VelocityY = v[1],
            // The size of a vector may round over its largest.
            AngularVelocity = size * (1 - 1e-15) * about,
            Orientation = orientation,
            Loft = v[1] > 0 ? loft : 0,
            Hand = hand,
        };

    private static Gen<SimulatorOptions> AnyOptions =>
        from tolerance in Decades(1e-13, 1e-2)
        from acts in Gen.ArrayOf(Gen.Elements(true, false), 6)
        from drag in Within(0, 2)
        from lift in Within(0, 2)
        from rolling in Within(0, 0.1)
        from time in Decades(1e-3, 60)
        from steps in Gen.Elements(10, 3000)
        from transitions in Gen.Elements(1, 500)
        from friction in Calibration
        select new SimulatorOptions
        {
            Tolerance = tolerance,
            AirDrag = acts[0],
            MagnusForce = acts[1],
            RollingResistance = acts[2],
            PivotingFriction = acts[3],
            CoverOil = acts[4],
            FreshCover = acts[5],
            DragCoefficient = drag,
            LiftCoefficient = lift,
            RollingResistanceCoefficient = rolling,
            MaxTime = time,
            MaxSteps = steps,
            MaxTransitions = transitions,
            Friction = friction,
        };

    private static Gen<FrictionCalibration> Calibration =>
        from dry in Within(0.01, 1)
        from share in Within(0, 0.89)
        from scale in Decades(0.05, 20)
        from gap in Decades(0.01e-6, 10e-6)
        from entrainment in Decades(0.1, 20)
        from pickUp in Within(0, 1)
        let ceiling = Math.Clamp(dry * 0.1, 0.001, 0.5)
        let floor = Math.Clamp(dry * share, 0, Math.Min(0.5, 0.999 * dry - ceiling))
        select new FrictionCalibration { Dry = dry, Floor = Math.Max(0, floor), ViscousCeiling = ceiling, FilmScale = scale, GapFloor = gap, EntrainmentSpeed = entrainment, PickUp = pickUp };
}
