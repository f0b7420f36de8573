using System.Text.Json;
using BallSim.Files.Text;

namespace BallSim.Files.Json;

/// <summary>From a drawing to its JSON: what a file must give, and what differs from the defaults.</summary>
internal static class DrawingWriter
{
    public static void Whole(Utf8JsonWriter writer, BallDrawing drawing)
    {
        writer.WriteStartObject();
        writer.WriteString("name", drawing.Name);
        DrawingShapes.Whole.Write(writer, drawing, DrawingShapes.Blank);
        writer.WriteStartObject("cover");
        DrawingShapes.Cover.Write(writer, drawing);
        ScenarioWriter.Cover(writer, "material", drawing.Material);
        writer.WriteEndObject();
        writer.WriteStartObject("filler");
        DrawingShapes.Filler.Write(writer, drawing);
        writer.WriteEndObject();
        if (drawing.Cores.Count > 0)
        {
            writer.WriteStartArray("cores");
            foreach (var core in drawing.Cores)
            {
                Piece(writer, core);
            }
            writer.WriteEndArray();
        }
        Turned(writer, drawing.Turns);
        writer.WriteEndObject();
    }

    private static void Piece(Utf8JsonWriter writer, CoreSheet core)
    {
        writer.WriteStartObject();
        writer.WriteString("form", DrawingShapes.Forms.First(f => f.Form == core.Form).Word);
        DrawingShapes.Core.Write(writer, core);
        if (core.File is { } file)
        {
            writer.WriteString("file", file);
            writer.WriteString("unit", DrawingShapes.MeshUnits.First(u => u.Size == core.FileUnit).Word);
        }
        if (core.Outline.Count > 0)
        {
            writer.WriteStartArray("outline");
            foreach (var point in core.Outline)
            {
                writer.WriteStartObject();
                DrawingShapes.Point.Write(writer, point);
                if (point.Through is { } through)
                {
                    writer.WriteStartObject("through");
                    DrawingShapes.Point.Write(writer, new OutlinePoint(through.Along, through.Off));
                    writer.WriteEndObject();
                }
                writer.WriteEndObject();
            }
            writer.WriteEndArray();
        }
        Turned(writer, core.Turns);
        if (core.Place != Vector3D.Zero)
        {
            writer.WriteStartObject("place");
            DrawingShapes.Place.Write(writer, core.Place, Vector3D.Zero);
            writer.WriteEndObject();
        }
        writer.WriteEndObject();
    }

    private static void Turned(Utf8JsonWriter writer, IReadOnlyList<CoreTurn> turns)
    {
        if (turns.Count > 0)
        {
            writer.WriteStartArray("turn");
            foreach (var turn in turns)
            {
                writer.WriteStartObject();
                writer.WriteStartObject("about");
                DrawingShapes.Direction.Write(writer, turn.About);
                writer.WriteEndObject();
                DrawingShapes.Turn.Write(writer, turn);
                writer.WriteEndObject();
            }
            writer.WriteEndArray();
        }
    }
}
