using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Units;

namespace BallSim.Files.Tests;

/// <summary>Every input value goes to JSON and comes back as itself, to the last bit, by generated code and without reflection.</summary>
[Properties(Replay = "(20261125,7)", MaxTest = 100)]
public class JsonRoundTripTests
{
    private static T Same<T>(T value, JsonTypeInfo<T> type)
    {
        var json = JsonSerializer.Serialize(value, type);
        var back = JsonSerializer.Deserialize(json, type)!;
        // A second time, too: what creeps, creeps here.
        Assert.Equal(json, JsonSerializer.Serialize(back, type));
        return back;
    }

    private static void Equal<T>(T value, JsonTypeInfo<T> type) => Assert.Equal(value, Same(value, type));

    // A stream of numbers; the end of a range now and then.
    private sealed class Any(int seed)
    {
        private readonly Random random = new(seed);

        public double In(double low, double high) => random.Next(12) switch { 0 => low, 1 => high, _ => Math.Clamp(low + (high - low) * random.NextDouble(), low, high) };

        public bool Flag() => random.Next(2) == 0;

        public int Pick(int count) => random.Next(count);

        public Vector3D Direction()
        {
            var (turn, height) = (In(-Math.PI, Math.PI), In(-1, 1));
            return new(Math.Sqrt(1 - height * height) * Math.Cos(turn), Math.Sqrt(1 - height * height) * Math.Sin(turn), height);
        }
    }

    private static Property For(Action<Any> holds) => Prop.ForAll(Gen.Choose(0, int.MaxValue - 1).ToArbitrary(), seed => holds(new(seed)));

    private static Hand AnyHand(Any a) => a.Flag() ? Hand.Right : Hand.Left;

    private static PositiveAxisPoint Axis(Any a) => new(a.In(-8 * Inch, 8 * Inch), a.In(-6 * Inch, 6 * Inch), AnyHand(a));

    private static Bore Bore(Any a) => new(a.In(0.4 * Inch, 1.6 * Inch), a.In(0.25 * Inch, 4 * Inch), a.In(-1.5 * Inch, 1.5 * Inch), a.In(-1.5 * Inch, 1.5 * Inch));

    private static Grip Grip(Any a) => a.Pick(4) switch
    {
        0 => Drilling.Grip.Fingertip,
        1 => Drilling.Grip.Conventional,
        _ => new() { MiddleSpan = a.In(1.5 * Inch, 6.5 * Inch), RingSpan = a.In(1.5 * Inch, 6.5 * Inch), Bridge = a.In(0.1 * Inch, 1 * Inch), Thumb = Bore(a), Middle = Bore(a), Ring = Bore(a), Thumbless = a.Flag() },
    };

    private static Release Release(Any a) => new()
    {
        Board = a.In(-1000, 1000),
        LaunchAngle = a.In(-20 * Degree, 20 * Degree),
        Speed = a.In(0.5, 17.5),
        SpinRate = a.In(0, 80),
        AxisRotation = a.In(-Math.PI, Math.PI),
        AxisTilt = a.In(-Math.PI / 2, Math.PI / 2),
        Loft = a.In(0, 3),
        RollPhase = a.In(-2 * Math.PI, 2 * Math.PI),
        Axis = a.Flag() ? Axis(a) : null,
        AxisInBall = a.Flag() ? a.Direction() : null,
    };

    private static Cover AnyCover(Any a) => a.Pick(4) switch
    {
        0 => Cover.Plastic,
        1 => Cover.Urethane,
        2 => Cover.Reactive,
        _ => new() { Name = "own, \"so\" = µ", Pores = a.In(0, 5e-6), Modulus = a.In(1e7, 1e12), PoissonRatio = a.In(0, 0.5), Absorption = a.In(0, 100) },
    };

    private static FrictionCalibration Friction(Any a) => new()
    {
        Dry = a.In(0.01, 1), Floor = a.In(0, 0.5), ViscousCeiling = a.In(0.001, 0.5), FilmScale = a.In(0.05, 20), GapFloor = a.In(0.01e-6, 10e-6), EntrainmentSpeed = a.In(0.1, 20), PickUp = a.In(0, 1),
    };

    private static SimulatorOptions Options(Any a) => new()
    {
        Tolerance = a.In(1e-13, 1e-2), AirDrag = a.Flag(), DragCoefficient = a.In(0, 2), MagnusForce = a.Flag(), LiftCoefficient = a.In(0, 2), RollingResistance = a.Flag(), RollingResistanceCoefficient = a.In(0, 0.1),
        PivotingFriction = a.Flag(), CoverOil = a.Flag(), FreshCover = a.Flag(), Friction = a.Flag() ? Friction(a) : new(), MaxTime = a.In(1e-3, 3600), MaxSteps = 10 + a.Pick(99_999_991), MaxTransitions = 1 + a.Pick(100_000),
    };

    private static Finish AnyFinish(Any a) => a.Pick(3) switch { 0 => Finish.Polished, 1 => Finish.Sanded(100 + a.Pick(9901)), _ => Finish.Measured(a.In(0.01e-6, 5e-6)) };

    private static Ball AnyBall(Any a)
    {
        var (mass, radius) = (a.In(2, 8), a.In(0.1, 0.12));
        var (i, share) = (mass * radius * radius * 0.35, a.In(0.9, 1));
        var ball = new Ball
        {
            Mass = mass,
            Radius = radius,
            Inertia = new(i, share * i, a.In(0.95, 1) * i, a.In(-1, 1) * 1e-3 * i, a.In(-1, 1) * 1e-3 * i, a.In(-1, 1) * 1e-3 * i),
            CentreOfMass = a.In(0, 2e-3) * a.Direction(),
            Finish = AnyFinish(a),
            Cover = AnyCover(a),
        };
        return ball with { Marks = new() { Pin = a.Direction(), MassBias = a.Flag() ? a.Direction() : null, PositiveAxis = a.Flag() ? a.Direction() : null, Thumb = a.Flag() ? a.Direction() : null, Hand = AnyHand(a) } };
    }

    [Property]
    public Property Values_of_the_hand_and_the_drill() => For(a =>
    {
        Equal(new Layout(a.In(0.1 * Inch, 13 * Inch), a.In(0, Math.PI), a.In(0, Math.PI)), BallSimJson.Layout);
        Equal(Axis(a), BallSimJson.PositiveAxisPoint);
        Equal(Bore(a), BallSimJson.Bore);
        Equal(Grip(a), BallSimJson.Grip);
        Equal(Release(a), BallSimJson.Release);
        Equal(new Scatter { Speed = a.In(0, 1), Board = a.In(0, 3), AxisTilt = a.In(0, 0.1) }, BallSimJson.Scatter);
    });

    [Property]
    public Property Values_of_the_ball() => For(a =>
    {
        Equal(AnyBall(a), BallSimJson.Ball);
        Equal(AnyCover(a), BallSimJson.Cover);
        Equal(AnyFinish(a), BallSimJson.Finish);
        Equal(new Vector3D(a.In(-1e3, 1e3), a.In(-1e-12, 1e-12), a.In(-1, 1)), BallSimJson.Vector3D);
        Equal(new Rotation(a.In(-1, 1), a.In(-1, 1), a.In(-1, 1), a.In(-1, 1)), BallSimJson.Rotation);
        Equal(new InertiaTensor(a.In(1e-3, 1), a.In(1e-3, 1), a.In(1e-3, 1), a.In(-1e-3, 1e-3), a.In(-1e-3, 1e-3), a.In(-1e-3, 1e-3)), BallSimJson.InertiaTensor);
    });

    [Property]
    public Property Values_of_the_study() => For(a =>
    {
        Equal(Friction(a), BallSimJson.FrictionCalibration);
        Equal(Options(a), BallSimJson.SimulatorOptions);
        Equal(new EnsembleOptions { Shot = Options(a), Precision = a.Flag() ? Precision.Single : Precision.Double, Threads = a.Pick(1025), SideBySide = a.Flag() }, BallSimJson.EnsembleOptions);
        Equal(new InitialState
        {
            X = a.In(-1000, 1000), Y = a.In(-1000, 1000), VelocityX = a.In(-50, 50), VelocityY = a.In(-50, 50), Loft = a.In(0, 20), Hand = AnyHand(a),
            Orientation = Rotation.About(a.Direction(), a.In(-3, 3)), AngularVelocity = a.In(0, 499) * a.Direction(),
        }, BallSimJson.InitialState);
    });

    [Fact]
    public void An_engine_is_not_lost_without_a_word()
    {
        var options = new EnsembleOptions { Threads = 3 };
        Assert.Same(EnsembleEngine.Processor, Same(options, BallSimJson.EnsembleOptions).Engine);
        // Any engine but that one will do; those of cards need a card.
        var other = (EnsembleEngine)Activator.CreateInstance(EnsembleEngine.Processor.GetType(), nonPublic: true)!;
        var refused = Assert.Throws<NotSupportedException>(() => JsonSerializer.Serialize(options with { Engine = other }, BallSimJson.EnsembleOptions));
        Assert.Contains("Engine = EnsembleEngine.Processor", refused.Message, StringComparison.Ordinal);
        var read = Assert.Throws<JsonException>(() => JsonSerializer.Deserialize("""{ "threads": 3, "engine": "cuda" }""", BallSimJson.EnsembleOptions));
        Assert.Contains("an engine is a device of the machine", read.Message, StringComparison.Ordinal);
    }

    [Property]
    public Property What_a_scenario_holds() => For(a =>
    {
        OilSheet[] oils =
        [
            new() { Shape = OilShape.Dry }, new() { Shape = OilShape.Even, Length = a.In(5, 18), Film = a.In(0, 0.5e-3), Runout = a.In(0.01, 2) },
            new() { Shape = OilShape.Tapered, Length = a.In(10, 18), Film = a.In(0, 1e-5), EndFilm = a.In(0, 1e-6), FullTo = a.In(0, 5) },
            new() { Shape = OilShape.Crowned, Length = a.In(10, 18), Volume = a.In(0, 1e-3), EndFraction = a.In(0, 1), FullFrom = a.In(1, 19), FullUpTo = a.In(20, 39), EdgeFraction = a.In(0, 1) },
        ];
        var oil = oils[a.Pick(4)];
        Equal(oil, BallSimJson.OilSheet);
        var lane = Lane.Regulation with
        {
            Width = a.In(0.9, 1.2), Length = a.In(18.2753, 30), Boards = 20 + a.Pick(41), Roughness = a.In(0.01, 5) * Micrometre, Modulus = a.In(1e8, 1e12), PoissonRatio = a.In(0, 0.5), OilViscosity = a.In(0.001, 1),
            Temperature = a.In(0, 50), AirDensity = a.In(0, 2), Topography = Topography.Tilted(a.In(-0.05, 0.05), a.In(-0.05, 0.05)),
        };
        Equal(new LaneSheet("Lane", lane, oil), BallSimJson.LaneSheet);
        Equal(new FinishSheet { Name = "F", Grit = a.In(100, 10_000) }, BallSimJson.FinishSheet);
        Equal(new Bowler { Name = "B", Axis = Axis(a), Grip = Grip(a), Scatter = new() { SpinRate = a.In(0, 5) } }, BallSimJson.Bowler);
        Equal(new BallSheet { Name = "S", Weight = a.In(6, 16) * Pound, LowRg = a.In(2.3, 2.9) * Inch, Differential = a.In(0.01, 0.1) * Inch, IntermediateDifferential = a.In(0, 0.01) * Inch, Cover = AnyCover(a) }, BallSimJson.BallSheet);
    });

    private static (double[] Places, double[,] Values) AnyTable(Any a, int rows, double high, double first, double step)
    {
        double[] places = [.. Enumerable.Range(0, 2 + a.Pick(3)).Select(i => first + i * step + a.In(0, step / 2))];
        var values = new double[rows, places.Length];
        for (var k = 0; k < rows; k++)
        {
            for (var i = 0; i < places.Length; i++)
            {
                values[k, i] = a.In(0, high);
            }
        }
        return (places, values);
    }

    private static OilMap AnyOil(Any a)
    {
        var (boards, films) = AnyTable(a, 3, 2e-5, 1, 9);
        return a.Pick(6) switch
        {
            0 => OilMap.Dry,
            1 => OilMap.Even(a.In(5, 18), a.In(0, 0.5e-3)),
            2 => OilMap.Tapered(a.In(0, 1e-5), a.In(0, 5), a.In(0, 1e-6), a.In(10, 18)),
            3 => OilMap.Crowned(a.In(10, 18), a.In(0, 1e-3), edgeFraction: a.In(0, 1)),
            4 => OilMap.Linear(a.In(-0.5e-3, 0.5e-3), a.In(-0.5e-3, 0.5e-3), a.In(-0.5e-3, 0.5e-3)),
            _ => OilMap.FromTable([0, a.In(1, 9), 10], boards, films),
        };
    }

    private static FrictionMap AnyFriction(Any a)
    {
        var (x, mu) = AnyTable(a, 2, 2, -0.5, 0.2);
        return a.Pick(4) switch
        {
            0 => FrictionMap.Constant(a.In(0, 2)),
            1 => FrictionMap.Zones((0, a.In(0, 2)), (a.In(1, 10), a.In(0, 2)), (12, a.In(0, 2))),
            2 => FrictionMap.Smoothstep(a.In(0, 2), a.In(0, 2), a.In(-1000, 0), a.In(1, 1000)),
            _ => FrictionMap.FromTable([0, a.In(1, 18)], x, mu),
        };
    }

    private static Topography AnySurface(Any a)
    {
        var (boards, heights) = AnyTable(a, 3, 2e-3, 1, 9);
        return a.Pick(3) switch { 0 => Topography.Flat, 1 => Topography.Tilted(a.In(-0.05, 0.05), a.In(-0.05, 0.05)), _ => Topography.FromHeights([0, a.In(5, 9), 18], boards, heights) };
    }

    [Property]
    public Property The_lane_and_what_lies_on_it() => For(a =>
    {
        var (oil, friction, surface) = (AnyOil(a), AnyFriction(a), AnySurface(a));
        Equal(oil, BallSimJson.OilMap);
        Equal(friction, BallSimJson.FrictionMap);
        Equal(surface, BallSimJson.Topography);
        var lane = (a.Flag() ? Lane.Regulation with { Oil = oil } : Lane.Unbounded(oil)) with
        {
            Width = a.In(0.9, 1.2), Boards = 20 + a.Pick(41), Temperature = a.In(0, 50), Topography = surface, Gravity = new(a.In(-1, 1), a.In(-1, 1), a.In(-20, -1)), GivenFriction = a.Flag() ? friction : null,
        };
        Equal(lane, BallSimJson.Lane);
    });

    [Fact]
    public void Maps_that_are_none_are_refused_at_their_place()
    {
        string Told<T>(string json, JsonTypeInfo<T> type) => Assert.Throws<JsonException>(() => JsonSerializer.Deserialize(json, type)).Message;
        var sixteen = string.Join(", ", Enumerable.Repeat("0.1", 16));
        Assert.Contains("coefficients has 3 numbers; 1 by 1 cells have 16", Told("""{ "x": [0, 1], "y": [0, 1], "coefficients": [1, 2, 3] }""", BallSimJson.FrictionMap));
        Assert.Contains("y must increase", Told($$"""{ "x": [0, 1], "y": [1, 1], "coefficients": [{{sixteen}}] }""", BallSimJson.FrictionMap));
        Assert.Contains("out of [0, 2]", Told($$"""{ "x": [0, 1], "y": [0, 1], "coefficients": [2.5, {{sixteen[5..]}}] }""", BallSimJson.FrictionMap));
        Assert.Contains("coefficients[1]", Told("""{ "x": [0, 1], "y": [0, 1], "coefficients": [0, "a"] }""", BallSimJson.FrictionMap));
        Assert.Contains("must be a list of numbers", Told("""{ "x": 1, "y": [0, 1], "coefficients": [0] }""", BallSimJson.FrictionMap));
        Assert.Contains("has no meaning here: the surface is given by its heights", Told($$"""{ "crossSlope": 0, "x": [0, 1], "y": [0, 1], "coefficients": [{{sixteen}}] }""", BallSimJson.Topography));
        Assert.Contains("does not press the ball onto the lane", Told("""{ "gravity": { "x": 0, "y": 0, "z": 9.8 } }""", BallSimJson.Lane));
    }

    [Fact]
    public void A_scenario_and_a_drawing_are_what_they_were()
    {
        using var text = new ScenarioText();
        var scenario = Scenario.Read(text.File("s.json", ScenarioText.Whole)) with { Options = new() { CoverOil = false, MaxSteps = 1234, Friction = new() { PickUp = 0.25 } } };
        var back = Same(scenario, BallSimJson.Scenario);
        Assert.Equal(scenario.Options, back.Options);
        Assert.Equal(scenario.Candidates().Select(c => (c.Ball, c.Lane, c.Release)), back.Candidates().Select(c => (c.Ball, c.Lane, c.Release)));
        var drawing = BallDrawing.Read(text.File("b.json", BuildText.Whole));
        Assert.Equal(drawing.Poured().Sheet.Ball.Properties, Same(drawing, BallSimJson.BallDrawing).Poured().Sheet.Ball.Properties);
    }

    [Fact]
    public void What_is_wrong_is_told_as_of_a_file()
    {
        string Told<T>(string json, JsonTypeInfo<T> type) => Assert.Throws<JsonException>(() => JsonSerializer.Deserialize(json, type)).Message;
        Assert.StartsWith("Release: speed: \"18 m/s\" is out of [0.5, 17.5] m/s; did you mean \"18 mph\"?", Told("""{ "speed": "18 m/s" }""", BallSimJson.Release));
        Assert.StartsWith("Layout: pinToAxes: is an unknown field; did you mean \"pinToAxis\"?", Told("""{ "pinToAxes": "4 in" }""", BallSimJson.Layout));
        Assert.StartsWith("SimulatorOptions: maxSteps: 10.5: maxSteps is a count; write a whole number", Told("""{ "maxSteps": 10.5 }""", BallSimJson.SimulatorOptions));
        Assert.Contains("outside the ball", Told("""{ "mass": "15 lb", "radius": "4 in", "inertia": { "xx": "0.02 kg m2", "yy": "0.02 kg m2", "zz": "0.02 kg m2" }, "centreOfMass": { "x": "5 in" } }""", BallSimJson.Ball));
    }
}
