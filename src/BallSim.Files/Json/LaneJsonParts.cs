using System.Text.Json;
using BallSim.Lanes;

namespace BallSim.Files.Json;

/// <summary>Lanes and the maps on them to JSON and back. A map goes by its cells, in plain SI: whatever it was described by, it comes back to the last bit.</summary>
internal static class LaneJsonParts
{
    /// <summary>The fields of a map's cells.</summary>
    public static string[] CellNames { get; } = ["x", "y", "coefficients"];

    private static readonly string[] SlopeNames = ["crossSlope", "lengthSlope"];

    private static readonly string[] Own = ["unbounded", "oil", "friction", "surface", "gravity"];

    public static void Write(Utf8JsonWriter writer, MapCells cells)
    {
        writer.WriteStartObject();
        Members(writer, cells);
        writer.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter writer, OilMap oil)
    {
        writer.WriteStartObject();
        writer.WriteString("kind", oil.Kind);
        writer.WriteString("length", Text.UnitText.Of(oil.Length, Text.UnitKind.Length));
        Members(writer, oil.Cells);
        writer.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter writer, Topography surface)
    {
        writer.WriteStartObject();
        if (surface.Cells is { } heights)
        {
            Members(writer, heights);
        }
        else
        {
            writer.WriteNumber("crossSlope", surface.CrossSlope);
            writer.WriteNumber("lengthSlope", surface.LengthSlope);
        }
        writer.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter writer, Lane lane)
    {
        writer.WriteStartObject();
        Shapes.Lane.Write(writer, lane);
        writer.WriteBoolean("unbounded", !lane.HasEdges);
        writer.WritePropertyName("gravity");
        StudyWriter.Whole(writer, DrawingShapes.Direction, lane.Gravity);
        writer.WritePropertyName("oil");
        Write(writer, lane.Oil);
        if (lane.GivenFriction is { } friction)
        {
            writer.WritePropertyName("friction");
            Write(writer, friction.Cells);
        }
        if (lane.Topography.Cells is { } heights)
        {
            writer.WritePropertyName("surface");
            Write(writer, heights);
        }
        writer.WriteEndObject();
    }

    public static MapCells Cells(FieldSet members)
    {
        var (x, y, c) = (Numbers(members, "x"), Numbers(members, "y"), Numbers(members, "coefficients"));
        return members.Built(() => new MapCells(x, y, c));
    }

    public static OilMap Oil(Field field)
    {
        var members = field.Members(["kind", "length", .. CellNames]);
        var kind = members.Required("kind", "\"table\"").Text();
        var length = members.Number(members.Required("length", "\"40 ft\""), "length", Text.UnitKind.Length);
        var cells = Cells(members);
        return members.Built(() => OilMap.FromCells(kind, length, cells));
    }

    public static Topography Surface(Field field)
    {
        var members = field.Members([.. SlopeNames, .. CellNames]);
        if (members.Optional("coefficients") is not null)
        {
            members.Refuse("the surface is given by its heights", SlopeNames);
            var cells = Cells(members);
            return members.Built(() => Topography.FromCells(cells));
        }
        members.Refuse("cells have coefficients, and these are missing", "x", "y");
        var across = members.Number(members.Required("crossSlope", "0.001"), "crossSlope", null);
        var along = members.Number(members.Required("lengthSlope", "0"), "lengthSlope", null);
        return members.Built(() => Topography.Tilted(across, along));
    }

    public static Lane Lane(Field field)
    {
        var members = field.Members([.. Shapes.Lane.Names, .. Own]);
        var oil = members.Optional("oil") is { } film ? Oil(film) : OilMap.Dry;
        var start = members.Optional("unbounded") is { } unbounded && unbounded.Flag() ? Lanes.Lane.Unbounded(oil) : Lanes.Lane.Regulation with { Oil = oil };
        var lane = Shapes.Lane.Read(members, start);
        if (members.Optional("friction") is { } friction)
        {
            var cells = Cells(friction.Members(CellNames));
            lane = lane with { GivenFriction = friction.Built(() => FrictionMap.FromCells(cells)) };
        }
        if (members.Optional("surface") is { } surface)
        {
            var heights = Cells(surface.Members(CellNames));
            lane = lane with { Topography = surface.Built(() => Topography.FromCells(heights)) };
        }
        if (members.Optional("gravity") is { } gravity)
        {
            var (vector, before) = (DrawingShapes.Direction.Read(gravity.Members(DrawingShapes.Direction.Names), default, "x", "y", "z"), lane);
            lane = gravity.Built(() => before with { Gravity = vector });
        }
        return lane;
    }

    private static void Members(Utf8JsonWriter writer, MapCells cells)
    {
        List(writer, "x", cells.X);
        List(writer, "y", cells.Y);
        List(writer, "coefficients", cells.Coefficients);
    }

    private static void List(Utf8JsonWriter writer, string name, IReadOnlyList<double> numbers)
    {
        writer.WriteStartArray(name);
        foreach (var number in numbers)
        {
            writer.WriteNumberValue(number);
        }
        writer.WriteEndArray();
    }

    private static double[] Numbers(FieldSet members, string name)
    {
        var list = members.Required(name, "[0, 1]");
        if (list.Value.ValueKind != JsonValueKind.Array)
        {
            throw list.Wrong($"{list.Written} must be a list of numbers");
        }
        return [.. list.Value.EnumerateArray().Select((v, k) => new Field(list.File, $"{list.Path}[{k}]", v).Number())];
    }
}
