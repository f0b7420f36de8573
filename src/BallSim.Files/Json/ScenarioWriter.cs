using System.Text.Json;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Files.Text;
using BallSim.Lanes;
using BallSim.Shots;

namespace BallSim.Files.Json;

/// <summary>
/// From a scenario to its JSON: what differs from the defaults, in units of the trade, each number as short as it reads back exactly.
/// </summary>
internal static class ScenarioWriter
{
    public static void Whole(Utf8JsonWriter writer, Scenario scenario)
    {
        writer.WriteStartObject();
        if (scenario.Title.Length > 0)
        {
            writer.WriteString("title", scenario.Title);
        }
        writer.WritePropertyName("bowler");
        Bowler(writer, scenario.Bowler);
        List(writer, "balls", scenario.Balls, Ball);
        List(writer, "layouts", scenario.Layouts, (w, l) => Object(w, l.Name, () => Shapes.Layout.Write(w, l.Value)));
        if (scenario.Finishes.Count > 0)
        {
            List(writer, "finishes", scenario.Finishes, Finish);
        }
        List(writer, "releases", scenario.Releases, (w, r) => Object(w, r.Name, () =>
        {
            Shapes.Release.Write(w, r.Value);
            if (r.Value.Axis is { } axis)
            {
                Axis(w, axis);
            }
        }));
        List(writer, "lanes", scenario.Lanes, Lane);
        var (options, standard) = (scenario.Options, SimulatorOptions.Default);
        if (options.Friction != standard.Friction)
        {
            writer.WriteStartObject("friction");
            Shapes.Friction.Write(writer, options.Friction, standard.Friction);
            writer.WriteEndObject();
        }
        if (options with { Friction = standard.Friction } != standard)
        {
            writer.WriteStartObject("options");
            Options(writer, options);
            writer.WriteEndObject();
        }
        writer.WriteEndObject();
    }

    /// <summary>What of the options differs from the defaults, the friction law's numbers left out.</summary>
    public static void Options(Utf8JsonWriter writer, SimulatorOptions options)
    {
        var standard = SimulatorOptions.Default;
        Shapes.Options.Write(writer, options, standard);
        foreach (var (name, value, _) in Shapes.Forces.Where(f => f.Value(options) != f.Value(standard)))
        {
            writer.WriteBoolean(name, value(options));
        }
    }

    public static void Ball(Utf8JsonWriter writer, BallSheet sheet)
    {
        if (sheet is { File: null, Drawing: { } drawing })
        {
            DrawingWriter.Whole(writer, drawing);
            return;
        }
        Object(writer, sheet.Name, () => OfNumbers(writer, sheet));
    }

    private static void OfNumbers(Utf8JsonWriter writer, BallSheet sheet)
    {
        if (sheet.File is { } file)
        {
            writer.WriteString("file", file);
            return;
        }
        Shapes.Ball.Write(writer, sheet, Shapes.BlankBall);
        Cover(writer, "cover", sheet.Cover);
        if (sheet.Density is { } density)
        {
            writer.WriteStartObject("density");
            DrawingShapes.Density.Write(writer, density);
            writer.WriteEndObject();
        }
    }

    public static void Bowler(Utf8JsonWriter writer, Bowler bowler)
    {
        writer.WriteStartObject();
        if (bowler.Name.Length > 0)
        {
            writer.WriteString("name", bowler.Name);
        }
        writer.WriteString("hand", bowler.Axis.Hand == Hand.Right ? "right" : "left");
        Axis(writer, bowler.Axis);
        writer.WritePropertyName("grip");
        Grip(writer, bowler.Grip);
        writer.WriteStartObject("scatter");
        Shapes.Scatter.Write(writer, bowler.Scatter);
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    public static void Axis(Utf8JsonWriter writer, PositiveAxisPoint axis)
    {
        writer.WriteStartObject("axis");
        Shapes.Axis.Write(writer, axis);
        writer.WriteEndObject();
    }

    public static void Grip(Utf8JsonWriter writer, Grip grip)
    {
        if (grip == Drilling.Grip.Fingertip || grip == Drilling.Grip.Conventional)
        {
            writer.WriteStringValue(grip == Drilling.Grip.Fingertip ? "fingertip" : "conventional");
            return;
        }
        writer.WriteStartObject();
        Shapes.Grip.Write(writer, grip);
        foreach (var (name, bore) in new[] { ("thumb", grip.Thumb), ("middle", grip.Middle), ("ring", grip.Ring) })
        {
            writer.WriteStartObject(name);
            Shapes.Bore.Write(writer, bore);
            writer.WriteEndObject();
        }
        if (grip.Thumbless)
        {
            writer.WriteBoolean("thumbless", true);
        }
        writer.WriteEndObject();
    }

    public static void Finish(Utf8JsonWriter writer, FinishSheet sheet) => Object(writer, sheet.Name, () =>
    {
        Shapes.Finish.Write(writer, sheet);
        if (sheet is { Grit: null, Roughness: null })
        {
            writer.WriteBoolean("polished", true);
        }
    });

    public static void Lane(Utf8JsonWriter writer, LaneSheet sheet) => Object(writer, sheet.Name, () =>
    {
        Shapes.Lane.Write(writer, sheet.Lane, Lanes.Lane.Regulation);
        if (sheet.TopographyFile is { } surface)
        {
            writer.WriteStartObject("topography");
            writer.WriteString("file", surface);
            writer.WriteEndObject();
        }
        writer.WritePropertyName("oil");
        Oil(writer, sheet.Oil);
    });

    public static void Oil(Utf8JsonWriter writer, OilSheet oil)
    {
        if (oil.Shape == OilShape.Dry)
        {
            writer.WriteStringValue("dry");
            return;
        }
        writer.WriteStartObject();
        if (oil.Shape == OilShape.File)
        {
            writer.WriteString("file", oil.File);
            if (oil.UnitFilm != Units.OilUnit)
            {
                writer.WriteString("unitFilm", UnitText.Of(oil.UnitFilm, UnitKind.Roughness));
            }
        }
        else
        {
            writer.WriteString("shape", Shapes.OilShapes.First(s => s.Shape == oil.Shape).Word);
            Shapes.Oil.Write(writer, oil);
        }
        writer.WriteEndObject();
    }

    public static void Cover(Utf8JsonWriter writer, string field, Cover cover)
    {
        writer.WritePropertyName(field);
        Cover(writer, cover);
    }

    public static void Cover(Utf8JsonWriter writer, Cover cover)
    {
        if (cover == Balls.Cover.Plastic || cover == Balls.Cover.Urethane || cover == Balls.Cover.Reactive)
        {
            writer.WriteStringValue(cover.Name);
            return;
        }
        writer.WriteStartObject();
        writer.WriteString("name", cover.Name);
        Shapes.Cover.Write(writer, cover);
        writer.WriteEndObject();
    }

    private static void List<T>(Utf8JsonWriter writer, string name, IReadOnlyList<T> items, Action<Utf8JsonWriter, T> item)
    {
        writer.WriteStartArray(name);
        foreach (var one in items)
        {
            item(writer, one);
        }
        writer.WriteEndArray();
    }

    private static void Object(Utf8JsonWriter writer, string name, Action content)
    {
        writer.WriteStartObject();
        writer.WriteString("name", name);
        content();
        writer.WriteEndObject();
    }
}
