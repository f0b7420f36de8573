using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using Parquet;
using Parquet.Schema;

namespace BallSim.Files.Text;

/// <summary>A sweep's table as Parquet: the columns of the CSV, typed; what is empty there is null here.</summary>
internal static class SweepParquet
{
    // Rows held in memory at a time; fixed, so that the file does not depend on how the sweep was cut.
    private const int RowsPerGroup = 65_536;

    public static void Write(Stream stream, SweepStore store, IEnumerable<byte[]> blocks) => WriteAsync(stream, store, blocks).GetAwaiter().GetResult();

    private static async Task WriteAsync(Stream stream, SweepStore store, IEnumerable<byte[]> blocks)
    {
        var texts = store.Texts.ToHashSet(StringComparer.Ordinal);
        DataField[] fields = [.. store.Columns.Select((name, i) => i == 0 ? new DataField<int>(name) : texts.Contains(name) ? (DataField)new DataField<string>(name) : new DataField<double?>(name))];
        await using var writer = await ParquetWriter.CreateAsync(new ParquetSchema(fields), stream);
        var numbers = new double?[fields.Length][];
        var words = new string?[fields.Length][];
        var rows = new int[RowsPerGroup];
        for (var c = 1; c < fields.Length; c++)
        {
            var isText = texts.Contains(store.Columns[c]);
            numbers[c] = isText ? [] : new double?[RowsPerGroup];
            words[c] = isText ? new string?[RowsPerGroup] : [];
        }
        var filled = 0;
        async Task Flush()
        {
            using var group = writer.CreateRowGroup();
            await group.WriteAsync<int>(fields[0], rows.AsMemory(0, filled));
            for (var c = 1; c < fields.Length; c++)
            {
                if (words[c].Length > 0)
                {
                    await group.WriteAsync(fields[c], words[c][..filled]!);
                }
                else
                {
                    await group.WriteAsync<double>(fields[c], numbers[c].AsMemory(0, filled));
                }
            }
            group.CompleteValidate();
            filled = 0;
        }
        foreach (var block in blocks)
        {
            using var text = new StreamReader(new MemoryStream(block), Encoding.UTF8);
            using var csv = new CsvParser(text, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n", HasHeaderRecord = false });
            BadFileException Wrong(string sentence) => BadFile.At(store.Folder, $"line {csv.Row} of a block", $"{sentence}; delete the folder and begin anew");
            try
            {
                while (csv.Read())
                {
                    if (csv.Count != fields.Length || !int.TryParse(csv[0], NumberStyles.None, CultureInfo.InvariantCulture, out rows[filled]))
                    {
                        throw Wrong($"has {csv.Count} cells of {fields.Length}, or no number of a row");
                    }
                    for (var c = 1; c < fields.Length; c++)
                    {
                        var cell = csv[c];
                        if (words[c].Length > 0)
                        {
                            words[c][filled] = cell.Length > 0 ? cell : null;
                        }
                        else
                        {
                            numbers[c][filled] = cell.Length == 0 ? null
                                : double.TryParse(cell, CultureInfo.InvariantCulture, out var number) ? number : throw Wrong($"has no number in {store.Columns[c]}");
                        }
                    }
                    if (++filled == RowsPerGroup)
                    {
                        await Flush();
                    }
                }
            }
            catch (CsvHelperException)
            {
                throw Wrong("has a misplaced quotation mark");
            }
        }
        if (filled > 0)
        {
            await Flush();
        }
    }
}
