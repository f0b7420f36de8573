using System.Security.Cryptography;
using System.Text;
using BallSim.Files;
using BallSim.Files.Json;
using BallSim.Files.Text;

namespace BallSim.Fuzz;

/// <summary>
/// Every reader of files, as a function of bytes. A reader yields a value or a <see cref="BadFileException"/> with a sentence, never anything else: whatever else escapes is a bug. The fuzzer and the tests that replay its corpus share this table.
/// </summary>
internal static class Readers
{
    /// <summary>The folder whose files a scenario under test may name.</summary>
    public static string House { get; } = Path.Combine(AppContext.BaseDirectory, "house");

    public static IReadOnlyDictionary<string, Action<byte[]>> All { get; } = new SortedDictionary<string, Action<byte[]>>(StringComparer.Ordinal)
    {
        ["scenario"] = bytes => ScenarioReader.From(Root(bytes)).ToString(),
        ["ball"] = bytes => PartReader.OwnBall(Root(bytes)).Built(),
        ["drawing"] = bytes => DrawingReader.Own(Root(bytes)).Poured(),
        ["workpiece"] = bytes => Inspected(WorkpieceReader.Read(Root(bytes))),
        ["sweep"] = bytes => FirstRow(SweepReader.From(Root(bytes)).Plan),
        ["lane"] = bytes => LaneJsonParts.Lane(Root(bytes)).ToString(),
        ["oil"] = bytes => OilMapCsv.Read(TextFile.Decoded(bytes, "oil.csv"), "oil.csv").FilmAt(0.1, 10),
        ["topography"] = bytes => TopographyCsv.Read(TextFile.Decoded(bytes, "surface.csv"), "surface.csv").ToString(),
        ["tracks"] = bytes => TracksCsv.Read(TextFile.Decoded(bytes, "tracks.csv"), "tracks.csv").Sum(s => s.Points.Count),
        ["gyro"] = bytes => GyroCsv.Read(TextFile.Decoded(bytes, "gyro.csv"), "gyro.csv").Count.ToString(),
        ["stl"] = bytes => Stl.Read(bytes, "core.stl", Units.Millimetre, 1e-5).Report.ToString(),
        ["parts"] = Parts,
        ["unit"] = bytes => UnitText.TryParse(Encoding.UTF8.GetString(bytes), UnitKind.Length, out _, out _),
    };

    /// <summary>What a reader made of the bytes: "read", or its complaint. Anything but a complaint goes through.</summary>
    public static string Told(string reader, byte[] bytes)
    {
        try
        {
            All[reader](bytes);
            return "read";
        }
        catch (BadFileException e) when (e.Message.Length > 0)
        {
            return e.Message;
        }
    }

    private static Field Root(byte[] bytes) => JsonFile.Parsed(bytes, Path.Combine(House, "fuzzed.json"));

    // What a row's throw cannot be made from is that row's failure, kept in the table.
    private static void FirstRow(Sweeps.SweepPlan plan)
    {
        foreach (var row in Sweeps.Sweep.Block(plan, 0, 1))
        {
            _ = row.Outcome?.StopReason.ToString() ?? row.Failure ?? throw new InvalidOperationException("a row has neither an outcome nor a failure");
        }
    }

    private static void Inspected(Workpiece piece)
    {
        piece.Ball.Built();
        piece.Checked().ToString();
    }

    // A manifest and the lines of its first block, with a blank line between; the block is sealed here, as a stranger could.
    private static void Parts(byte[] bytes)
    {
        var cut = bytes.AsSpan().IndexOf("\n\n"u8);
        var store = SweepStore.Of(House, JsonFile.Parsed(bytes.AsMemory(0, cut < 0 ? bytes.Length : cut), "sweep.json"));
        byte[] lines = cut < 0 ? [] : bytes[(cut + 2)..];
        store.Unsealed(lines, 0);
        byte[] seal = Encoding.ASCII.GetBytes(FormattableString.Invariant($"# block 0, {store.RowsOf(0).Count} rows, sha256 {Convert.ToHexStringLower(SHA256.HashData(lines))}\n"));
        if (store.Unsealed([.. lines, .. seal], 0) is { } block)
        {
            SweepParquet.Write(new MemoryStream(), store, [block]);
        }
    }
}
