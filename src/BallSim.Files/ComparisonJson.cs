using BallSim.Files.Json;
using BallSim.Files.Text;
using BallSim.Shots;

namespace BallSim.Files;

/// <summary>The rows of a comparison as a JSON list, with the names of <see cref="ComparisonCsv"/>; what does not exist is null.</summary>
public static class ComparisonJson
{
    /// <summary>Writes the rows.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="rows">The rows, in the order they are to stand.</param>
    public static void Write(TextWriter writer, IReadOnlyList<ComparisonRow> rows)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(rows);
        JsonFile.Write(writer, json =>
        {
            json.WriteStartArray();
            foreach (var row in rows)
            {
                json.WriteStartObject();
                Columns.Json(json, ShotColumns.Comparison, row);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        });
    }
}
