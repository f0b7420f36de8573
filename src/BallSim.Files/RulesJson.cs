using BallSim.Drilling;
using BallSim.Files.Json;

namespace BallSim.Files;

/// <summary>A rules check as JSON: a list with one entry for each limit, and the caution.</summary>
public static class RulesJson
{
    /// <summary>Writes the check.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="piece">The ball on the bench.</param>
    /// <param name="check">The check.</param>
    public static void Write(TextWriter writer, Workpiece piece, RulesCheck check)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(check);
        JsonFile.Write(writer, json =>
        {
            json.WriteStartObject();
            json.WriteString("ball", piece.Ball.Name);
            json.WriteNumber("failures", check.Failures.Count());
            json.WriteNumber("not_known", check.Unknown.Count());
            json.WriteString("advice", RulesCheck.Advice);
            json.WriteStartArray("lines");
            foreach (var line in check.Lines)
            {
                void Number(string name, double? si)
                {
                    if (si is { } value)
                    {
                        json.WriteNumber(name, value / line.Limit.UnitSize);
                    }
                    else
                    {
                        json.WriteNull(name);
                    }
                }
                json.WriteStartObject();
                json.WriteString("what", line.What);
                json.WriteString("unit", line.Limit.Unit);
                Number("measured", line.Measured);
                Number("at_least", line.Limit.AtLeast);
                Number("at_most", line.Limit.AtMost);
                json.WriteString("verdict", line.VerdictText.ToLowerInvariant());
                json.WriteString("source", line.SourceText);
                json.WriteString("note", piece.NoteOf(line));
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        });
    }
}
