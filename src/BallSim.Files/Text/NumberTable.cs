using System.Globalization;

namespace BallSim.Files.Text;

/// <summary>A table of numbers whose header names each column and its unit: "speed [mph]". Everything read is SI; what is empty is not there.</summary>
internal sealed class NumberTable
{
    // A quarter of an hour of a gyroscope at 1 kHz; some 200 bytes of memory each.
    private const int MostRows = 1_000_000;

    private readonly string[] columns;

    private NumberTable(string[] columns, int headerLine, IReadOnlyList<NumberRow> rows) => (this.columns, HeaderLine, Rows) = (columns, headerLine, rows);

    public int HeaderLine { get; }

    public IReadOnlyList<NumberRow> Rows { get; }

    public bool Has(string column) => Array.IndexOf(columns, column) >= 0;

    /// <summary>Reads; a column without a kind is a plain number, and the one called <paramref name="text"/> is a name.</summary>
    public static NumberTable Read(TextReader reader, string name, (string Name, UnitKind? Kind)[] known, string? text)
    {
        string[]? columns = null;
        Unit?[] units = [];
        var headerLine = 0;
        List<NumberRow> rows = [];
        for (var line = 1; reader.ReadLine() is { } raw; line++)
        {
            var trimmed = raw.Trim();
            if (trimmed.Length == 0 || trimmed.StartsWith('#'))
            {
                continue;
            }
            var fields = trimmed.Split(',', StringSplitOptions.TrimEntries);
            if (columns is null)
            {
                (columns, units) = Header(fields, name, line, known);
                headerLine = line;
                continue;
            }
            if (fields.Length != columns.Length)
            {
                throw BadFile.At(name, $"line {line}", $"has {fields.Length} fields; expected {columns.Length}, as the header has");
            }
            if (rows.Count == MostRows)
            {
                throw BadFile.At(name, $"line {line}", $"is one point more than the {MostRows} that are read; split the file");
            }
            var values = new double[fields.Length];
            Array.Fill(values, double.NaN);
            var label = "";
            for (var i = 0; i < fields.Length; i++)
            {
                if (columns[i] == text)
                {
                    label = fields[i];
                }
                else if (fields[i].Length > 0)
                {
                    values[i] = Number(fields[i], name, line, columns[i], units[i]);
                }
            }
            rows.Add(new(line, label, columns, values));
        }
        return columns is null ? throw BadFile.At(name, "", $"is empty; expected a header such as \"{string.Join(",", known.Select(k => k.Kind is { } kind ? $"{k.Name} [{kind.Units[0].Symbol}]" : k.Name))}\"")
            : new(columns, headerLine, rows);
    }

    private static (string[] Columns, Unit?[] Units) Header(string[] fields, string name, int line, (string Name, UnitKind? Kind)[] known)
    {
        if (fields.Length == 1 && fields[0].Contains(';'))
        {
            throw BadFile.At(name, $"line {line}", "separates its columns by semicolons; expected commas, and points in the numbers");
        }
        var columns = new string[fields.Length];
        var units = new Unit?[fields.Length];
        for (var i = 0; i < fields.Length; i++)
        {
            var (open, close) = (fields[i].IndexOf('['), fields[i].IndexOf(']'));
            var bare = (open >= 0 ? fields[i][..open] : fields[i]).Trim().ToLowerInvariant();
            var at = Array.FindIndex(known, k => k.Name == bare);
            if (at < 0)
            {
                throw BadFile.At(name, $"line {line}, column {i + 1}", $"\"{Short(fields[i])}\" is not a column; expected one of {string.Join(", ", known.Select(k => k.Name))}{Nearest.Question(bare, known.Select(k => k.Name))}");
            }
            if (Array.IndexOf(columns, bare) >= 0)
            {
                throw BadFile.At(name, $"line {line}, column {i + 1}", $"\"{bare}\" stands twice; expected each column once");
            }
            columns[i] = bare;
            if (known[at].Kind is not { } kind)
            {
                continue;
            }
            var symbol = open >= 0 && close > open ? fields[i][(open + 1)..close].Trim() : "";
            units[i] = kind.UnitNamed(symbol) ?? throw BadFile.At(name, $"line {line}, column {i + 1}", symbol.Length == 0
                ? $"\"{bare}\" stands without its unit; expected \"{bare} [{kind.Units[0].Symbol}]\""
                : $"\"{Short(symbol)}\" is not a unit of {kind.Name[(kind.Name.IndexOf(' ') + 1)..]}; expected one of {kind.Allowed}");
        }
        return (columns, units);
    }

    private static double Number(string field, string name, int line, string column, Unit? unit) =>
        double.TryParse(field, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number * (unit?.Factor ?? 1) + (unit?.Zero ?? 0)
            : throw BadFile.At(name, $"line {line}, {column}", $"\"{Short(field)}\" is not a number; expected a number{(unit is null ? "" : $" in {unit.Symbol}")}, with a point before its decimals");

    private static string Short(string text) => text.Length <= 40 ? text : text[..40];
}
