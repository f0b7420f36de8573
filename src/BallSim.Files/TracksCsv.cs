using BallSim.Files.Text;
using BallSim.Fitting;
using BallSim.Lanes;

namespace BallSim.Files;

/// <summary>
/// Tracked shots as CSV: a header with the name and the unit of every column, then a line for every point. Points of one shot stand together or not; what is not measured is left empty.
/// </summary>
/// <example><code>
/// shot,distance [ft],time [s],board,spin [rpm]
/// 1,1,0.04,24.1,351
/// 1,3,0.12,23.9,
/// 2,1,0.04,24.4,349
/// </code></example>
/// <remarks>
/// Columns, in any order: shot; distance or time or both; board (continuous, counted from the right) or x (positive to the right of the middle); speed; heading (positive to the right); spin; rotation; tilt. Lengths in ft, in, m, cm or mm, times in s or ms,
/// speeds in mph, km/h, m/s or ft/s, spin in rpm, rad/s or deg/s, angles in deg or rad. Lines that begin with # are remarks. Gaps, outliers, points that stand twice or out of order are no errors: each shot carries remarks about them, with
/// their lines.
/// </remarks>
public static class TracksCsv
{
    private const int LargestFile = 64 * 1024 * 1024;

    private static readonly (string Name, UnitKind? Kind)[] Known =
    [
        ("shot", null), ("distance", UnitKind.Length), ("time", UnitKind.Time), ("board", null), ("x", UnitKind.Length), ("speed", UnitKind.Speed),
        ("heading", UnitKind.Angle), ("spin", UnitKind.SpinRate), ("rotation", UnitKind.Angle), ("tilt", UnitKind.Angle),
    ];

    /// <summary>Reads a file of at most 64 MB.</summary>
    /// <param name="path">The file.</param>
    /// <param name="lane">The lane that boards are counted on; null: of regulation.</param>
    /// <exception cref="BadFileException">The file cannot be used; the message names file, line, column, value and what was expected.</exception>
    public static IReadOnlyList<TrackedShot> Read(string path, Lane? lane = null)
    {
        using var reader = TextFile.Opened(path, LargestFile);
        return Read(reader, path, lane);
    }

    /// <summary>Reads a text.</summary>
    /// <param name="reader">The text; it is read to its end and not closed.</param>
    /// <param name="name">What error messages call it.</param>
    /// <param name="lane">The lane that boards are counted on; null: of regulation.</param>
    /// <exception cref="BadFileException">The text cannot be used; the message names line, column, value and what was expected.</exception>
    public static IReadOnlyList<TrackedShot> Read(TextReader reader, string name, Lane? lane = null)
    {
        lane ??= Lane.Regulation;
        var table = NumberTable.Read(reader, name, Known, text: "shot");
        if (!table.Has("distance") && !table.Has("time"))
        {
            throw BadFile.At(name, $"line {table.HeaderLine}", "has neither a distance nor a time; expected \"distance [ft]\" or \"time [s]\"");
        }
        if (table.Has("board") && table.Has("x"))
        {
            throw BadFile.At(name, $"line {table.HeaderLine}", "has both board and x; expected one of them");
        }
        if (table.Rows.Count == 0)
        {
            throw BadFile.At(name, "", "has no point below its header");
        }
        List<TrackedShot> shots = [];
        foreach (var shot in table.Rows.GroupBy(r => r.Text.Length > 0 ? r.Text : "1"))
        {
            try
            {
                shots.Add(TrackedShot.Of(shot.Key, shot.Select(row => new TrackedPoint
                {
                    Line = row.Line,
                    Distance = row["distance"],
                    Time = row["time"],
                    X = row["x"] ?? (row["board"] is { } board ? lane.PlaceOf(board) : null),
                    Speed = row["speed"],
                    Heading = row["heading"],
                    SpinRate = row["spin"],
                    AxisRotation = row["rotation"],
                    AxisTilt = row["tilt"],
                })));
            }
            catch (ArgumentException e)
            {
                throw BadFile.At(name, $"shot {shot.Key}", Json.Worded.Sentence(e));
            }
        }
        return shots;
    }
}
