using System.Diagnostics;
using System.Text;
using BallSim.Files.Text;
using static BallSim.Units;

namespace BallSim.Files.Tests;

/// <summary>Files that nobody writes by accident, or that another program wrote in another encoding: each gets a sentence, none a wrong meaning.</summary>
public sealed class HostileFileTests : IDisposable
{
    private readonly ScenarioText text = new();

    public void Dispose() => text.Dispose();

    private string Bytes(string name, byte[] content)
    {
        var path = Path.Combine(text.Folder, name);
        File.WriteAllBytes(path, content);
        return path;
    }

    private string Sparse(string name, long length)
    {
        var path = Path.Combine(text.Folder, name);
        using var stream = File.Create(path);
        stream.SetLength(length);
        return path;
    }

    [Fact]
    public void Every_reader_names_its_largest_file()
    {
        const int megabyte = 1024 * 1024;
        var (json, tracks, stl) = (Sparse("a.json", 4 * megabyte + 1), Sparse("t.csv", 64 * megabyte + 1), Sparse("c.stl", 64 * megabyte + 1));
        foreach (Action reading in (Action[])[() => Scenario.Read(json), () => Workpiece.Read(json), () => BallSheet.Read(json), () => BallDrawing.Read(json), () => SweepFile.Read(json),
            () => OilMapCsv.Read(json), () => TopographyCsv.Read(json)])
        {
            Assert.Equal("a.json: is larger than 4 MB, the most that is read", text.Complaint(reading));
        }
        Assert.Equal("t.csv: is larger than 64 MB, the most that is read", text.Complaint(() => TracksCsv.Read(tracks)));
        Assert.Equal("t.csv: is larger than 64 MB, the most that is read", text.Complaint(() => GyroCsv.Read(tracks)));
        Assert.Equal("c.stl: is larger than 64 MB, the most that is read", text.Complaint(() => Stl.Read(stl, Millimetre)));
    }

    [Fact]
    public void A_device_without_an_end_is_read_to_the_limit() =>
        Assert.Equal("/dev/zero: is larger than 4 MB, the most that is read", text.Complaint(() => Scenario.Read("/dev/zero")));

    [Fact]
    public void Tables_are_bounded_by_their_lines_too()
    {
        var boards = string.Join(',', Enumerable.Range(1, 39));
        var zeros = string.Concat(Enumerable.Repeat(",0", 39));
        var oil = new StringBuilder($"# film [um]\ndistance [ft],{boards}\n");
        for (var station = 0; station <= 2000; station++)
        {
            oil.Append(FormattableString.Invariant($"{station * 0.01:F2}{zeros}\n"));
        }
        Assert.Equal("oil.csv: line 2003: is one station more than the 2000 that are read", text.Complaint(() => OilMapCsv.Read(text.File("oil.csv", oil.ToString()))));

        var wide = $"# height [in]\ndistance [ft],{string.Join(',', Enumerable.Range(1, 401).Select(i => FormattableString.Invariant($"{i * 0.09:F2}")))}\n";
        Assert.Equal("s.csv: line 2: has 401 boards; at most 400 are read", text.Complaint(() => TopographyCsv.Read(text.File("s.csv", wide))));
        var high = "# height [in]\ndistance [ft],1,2\n" + string.Concat(Enumerable.Range(0, 2001).Select(i => $"{i},0,0\n"));
        Assert.Equal("s.csv: line 2003: is one station more than the 2000 that are read", text.Complaint(() => TopographyCsv.Read(text.File("s.csv", high))));

        var tracks = "time [s],x [m]\n" + string.Concat(Enumerable.Repeat(",\n", 1_000_001));
        Assert.Equal("t.csv: line 1000002: is one point more than the 1000000 that are read; split the file", text.Complaint(() => TracksCsv.Read(text.File("t.csv", tracks))));
    }

    [Fact]
    public void Json_may_nest_thirty_two_deep()
    {
        Assert.Contains("is nested more than 32 deep", text.Complaint(() => Scenario.Read(text.File("deep.json", new string('[', 2_000_000)))));
        Assert.Contains("must be an object", text.Complaint(() => Scenario.Read(text.File("flat.json", new string('[', 32) + new string(']', 32)))));
    }

    [Fact]
    public void Text_is_utf8_or_says_that_it_is_utf16()
    {
        const string oil = "# film [µm]\n";
        Assert.Equal("a.csv: line 1: has bytes that are not UTF-8, as other encodings write umlauts or \"µ\"; save it as UTF-8", text.Complaint(() => OilMapCsv.Read(Bytes("a.csv", Encoding.Latin1.GetBytes(oil)))));
        Assert.Equal("a.csv: is UTF-16 or no text at all; save it as UTF-8", text.Complaint(() => OilMapCsv.Read(Bytes("a.csv", new UnicodeEncoding(false, false).GetBytes(oil)))));
        foreach (var encoding in (Encoding[])[new UTF8Encoding(false), new UTF8Encoding(true), Encoding.Unicode, Encoding.BigEndianUnicode])
        {
            Assert.Equal("a µ", TextFile.Decoded([.. encoding.GetPreamble(), .. encoding.GetBytes("a µ")], "a").ReadToEnd());
        }
        var json = Encoding.UTF8.GetBytes(ScenarioText.Whole);
        Assert.Equal("One of each", Scenario.Read(Bytes("s.json", [0xEF, 0xBB, 0xBF, .. json])).Title);
        Assert.Equal("s.json: is UTF-16 or no text at all; save it as UTF-8", text.Complaint(() => Scenario.Read(Bytes("s.json", [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(ScenarioText.Whole)]))));
        Assert.Equal("s.json: line 2: has bytes that are not UTF-8, as other encodings write umlauts or \"µ\"; save it as UTF-8",
            text.Complaint(() => Scenario.Read(Bytes("s.json", Encoding.Latin1.GetBytes(ScenarioText.Whole.Replace("One of", "Über"))))));
    }

    [Fact]
    public void Half_a_character_is_no_text()
    {
        Assert.Equal("s.json: title: holds half a character, as \\ud800 without its other half", text.Complaint(() => Scenario.Read(text.With("One of each", "\\ud800"))));
        Assert.Equal("s.json: holds half a character, as \\ud800 without its other half", text.Complaint(() => Scenario.Read(text.With("\"title\"", "\"\\udc00\""))));
        Assert.Equal("\U0001F3B3", Scenario.Read(text.With("One of each", "\\ud83c\\udfb3")).Title);
    }

    [Fact]
    public void A_complaint_does_not_steer_the_terminal() =>
        Assert.Equal("t.csv: line 1, column 1: \"·[2J·\" is not a column; expected one of time, wx, wy, wz", text.Complaint(() => GyroCsv.Read(text.File("t.csv", "\e[2J\a,wx"))));

    [Theory]
    [InlineData("../oil.csv", "must stay in the folder of this file: no \"..\" and no empty part")]
    [InlineData("a/../oil.csv", "must stay in the folder of this file: no \"..\" and no empty part")]
    [InlineData("a//oil.csv", "must stay in the folder of this file: no \"..\" and no empty part")]
    [InlineData("/etc/passwd", "must be a path relative to this file, written with /")]
    [InlineData("C:/oil.csv", "must be a path relative to this file, written with /")]
    [InlineData("..\\\\oil.csv", "must be a path relative to this file, written with /")]
    public void A_scenario_names_files_beside_it_or_below(string file, string sentence) => Assert.EndsWith(sentence, Named(file));

    [Fact]
    public void A_scenario_follows_no_links()
    {
        var elsewhere = Directory.CreateTempSubdirectory("ballsim").FullName;
        try
        {
            File.WriteAllText(Path.Combine(elsewhere, "oil.csv"), "secret");
            const string sentence = "is or lies behind a symbolic link, and links are not followed; put the file itself beside this one";
            File.CreateSymbolicLink(Path.Combine(text.Folder, "oil.csv"), Path.Combine(elsewhere, "oil.csv"));
            Assert.EndsWith(sentence, Named("oil.csv"));
            Directory.CreateSymbolicLink(Path.Combine(text.Folder, "below"), elsewhere);
            Assert.EndsWith(sentence, Named("below/oil.csv"));
            File.CreateSymbolicLink(Path.Combine(text.Folder, "round"), Path.Combine(text.Folder, "round"));
            Assert.EndsWith(sentence, Named("round"));
            File.CreateSymbolicLink(Path.Combine(text.Folder, "zero"), "/dev/zero");
            Assert.EndsWith(sentence, Named("zero"));
        }
        finally
        {
            Directory.Delete(elsewhere, recursive: true);
        }
    }

    [Fact]
    public void A_scenario_waits_for_no_pipe()
    {
        using (var made = Process.Start("mkfifo", [Path.Combine(text.Folder, "pipe")]))
        {
            made.WaitForExit();
        }
        Assert.EndsWith("is empty, or no ordinary file", Named("pipe"));
        Assert.EndsWith("is empty, or no ordinary file", Named(Path.GetFileName(text.File("nothing", ""))));
        Directory.CreateDirectory(Path.Combine(text.Folder, "folder"));
        Assert.EndsWith("is a folder, not a file", Named("folder"));
        Assert.EndsWith("does not exist", Named("missing.csv"));
    }

    private string Named(string file) => text.Complaint(() => Scenario.Read(text.With("\"shape\": \"crowned\", \"length\": \"40 ft\", \"volume\": \"25 mL\"", $"\"file\": \"{file}\"")));

    [Theory]
    [InlineData("{}", "the field \"rows\" is missing; write for example \"rows\": 1")]
    [InlineData("""{ "fingerprint": "a", "rows": -1, "columns": ["row"], "texts": [] }""", "rows: -1 must be a whole number in [1, 1000000000]")]
    [InlineData("""{ "fingerprint": "a", "rows": 1e99, "columns": ["row"], "texts": [] }""", "rows: 1e99 must be a whole number in [1, 1000000000]")]
    [InlineData("""{ "fingerprint": "a", "rows": 1, "columns": "row", "texts": [] }""", "columns: \"row\" is no list of at most 1000 names")]
    [InlineData("""{ "fingerprint": "a", "rows": 1, "columns": ["row", 1], "texts": [] }""", "columns: a list [...] is no list of at most 1000 names")]
    [InlineData("""{ "fingerprint": "a", "rows": 1, "columns": ["row", "x", "x"], "texts": [] }""", "columns: must begin with \"row\" and name each column once")]
    public void The_manifest_of_a_sweep_is_read_like_any_file(string manifest, string sentence)
    {
        text.File("parts/sweep.json", manifest);
        Assert.Contains(sentence, text.Complaint(() => SweepTable.Gather(Path.Combine(text.Folder, "parts"), Path.Combine(text.Folder, "t.csv"))));
    }

    // Found by the fuzzer: the parser's own exception came through.
    [Fact]
    public void A_block_with_a_misplaced_quotation_mark_is_told_of()
    {
        var block = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "fuzz", "parts", "found-misplaced-quote.txt"));
        Assert.EndsWith("has a misplaced quotation mark; delete the folder and begin anew", BallSim.Fuzz.Readers.Told("parts", block));
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-1", "'-1")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\tx", "'\tx")]
    [InlineData("\rx", "\"'\rx\"")]
    [InlineData("\nx", "\"'\nx\"")]
    [InlineData("＝1", "'＝1")]
    [InlineData("a=1", "a=1")]
    [InlineData("", "")]
    public void A_name_is_no_formula(string name, string cell)
    {
        using var stream = new MemoryStream();
        // Numbers stay numbers, whatever their sign.
        Columns.Csv(stream, [new Column<string>("name", n => n), new("number", _ => -1.5), new("count", _ => -2)], [name]);
        Assert.Equal($"name,number,count\n{cell},-1.5,-2\n", Encoding.UTF8.GetString(stream.ToArray()));
        Assert.Equal(cell, Columns.Header([name]));
    }
}
