using System.Text.Json;
using BallSim.Files.Json;
using BallSim.Files.Text;
using BallSim.Shots;

namespace BallSim.Files;

/// <summary>The numbers of one shot as JSON, the unit in each name; what does not exist (no entry, never rolled) is null.</summary>
public static class ShotJson
{
    /// <summary>Writes the numbers.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="candidate">What was thrown, for its names.</param>
    /// <param name="shot">The shot.</param>
    public static void Write(TextWriter writer, Candidate candidate, Shot shot)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(candidate);
        ArgumentNullException.ThrowIfNull(shot);
        JsonFile.Write(writer, json =>
        {
            json.WriteStartObject();
            Columns.Json(json, ShotColumns.Names, candidate);
            Columns.Json(json, ShotColumns.Numbers, shot);
            if (shot.Track.Warnings(candidate.Holes) is { Count: > 0 } warnings)
            {
                json.WriteString("track_warning", string.Join("; ", warnings));
            }
            else
            {
                json.WriteNull("track_warning");
            }
            json.WriteEndObject();
        });
    }
}
