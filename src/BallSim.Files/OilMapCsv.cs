using System.Globalization;
using BallSim.Files.Text;
using BallSim.Lanes;
using static BallSim.Units;

namespace BallSim.Files;

/// <summary>
/// Oil maps as CSV: a line that states the film's unit, a header that states the distance's, then a line for every station down the lane with the film on each of the 39 boards.
/// </summary>
/// <example><code>
/// # film [um]
/// distance [ft],board 1,board 2, ... ,board 39
/// 0,1.2,1.9, ... ,1.2
/// 8,1.2,1.9, ... ,1.2
/// </code></example>
/// <remarks>
/// Distances in ft, m or another length; films in um, mm, m or units of oil. Boards count from the right and stand in order, 1 to 39 or 39 to 1, with or without the word. Other lines
/// that begin with # are remarks. Beyond the last station the film holds: let a map end with a station of zeros, or two.
/// </remarks>
public static class OilMapCsv
{
    /// <summary>Boards of a lane.</summary>
    internal const int Boards = 39;

    private const int LargestFile = 4 * 1024 * 1024;

    /// <summary>Reads a file of at most 4 MB and 2000 stations.</summary>
    /// <exception cref="BadFileException">The file cannot be used; the message names file, line, column, value and what was expected.</exception>
    public static OilMap Read(string path, OilMapCsvOptions? options = null)
    {
        using var reader = TextFile.Opened(path, LargestFile);
        return Read(reader, path, options);
    }

    /// <summary>Reads a text.</summary>
    /// <param name="reader">The text; it is read to its end and not closed.</param>
    /// <param name="name">What error messages call it.</param>
    /// <param name="options">What the text leaves open, or null.</param>
    /// <exception cref="BadFileException">The text cannot be used; the message names line, column, value and what was expected.</exception>
    public static OilMap Read(TextReader reader, string name, OilMapCsvOptions? options = null) => new OilMapTable(name, options ?? new()).Read(reader);

    /// <summary>
    /// Writes the film on the 39 boards at the map's stations (at the foul line and the pins, if the map has none), replacing the file as a whole. The map read back is the same at these
    /// places, and everywhere if it was given at whole boards.
    /// </summary>
    /// <exception cref="BadFileException">The file cannot be written.</exception>
    public static void Write(string path, OilMap oil, OilMapCsvOptions? options = null) => BoundedFile.Replace(path, stream =>
    {
        using var writer = new StreamWriter(stream, leaveOpen: true);
        Write(writer, oil, options);
    });

    /// <summary>Writes as text; the writer is not closed.</summary>
    public static void Write(TextWriter writer, OilMap oil, OilMapCsvOptions? options = null)
    {
        options ??= new();
        var symbol = options.FilmUnit ?? "um";
        var unit = FilmUnit(symbol, options)
            ?? throw new ArgumentException($"FilmUnit \"{symbol}\" is not a unit of film; allowed: {UnitKind.Film.Allowed}", nameof(options));
        writer.Write($"# film [{symbol}]\ndistance [ft]");
        for (var board = 1; board <= Boards; board++)
        {
            writer.Write(FormattableString.Invariant($",board {board}"));
        }
        writer.Write('\n');
        foreach (var station in oil.Stations is { Count: > 0 } given ? given : [0, Lane.Regulation.Length])
        {
            writer.Write(Figure(station, Foot));
            for (var board = 1; board <= Boards; board++)
            {
                writer.Write(',');
                writer.Write(Figure(oil.FilmOnBoard(station, board), unit));
            }
            writer.Write('\n');
        }
    }

    /// <summary>One of the named unit, m, or null if there is no such unit.</summary>
    internal static double? FilmUnit(string symbol, OilMapCsvOptions options) =>
        UnitKind.Film.UnitNamed(symbol) is not { } unit ? null : unit.Symbol == "units" ? options.UnitFilm : unit.Factor;

    /// <summary>A figure that reads back as the value itself, if one does.</summary>
    private static string Figure(double value, double unit)
    {
        var number = value / unit;
        foreach (var candidate in (double[])[number, Math.BitIncrement(number), Math.BitDecrement(number)])
        {
            if (candidate * unit == value)
            {
                number = candidate;
                break;
            }
        }
        return number.ToString("R", CultureInfo.InvariantCulture);
    }
}
