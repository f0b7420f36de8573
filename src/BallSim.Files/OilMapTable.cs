using System.Globalization;
using BallSim.Files.Text;
using BallSim.Lanes;
using CsvHelper;
using CsvHelper.Configuration;

namespace BallSim.Files;

/// <summary>One pass over the text of an oil map: the film's unit, the header, the stations. Every complaint names the line and the column.</summary>
internal sealed class OilMapTable(string name, OilMapCsvOptions options)
{
    private const int Boards = OilMapCsv.Boards;

    // One for every centimetre of the lane, and some; a map takes 5 kB of memory for each.
    private const int MostStations = 2000;

    // The limits of OilMap.FromTable, checked here already for the sake of the line and the column.
    private const double FarthestStation = 30;
    private const double ThickestFilm = 0.5e-3;

    private readonly List<double> stations = [];
    private readonly List<double[]> films = [];
    private double? filmUnit;
    private string filmSymbol = "";
    private double distanceUnit;
    private string distanceSymbol = "";
    private bool boardsFallToTheRight;
    private bool hasHeader;

    public OilMap Read(TextReader reader)
    {
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            HasHeaderRecord = false,
            TrimOptions = TrimOptions.Trim,
            MaxFieldSize = 1000,
            // A remark may hold a lone quotation mark.
            BadDataFound = bad =>
            {
                if (!bad.RawRecord.TrimStart().StartsWith('#'))
                {
                    throw Bad(bad.Context.Parser?.RawRow ?? 0, "", $"{Quoted(bad.RawRecord.Trim())} has a misplaced quotation mark; expected plain numbers between commas");
                }
            },
        };
        using var parser = new CsvParser(reader, configuration, leaveOpen: true);
        try
        {
            while (parser.Read())
            {
                var fields = parser.Record!;
                if (fields[0].StartsWith('#'))
                {
                    Remark(parser.RawRecord.Trim(), parser.RawRow);
                }
                else if (!hasHeader)
                {
                    Header(fields, parser.RawRow);
                }
                else
                {
                    Station(fields, parser.RawRow);
                }
            }
        }
        catch (CsvHelperException e) when (e.InnerException is BadFileException inner)
        {
            throw inner;
        }
        catch (MaxFieldSizeException)
        {
            throw Bad(parser.RawRow, "", "has a field of more than 1000 characters; expected numbers between commas");
        }
        if (!hasHeader)
        {
            throw BadFile.At(name, "", "is empty; expected a line \"# film [um]\", a header \"distance [ft],board 1,...,board 39\" and at least two stations");
        }
        if (stations.Count < 2)
        {
            throw BadFile.At(name, "", $"has {stations.Count} station(s) below its header; expected at least two, such as the foul line and the end of the oil");
        }
        return OilMap.FromTable(stations, [.. Enumerable.Range(1, Boards).Select(b => (double)b)], Films());
    }

    private void Remark(string text, int line)
    {
        var words = text[1..].Trim();
        if (!words.StartsWith("film", StringComparison.OrdinalIgnoreCase) || Bracketed(words) is not { } symbol)
        {
            return;
        }
        if (filmUnit is not null)
        {
            throw Bad(line, "", $"{Quoted(text)} states the film's unit again; expected it once, above the header");
        }
        filmSymbol = symbol;
        filmUnit = OilMapCsv.FilmUnit(symbol, options)
            ?? throw Bad(line, "", $"{Quoted(symbol)} is not a unit of film; expected one of {UnitKind.Film.Allowed}");
    }

    private void Header(string[] fields, int line)
    {
        hasHeader = true;
        if (fields.Length == 1 && fields[0].Contains(';'))
        {
            throw Bad(line, "", "separates its columns by semicolons; expected commas, and points in the numbers");
        }
        if (!fields[0].StartsWith("distance", StringComparison.OrdinalIgnoreCase) || Bracketed(fields[0]) is not { } symbol)
        {
            throw Bad(line, "column 1", $"{Quoted(fields[0])} is not the distance and its unit; expected \"distance [ft]\" or \"distance [m]\"");
        }
        distanceSymbol = symbol;
        distanceUnit = UnitKind.Length.UnitNamed(symbol)?.Factor
            ?? throw Bad(line, "column 1", $"{Quoted(symbol)} is not a unit of distance; expected one of {UnitKind.Length.Allowed}");
        CheckBoards(fields, line);
        if (filmUnit is null)
        {
            filmSymbol = options.FilmUnit
                ?? throw Bad(line, "", "stands without a unit of film; expected a line \"# film [um]\" or \"# film [units]\" above it, or the unit in the options");
            filmUnit = OilMapCsv.FilmUnit(filmSymbol, options)
                ?? throw new ArgumentException($"FilmUnit {Quoted(filmSymbol)} is not a unit of film; allowed: {UnitKind.Film.Allowed}", nameof(options));
        }
    }

    private void CheckBoards(string[] fields, int line)
    {
        var seen = new HashSet<int>();
        var boards = new List<int>();
        for (var i = 1; i < fields.Length; i++)
        {
            var text = fields[i].StartsWith("board", StringComparison.OrdinalIgnoreCase) ? fields[i][5..].Trim() : fields[i];
            if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var board) || board < 1 || board > Boards)
            {
                throw Bad(line, $"column {i + 1}", $"{Quoted(fields[i])} is not a board; expected \"board 1\" to \"board {Boards}\"");
            }
            if (!seen.Add(board))
            {
                throw Bad(line, $"column {i + 1}", $"board {board} stands twice; expected each board once");
            }
            boards.Add(board);
        }
        for (var board = 1; board <= Boards; board++)
        {
            if (!seen.Contains(board))
            {
                throw Bad(line, "", $"has no column for board {board}; expected boards 1 to {Boards} without a gap");
            }
        }
        boardsFallToTheRight = boards[0] == Boards;
        for (var i = 0; i < Boards; i++)
        {
            var expected = boardsFallToTheRight ? Boards - i : i + 1;
            if (boards[i] != expected)
            {
                throw Bad(line, $"column {i + 2}", $"board {boards[i]} is out of order; expected board {expected}");
            }
        }
    }

    private void Station(string[] fields, int line)
    {
        if (fields.Length != Boards + 1)
        {
            throw Bad(line, "", $"has {fields.Length} fields; expected {Boards + 1}: the distance and {Boards} films");
        }
        if (stations.Count == MostStations)
        {
            throw Bad(line, "", $"is one station more than the {MostStations} that are read");
        }
        var distance = Number(fields[0], line, "distance", distanceUnit, distanceSymbol, FarthestStation);
        if (stations.Count > 0 && distance <= stations[^1])
        {
            throw Bad(line, "distance", $"{fields[0]} {distanceSymbol} {(distance == stations[^1] ? "stands twice" : "is less than the station before it")}; "
                + $"expected more than {Figure(stations[^1] / distanceUnit)} {distanceSymbol}: stations go down the lane");
        }
        stations.Add(distance);
        var row = new double[Boards];
        for (var i = 0; i < Boards; i++)
        {
            var board = boardsFallToTheRight ? Boards - i : i + 1;
            row[board - 1] = Number(fields[i + 1], line, $"board {board}", filmUnit!.Value, filmSymbol, ThickestFilm);
        }
        films.Add(row);
    }

    private double Number(string text, int line, string column, double unit, string symbol, double largest)
    {
        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
        {
            throw Bad(line, column, $"{Quoted(text)} is not a number; expected {(column == "distance" ? "a distance" : "a film")} in {symbol}, with a point before its decimals");
        }
        var value = number * unit;
        if (value < 0 || value > largest)
        {
            throw Bad(line, column, $"{text} {symbol} is out of range; expected 0 to {Figure(largest / unit)} {symbol}{(value > largest ? " (is the unit right?)" : "")}");
        }
        return value;
    }

    private double[,] Films()
    {
        var table = new double[stations.Count, Boards];
        for (var k = 0; k < stations.Count; k++)
        {
            for (var b = 0; b < Boards; b++)
            {
                table[k, b] = films[k][b];
            }
        }
        return table;
    }

    /// <summary>What stands in square brackets, or null.</summary>
    private static string? Bracketed(string text)
    {
        var (open, close) = (text.IndexOf('['), text.IndexOf(']'));
        return open >= 0 && close > open ? text[(open + 1)..close].Trim() : null;
    }

    private static string Figure(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static string Quoted(string text) => text.Length <= 60 ? $"\"{text}\"" : $"\"{text[..57]}...\"";

    private BadFileException Bad(int line, string column, string sentence) =>
        BadFile.At(name, column.Length == 0 ? $"line {line}" : $"line {line}, {column}", sentence);
}
