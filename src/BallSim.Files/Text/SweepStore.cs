using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using BallSim.Sweeps;

namespace BallSim.Files.Text;

/// <summary>
/// A folder of finished blocks of a sweep. A block is computed in memory, written beside its place, forced to the disk and renamed; its last line holds which block it is, the number of its rows and their hash. So a block is
/// there as a whole or not at all, whenever the program is killed; and one that a disk has damaged is known. Whoever goes on computes what is missing.
/// </summary>
internal sealed class SweepStore
{
    private const string Manifest = "sweep.json";
    private const int MostColumns = 1000;

    // A thousand columns of 25 characters in the longest block.
    private const int LargestBlock = 128 * 1024 * 1024;

    private SweepStore(string folder, string fingerprint, int rows, IReadOnlyList<string> columns, IReadOnlyList<string> texts)
    {
        (Folder, Fingerprint, Rows, Columns, Texts) = (folder, fingerprint, rows, columns, texts);
        (RowsPerBlock, Blocks) = (PerBlock(rows), Count(rows));
    }

    public string Folder { get; }

    public string Fingerprint { get; }

    public int Rows { get; }

    public int RowsPerBlock { get; }

    public int Blocks { get; }

    public IReadOnlyList<string> Columns { get; }

    public IReadOnlyList<string> Texts { get; }

    /// <summary>
    /// Rows of a block. Some 64 blocks and more, so that little is lost and many machines find work; whole chunks of the ensemble, and never more than fits in memory with ease.
    /// </summary>
    public static int PerBlock(int rows) => Math.Clamp((int)((rows + 8191L) / 8192) * 128, 128, Sweep.BlockSize);

    public static int Count(int rows) => (int)((rows + PerBlock(rows) - 1L) / PerBlock(rows));

    /// <summary>The store of a plan, made if it is not there; one of another plan is refused.</summary>
    public static SweepStore For(SweepPlan plan, string fingerprint, string folder)
    {
        var store = new SweepStore(folder, fingerprint, plan.Rows, [.. SweepColumns.Of(plan).Select(c => c.Name)], [.. SweepColumns.Texts(plan)]);
        var manifest = Path.Combine(folder, Manifest);
        Guarded(folder, () => Directory.CreateDirectory(folder));
        if (!File.Exists(manifest))
        {
            if (Directory.EnumerateFiles(folder, "block-*.csv").Any())
            {
                throw BadFile.At(folder, "", $"holds blocks of a sweep but no {Manifest} that says of which; name another folder, or delete this one");
            }
            store.WriteManifest(manifest);
        }
        if (Open(folder).Fingerprint != fingerprint)
        {
            throw BadFile.At(folder, "", "holds blocks of another plan, or of this one before it or a file it names was changed; delete the folder to begin anew, or name another");
        }
        return store;
    }

    /// <summary>A store that is there.</summary>
    public static SweepStore Open(string folder)
    {
        var manifest = Path.Combine(folder, Manifest);
        if (!File.Exists(manifest))
        {
            throw BadFile.At(folder, "", Directory.Exists(folder) ? $"holds no {Manifest}: it is no folder of a sweep's shards" : "does not exist");
        }
        return Of(folder, Json.JsonFile.Opened(manifest));
    }

    /// <summary>The store that a manifest describes.</summary>
    public static SweepStore Of(string folder, Json.Field manifest)
    {
        var members = manifest.Members("fingerprint", "rows", "columns", "texts");
        string[] List(string name)
        {
            var field = members.Required(name, "[]");
            return field.Value.ValueKind == JsonValueKind.Array && field.Value.GetArrayLength() <= MostColumns && field.Value.EnumerateArray().All(e => e.ValueKind == JsonValueKind.String)
                ? [.. field.Value.EnumerateArray().Select(e => e.GetString()!)]
                : throw field.Wrong($"{field.Written} is no list of at most {MostColumns} names");
        }
        var (rows, columns) = (members.Required("rows", "1"), List("columns"));
        var count = rows.Number();
        if (!(count >= 1 && count <= Design.MostRows && count == Math.Truncate(count)))
        {
            throw rows.Wrong($"{rows.Written} must be a whole number in [1, {Design.MostRows}]");
        }
        if (columns.Length == 0 || columns[0] != "row" || columns.Distinct(StringComparer.Ordinal).Count() != columns.Length)
        {
            throw members.Required("columns", "[]").Wrong("must begin with \"row\" and name each column once");
        }
        return new(folder, members.Required("fingerprint", "\"\"").Text(), (int)count, columns, List("texts"));
    }

    /// <summary>Held while blocks are written: a second run of the same part is refused, and a killed one holds nothing.</summary>
    public IDisposable Held(string part)
    {
        var path = Path.Combine(Folder, $"{part}.lock");
        try
        {
            return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (UnauthorizedAccessException e)
        {
            throw BadFile.At(path, "", $"cannot be written: {e.Message}");
        }
        catch (IOException)
        {
            throw BadFile.At(Folder, "", $"another run of the same sweep ({part}) is writing here; wait for it, or stop it");
        }
    }

    /// <summary>True if the folder holds any block.</summary>
    public bool HasBlocks => Directory.EnumerateFiles(Folder, "block-*.csv").Any();

    public (int From, int Count) RowsOf(int block) => (block * RowsPerBlock, Math.Min(RowsPerBlock, Rows - block * RowsPerBlock));

    /// <summary>True if the block is there and is what was written.</summary>
    public bool Has(int block) => File.Exists(PathOf(block)) && Read(block) is not null;

    /// <summary>The lines of a block as bytes, or null if it is missing or damaged.</summary>
    public byte[]? Read(int block)
    {
        var path = PathOf(block);
        return File.Exists(path) ? Unsealed(BoundedFile.Bytes(path, LargestBlock), block) : null;
    }

    /// <summary>The lines of a block's bytes, or null if they are not what was sealed.</summary>
    public byte[]? Unsealed(byte[] bytes, int block)
    {
        var end = bytes.Length > 0 ? bytes.AsSpan(0, bytes.Length - 1).LastIndexOf((byte)'\n') + 1 : 0;
        return bytes.AsSpan(end).SequenceEqual(Seal(bytes.AsSpan(0, end), block)) ? bytes[..end] : null;
    }

    public void Write(int block, IReadOnlyList<Column<SweepRow>> columns, IEnumerable<SweepRow> rows)
    {
        var stream = new MemoryStream();
        using (var writer = new StreamWriter(stream, leaveOpen: true) { NewLine = "\n" })
        {
            Text.Columns.CsvLines(writer, columns, rows);
        }
        stream.Write(Seal(stream.GetBuffer().AsSpan(0, (int)stream.Length), block));
        Durable(PathOf(block), file => stream.WriteTo(file));
    }

    /// <summary>The blocks that are not there as they should be, as "3, 7-9".</summary>
    public string Missing()
    {
        var missing = Enumerable.Range(0, Blocks).Where(b => !Has(b)).ToArray();
        var runs = new List<string>();
        for (var i = 0; i < missing.Length;)
        {
            var j = i;
            while (j + 1 < missing.Length && missing[j + 1] == missing[j] + 1)
            {
                j++;
            }
            runs.Add(i == j ? $"{missing[i]}" : $"{missing[i]}-{missing[j]}");
            i = j + 1;
        }
        return string.Join(", ", runs);
    }

    /// <summary>Takes the folder away, what says of which sweep it is last.</summary>
    public void Delete() => Guarded(Folder, () =>
    {
        foreach (var file in Directory.EnumerateFiles(Folder, "block-*.csv*").ToArray())
        {
            File.Delete(file);
        }
        Directory.Delete(Folder, recursive: true);
    });

    /// <summary>Written beside the target under a name that no other machine takes, forced to the disk, renamed.</summary>
    public static void Durable(string path, Action<Stream> content)
    {
        var temporary = $"{path}.{Guid.NewGuid():N}.tmp";
        try
        {
            using (var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, 1 << 16))
            {
                content(stream);
                stream.Flush(flushToDisk: true);
            }
            File.Move(temporary, path, overwrite: true);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or NotSupportedException or ArgumentException or IOException and not BadFileException)
        {
            throw BadFile.At(path, "", Directory.Exists(path) ? "is a folder; name a file to write" : $"cannot be written: {e.Message}");
        }
        finally
        {
            File.Delete(temporary);
        }
    }

    private void WriteManifest(string path) => Durable(path, stream =>
    {
        using var writer = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" });
        writer.WriteStartObject();
        writer.WriteString("fingerprint", Fingerprint);
        writer.WriteNumber("rows", Rows);
        foreach (var (name, list) in new[] { ("columns", Columns), ("texts", Texts) })
        {
            writer.WriteStartArray(name);
            foreach (var text in list)
            {
                writer.WriteStringValue(text);
            }
            writer.WriteEndArray();
        }
        writer.WriteEndObject();
    });

    private string PathOf(int block) => Path.Combine(Folder, string.Create(CultureInfo.InvariantCulture, $"block-{block:D8}.csv"));

    private byte[] Seal(ReadOnlySpan<byte> content, int block) =>
        Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"# block {block}, {RowsOf(block).Count} rows, sha256 {Convert.ToHexStringLower(SHA256.HashData(content))}\n"));

    private static void Guarded(string folder, Action action)
    {
        try
        {
            action();
        }
        catch (Exception e) when (e is UnauthorizedAccessException or NotSupportedException or ArgumentException or IOException and not BadFileException)
        {
            throw BadFile.At(folder, "", $"cannot be written: {e.Message}");
        }
    }
}
