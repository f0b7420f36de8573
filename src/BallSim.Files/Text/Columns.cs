using System.Globalization;
using System.Text.Json;

namespace BallSim.Files.Text;

/// <summary>Tables for machines, the same columns as CSV (RFC 4180) and as JSON.</summary>
internal static class Columns
{
    /// <summary>
    /// A header and a line for every row. Numbers are written so that they read back exactly; what is not there is empty.
    /// </summary>
    public static void Csv<T>(Stream stream, IReadOnlyList<Column<T>> columns, IEnumerable<T> rows)
    {
        using var writer = new StreamWriter(stream, leaveOpen: true) { NewLine = "\n" };
        writer.WriteLine(Header(columns.Select(c => c.Name)));
        CsvLines(writer, columns, rows);
    }

    /// <summary>The line of the columns' names.</summary>
    public static string Header(IEnumerable<string> names) => string.Join(',', names.Select(Text));

    /// <summary>The lines alone.</summary>
    public static void CsvLines<T>(TextWriter writer, IReadOnlyList<Column<T>> columns, IEnumerable<T> rows)
    {
        foreach (var row in rows)
        {
            writer.WriteLine(string.Join(',', columns.Select(c => Cell(c.Value(row)))));
        }
    }

    /// <summary>One object; what is not there is null.</summary>
    public static void Json<T>(Utf8JsonWriter writer, IReadOnlyList<Column<T>> columns, T row)
    {
        foreach (var column in columns)
        {
            switch (column.Value(row))
            {
                case double number when double.IsFinite(number):
                    writer.WriteNumber(column.Name, number);
                    break;
                case bool flag:
                    writer.WriteBoolean(column.Name, flag);
                    break;
                case string text:
                    writer.WriteString(column.Name, text);
                    break;
                default:
                    writer.WriteNull(column.Name);
                    break;
            }
        }
    }

    private static string Cell(object? value) => value switch
    {
        double number => double.IsFinite(number) ? number.ToString("R", CultureInfo.InvariantCulture) : "",
        int number => number.ToString(CultureInfo.InvariantCulture),
        bool flag => flag ? "true" : "false",
        string text => Text(text),
        _ => "",
    };

    // A text that a spreadsheet would take for a formula (the wide signs too) gets an apostrophe in front, as spreadsheets themselves write it.
    private static string Text(string text)
    {
        var safe = text.Length > 0 && "=+-@\t\r\n＝＋－＠".Contains(text[0]) ? "'" + text : text;
        return safe.AsSpan().IndexOfAny(",\"\n\r") < 0 ? safe : $"\"{safe.Replace("\"", "\"\"")}\"";
    }
}
