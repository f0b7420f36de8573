using System.Globalization;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Files.Json;

/// <summary>Values that stand by themselves and in no scenario, from JSON.</summary>
internal static class StudyReader
{
    private const string Sanded = "sanded at ";

    /// <summary>The marks on a ball.</summary>
    public static (string Name, Func<BallMarks, Vector3D?> Value, Func<BallMarks, Vector3D, BallMarks> With)[] Marks { get; } =
    [
        ("pin", m => m.Pin, (m, v) => m with { Pin = v }),
        ("massBias", m => m.MassBias, (m, v) => m with { MassBias = v }),
        ("positiveAxis", m => m.PositiveAxis, (m, v) => m with { PositiveAxis = v }),
        ("gripCentre", m => m.GripCentre, (m, v) => m with { GripCentre = v }),
        ("gripRight", m => m.GripRight, (m, v) => m with { GripRight = v }),
        ("gripUp", m => m.GripUp, (m, v) => m with { GripUp = v }),
        ("thumb", m => m.Thumb, (m, v) => m with { Thumb = v }),
        ("middleFinger", m => m.MiddleFinger, (m, v) => m with { MiddleFinger = v }),
        ("ringFinger", m => m.RingFinger, (m, v) => m with { RingFinger = v }),
    ];

    /// <summary>The grit number that a finish was sanded with, or null: a number of more than five figures is not in its name, and its roughness stands for it.</summary>
    public static double? GritOf(Finish finish) => finish.Name.StartsWith(Sanded, StringComparison.Ordinal)
        && double.TryParse(finish.Name.AsSpan(Sanded.Length), NumberStyles.Float, CultureInfo.InvariantCulture, out var grit)
        && grit is >= 100 and <= 10_000 && Balls.Finish.Sanded(grit) == finish ? grit : null;

    public static PositiveAxisPoint Axis(Field field)
    {
        var members = field.Members(["hand", .. Shapes.Axis.Names]);
        return Shapes.Axis.Read(members, new PositiveAxisPoint(0, 0, Hand(members)), "over", "up");
    }

    public static Release Release(Field field)
    {
        var members = field.Members([.. Shapes.Release.Names, "axis", "axisInBall"]);
        var release = Shapes.Release.Read(members, Shapes.BlankRelease, "speed");
        if (members.Optional("axis") is { } axis)
        {
            release = release with { Axis = Axis(axis) };
        }
        return members.Optional("axisInBall") is { } inBall ? release with { AxisInBall = Read(inBall, DrawingShapes.Direction) } : release;
    }

    public static Finish Finish(Field field)
    {
        var members = field.Members([.. Shapes.Finish.Names, "polished"]);
        if (members.Optional("polished") is { } polished)
        {
            members.Refuse("the finish is polished", Shapes.Finish.Names);
            return polished.Flag() ? Balls.Finish.Polished : throw polished.Wrong("false says nothing about the surface; give \"grit\" or \"roughness\" instead");
        }
        return members.Built(Shapes.Finish.Read(members, new FinishSheet { Name = "" }).Built);
    }

    public static SimulatorOptions Options(Field field)
    {
        string[] own = [.. Shapes.Options.Names, .. Shapes.Forces.Select(f => f.Name)];
        var members = field.Members([.. own, "friction"]);
        var options = Shapes.Options.Read(members, SimulatorOptions.Default);
        foreach (var (name, _, with) in Shapes.Forces)
        {
            options = members.Optional(name) is { } flag ? with(options, flag.Flag()) : options;
        }
        return members.Optional("friction") is { } friction ? options with { Friction = Shapes.Friction.Read(friction.Members(Shapes.Friction.Names), options.Friction) } : options;
    }

    public static EnsembleOptions Ensemble(Field field)
    {
        var members = field.Members("shot", "precision", "threads", "sideBySide", "engine");
        members.Refuse("an engine is a device of the machine, which no text holds; give what is read an engine of its own", "engine");
        var options = new EnsembleOptions();
        if (members.Optional("shot") is { } shot)
        {
            options = options with { Shot = Options(shot) };
        }
        if (members.Optional("precision") is { } precision)
        {
            options = options with { Precision = precision.Word("double", "single") == "single" ? Precision.Single : Precision.Double };
        }
        if (members.Optional("threads") is { } threads)
        {
            var number = threads.Number();
            options = threads.Built(() => options with { Threads = Within.Whole(number, "threads") });
        }
        return members.Optional("sideBySide") is { } sideBySide ? options with { SideBySide = sideBySide.Flag() } : options;
    }

    public static InitialState State(Field field)
    {
        var members = field.Members(["hand", .. StudyShapes.State.Names, "orientation", "angularVelocity"]);
        var state = StudyShapes.State.Read(members, new InitialState { Hand = Hand(members) });
        if (members.Optional("orientation") is { } orientation)
        {
            state = orientation.Built(() => state with { Orientation = Read(orientation, StudyShapes.Rotation) });
        }
        return members.Optional("angularVelocity") is { } spin ? spin.Built(() => state with { AngularVelocity = Read(spin, StudyShapes.Spin) }) : state;
    }

    public static Ball Ball(Field field)
    {
        var members = field.Members("mass", "radius", "inertia", "centreOfMass", "finish", "cover", "marks");
        var mass = members.Number(members.Required("mass", "\"15 lb\""), "mass", Text.UnitKind.Mass);
        var radius = members.Number(members.Required("radius", "\"4.27 in\""), "radius", Text.UnitKind.Length);
        var inertia = Read(members.Required("inertia", """{ "xx": "0.027 kg m2", "yy": "0.028 kg m2", "zz": "0.028 kg m2" }"""), StudyShapes.Inertia);
        var centre = members.Optional("centreOfMass") is { } off ? Read(off, StudyShapes.Length) : default;
        var ball = members.Built(() => new Ball { Mass = mass, Radius = radius, Inertia = inertia, CentreOfMass = centre });
        if (members.Optional("finish") is { } finish)
        {
            ball = ball with { Finish = Finish(finish) };
        }
        if (members.Optional("cover") is { } cover)
        {
            ball = ball with { Cover = PartReader.Cover(cover) };
        }
        if (members.Optional("marks") is not { } marksField)
        {
            return ball;
        }
        var given = marksField.Members(["hand", .. Marks.Select(m => m.Name)]);
        var marks = new BallMarks { Hand = Hand(given) };
        foreach (var (name, _, with) in Marks)
        {
            if (given.Optional(name) is { } mark)
            {
                var (direction, before) = (Read(mark, DrawingShapes.Direction), marks);
                marks = mark.Built(() => with(before, direction));
            }
        }
        return ball with { Marks = marks };
    }

    private static T Read<T>(Field field, Shape<T> shape)
        where T : struct => shape.Read(field.Members(shape.Names), default);

    private static Hand Hand(FieldSet members) => members.Optional("hand")?.Word("right", "left") == "left" ? BallSim.Hand.Left : BallSim.Hand.Right;
}
