using System.Globalization;
using System.Text.Json;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Friction;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Files.Json;

/// <summary>Values that stand by themselves and in no scenario, to JSON.</summary>
internal static class StudyWriter
{
    /// <summary>All the numbers of a table, as an object.</summary>
    public static void Whole<T>(Utf8JsonWriter writer, Shape<T> shape, T value)
    {
        writer.WriteStartObject();
        shape.Write(writer, value);
        writer.WriteEndObject();
    }

    public static void Axis(Utf8JsonWriter writer, PositiveAxisPoint axis)
    {
        writer.WriteStartObject();
        Hand(writer, axis.Hand);
        Shapes.Axis.Write(writer, axis);
        writer.WriteEndObject();
    }

    public static void Release(Utf8JsonWriter writer, Release release)
    {
        writer.WriteStartObject();
        Shapes.Release.Write(writer, release);
        if (release.Axis is { } axis)
        {
            writer.WritePropertyName("axis");
            Axis(writer, axis);
        }
        Named(writer, "axisInBall", DrawingShapes.Direction, release.AxisInBall);
        writer.WriteEndObject();
    }

    public static void Finish(Utf8JsonWriter writer, Finish finish)
    {
        writer.WriteStartObject();
        if (finish == Balls.Finish.Polished)
        {
            writer.WriteBoolean("polished", true);
        }
        else if (StudyReader.GritOf(finish) is { } grit)
        {
            writer.WriteNumber("grit", grit);
        }
        else
        {
            Shapes.Finish.Write(writer, new FinishSheet { Name = "", Roughness = finish.Roughness });
        }
        writer.WriteEndObject();
    }

    public static void Options(Utf8JsonWriter writer, SimulatorOptions options)
    {
        writer.WriteStartObject();
        ScenarioWriter.Options(writer, options);
        if (options.Friction != FrictionCalibration.Default)
        {
            writer.WriteStartObject("friction");
            Shapes.Friction.Write(writer, options.Friction, FrictionCalibration.Default);
            writer.WriteEndObject();
        }
        writer.WriteEndObject();
    }

    public static void Ensemble(Utf8JsonWriter writer, EnsembleOptions options)
    {
        // Left out without a word, it would come back as the processor.
        if (options.Engine != EnsembleEngine.Processor)
        {
            throw new NotSupportedException($"the engine ({options.Engine}) is a device of this machine, which no text holds; write options with {{ Engine = EnsembleEngine.Processor }} and give what is read an engine of its own");
        }
        writer.WriteStartObject();
        writer.WritePropertyName("shot");
        Options(writer, options.Shot);
        writer.WriteString("precision", options.Precision == Precision.Single ? "single" : "double");
        writer.WriteNumber("threads", options.Threads);
        writer.WriteBoolean("sideBySide", options.SideBySide);
        writer.WriteEndObject();
    }

    public static void State(Utf8JsonWriter writer, InitialState state)
    {
        writer.WriteStartObject();
        Hand(writer, state.Hand);
        StudyShapes.State.Write(writer, state);
        Named(writer, "orientation", StudyShapes.Rotation, state.Orientation);
        Named(writer, "angularVelocity", StudyShapes.Spin, state.AngularVelocity);
        writer.WriteEndObject();
    }

    public static void Ball(Utf8JsonWriter writer, Ball ball)
    {
        writer.WriteStartObject();
        writer.WriteString("mass", Text.UnitText.Of(ball.Mass, Text.UnitKind.Mass));
        writer.WriteString("radius", Text.UnitText.Of(ball.Radius, Text.UnitKind.Length));
        Named(writer, "inertia", StudyShapes.Inertia, ball.Inertia);
        Named(writer, "centreOfMass", StudyShapes.Length, ball.CentreOfMass);
        writer.WritePropertyName("finish");
        Finish(writer, ball.Finish);
        ScenarioWriter.Cover(writer, "cover", ball.Cover);
        writer.WriteStartObject("marks");
        Hand(writer, ball.Marks.Hand);
        foreach (var (name, mark, _) in StudyReader.Marks)
        {
            Named(writer, name, DrawingShapes.Direction, mark(ball.Marks));
        }
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void Named<T>(Utf8JsonWriter writer, string name, Shape<T> shape, T? value)
        where T : struct
    {
        if (value is { } given)
        {
            writer.WritePropertyName(name);
            Whole(writer, shape, given);
        }
    }

    private static void Hand(Utf8JsonWriter writer, Hand hand) => writer.WriteString("hand", hand == BallSim.Hand.Right ? "right" : "left");
}
