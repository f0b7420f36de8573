using System.Globalization;
using BallSim.Files.Text;
using BallSim.Lanes;

namespace BallSim.Files;

/// <summary>
/// A lane's measured surface as CSV: a line that states the unit of heights, a header with the distance's unit and the boards, then a line for every station down the lane.
/// </summary>
/// <example><code>
/// # height [in]
/// distance [ft],board 1,board 10,board 20,board 30,board 39
/// 0,0.004,0.010,0.012,0.009,0.002
/// 30,0.000,0.006,0.015,0.011,0.003
/// </code></example>
/// <remarks>Boards count from the right, increase, and may be any between 0.5 and 39.5 (the edges). Other lines that begin with # are remarks.</remarks>
public static class TopographyCsv
{
    private const int LargestFile = 4 * 1024 * 1024;
    private const int MostBoards = 400;
    private const int MostStations = 2000;

    /// <summary>Reads a file of at most 4 MB, 400 boards and 2000 stations.</summary>
    /// <exception cref="BadFileException">The file cannot be used; the message names file, line, value and what was expected.</exception>
    public static Topography Read(string path)
    {
        using var reader = TextFile.Opened(path, LargestFile);
        return Read(reader, path);
    }

    /// <summary>Reads a text.</summary>
    /// <param name="reader">The text; it is read to its end and not closed.</param>
    /// <param name="name">What error messages call it.</param>
    /// <exception cref="BadFileException">The text cannot be used; the message names line, value and what was expected.</exception>
    public static Topography Read(TextReader reader, string name)
    {
        ArgumentNullException.ThrowIfNull(reader);
        double? heightUnit = null;
        double distanceUnit = 0;
        List<double> boards = [], stations = [];
        List<double[]> rows = [];
        for (var line = 1; reader.ReadLine() is { } text; line++)
        {
            if (text.Trim() is not { Length: > 0 } trimmed)
            {
                continue;
            }
            if (trimmed.StartsWith('#'))
            {
                heightUnit = trimmed[1..].TrimStart().StartsWith("height", StringComparison.OrdinalIgnoreCase) ? UnitIn(trimmed, name, line) : heightUnit;
                continue;
            }
            var fields = trimmed.Split(',', StringSplitOptions.TrimEntries);
            if (boards.Count == 0)
            {
                if (fields.Length > MostBoards + 1)
                {
                    throw Bad(name, line, $"has {fields.Length - 1} boards; at most {MostBoards} are read");
                }
                distanceUnit = fields[0].StartsWith("distance", StringComparison.OrdinalIgnoreCase) ? UnitIn(fields[0], name, line)
                    : throw Bad(name, line, $"\"{fields[0]}\" is not the distance and its unit; expected \"distance [ft]\" or \"distance [m]\"");
                boards.AddRange(fields.Skip(1).Select(f => Number(f.StartsWith("board", StringComparison.OrdinalIgnoreCase) ? f[5..] : f, "a board, such as \"board 20\"", name, line)));
                continue;
            }
            if (fields.Length != boards.Count + 1)
            {
                throw Bad(name, line, $"has {fields.Length} fields; expected {boards.Count + 1}: the distance and {boards.Count} heights");
            }
            if (stations.Count == MostStations)
            {
                throw Bad(name, line, $"is one station more than the {MostStations} that are read");
            }
            var unit = heightUnit ?? throw Bad(name, line, "stands without a unit of height; expected a line \"# height [in]\" or \"# height [mm]\" above");
            stations.Add(distanceUnit * Number(fields[0], "a distance", name, line));
            rows.Add([.. fields.Skip(1).Select(f => unit * Number(f, "a height", name, line))]);
        }
        if (boards.Count == 0)
        {
            throw BadFile.At(name, "", "has no header; expected a line \"# height [in]\", a header \"distance [ft],board 1,...,board 39\" and at least two stations");
        }
        return Built(stations, boards, rows, name);
    }

    private static Topography Built(List<double> stations, List<double> boards, List<double[]> rows, string name)
    {
        var heights = new double[rows.Count, boards.Count];
        for (var k = 0; k < rows.Count; k++)
        {
            for (var i = 0; i < boards.Count; i++)
            {
                heights[k, i] = rows[k][i];
            }
        }
        try
        {
            return Topography.FromHeights(stations, boards, heights);
        }
        catch (ArgumentException e)
        {
            throw BadFile.At(name, "", Json.Worded.Sentence(e));
        }
    }

    private static double UnitIn(string text, string name, int line)
    {
        var (open, close) = (text.IndexOf('['), text.IndexOf(']'));
        var symbol = open >= 0 && close > open ? text[(open + 1)..close].Trim() : "";
        return UnitKind.Length.UnitNamed(symbol)?.Factor ?? throw Bad(name, line, $"\"{symbol}\" is not a unit of length; expected one of {UnitKind.Length.Allowed}, in square brackets");
    }

    private static double Number(string text, string what, string name, int line) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : throw Bad(name, line, $"\"{(text.Length <= 40 ? text : text[..40])}\" is not a number; expected {what}");

    private static BadFileException Bad(string name, int line, string sentence) => BadFile.At(name, $"line {line}", sentence);
}
