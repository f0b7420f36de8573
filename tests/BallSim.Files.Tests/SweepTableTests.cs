using Parquet;
using Parquet.Schema;

namespace BallSim.Files.Tests;

/// <summary>Tables that are the same however they came about.</summary>
public sealed class SweepTableTests : IDisposable
{
    private readonly ScenarioText text = new();
    private readonly SweepFile sweep;

    public SweepTableTests()
    {
        text.File("s.json", ScenarioText.Whole);
        // A board off the lane among them, so that there are failed rows.
        sweep = SweepFile.Read(text.File("plan.json", """
            { "scenario": "s.json", "design": "latin", "count": 1000, "seed": 5,
              "factors": [{ "vary": "release.board", "from": 20, "to": 42 }, { "vary": "finish" }, { "vary": "release.speed", "mean": "18 mph", "deviation": "0.4 mph" }] }
            """));
    }

    public void Dispose() => text.Dispose();

    private string At(string name) => Path.Combine(text.Folder, name);

    private byte[] Whole(string name = "whole.csv")
    {
        SweepTable.Write(sweep, At(name));
        Assert.False(Directory.Exists(At(name + ".parts")));
        return File.ReadAllBytes(At(name));
    }

    // Cancels once so many rows are done.
    private sealed class Stop(int after, CancellationTokenSource source) : IProgress<int>
    {
        public void Report(int done)
        {
            if (done >= after)
            {
                source.Cancel();
            }
        }
    }

    private void Interrupted(string path, int after)
    {
        using var source = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => SweepTable.Write(sweep, path, resume: true, new Stop(after, source), source.Token));
    }

    [Fact]
    public void A_table_has_a_row_for_every_row_and_the_reason_where_there_is_no_outcome()
    {
        var lines = System.Text.Encoding.UTF8.GetString(Whole()).TrimEnd('\n').Split('\n');
        Assert.Equal(1001, lines.Length);
        Assert.StartsWith("row,finish,release_board,release_speed_mph,end,touches_head_pin,entry_angle_deg,", lines[0]);
        Assert.All(lines.Skip(1).Select((line, i) => (line, i)), l => Assert.StartsWith($"{l.i},Sanded,", l.line));
        var failed = lines.Where(l => l.Contains("is out of [0.5, 39.5] boards")).ToArray();
        // Of 20 to 42 boards those above 39.5 fail: 11.4 %, and a Latin hypercube is exact to a row.
        Assert.InRange(failed.Length, 112, 115);
    }

    [Fact]
    public void An_interrupted_table_goes_on_and_is_the_same()
    {
        var path = At("resumed.csv");
        foreach (var after in new[] { 128, 512, 896 })
        {
            Interrupted(path, after);
            Assert.False(File.Exists(path));
        }
        SweepTable.Write(sweep, path, resume: true);
        Assert.Equal(Whole(), File.ReadAllBytes(path));
    }

    [Fact]
    public void A_torn_or_damaged_block_is_computed_anew()
    {
        var path = At("torn.csv");
        Interrupted(path, 640);
        string[] blocks = [.. Directory.GetFiles(path + ".parts", "block-*.csv").Order()];
        Assert.Equal(5, blocks.Length);
        var bytes = File.ReadAllBytes(blocks[0]);
        File.WriteAllBytes(blocks[0], bytes[..(bytes.Length / 2)]);
        File.WriteAllBytes(blocks[1], []);
        bytes = File.ReadAllBytes(blocks[2]);
        bytes[100] ^= 1;
        File.WriteAllBytes(blocks[2], bytes);
        // One block under another's name: its hash is right, its place is not.
        File.Copy(blocks[4], blocks[3], overwrite: true);
        File.WriteAllText(blocks[3] + ".0123.tmp", "half a blo");
        SweepTable.Write(sweep, path, resume: true);
        Assert.Equal(Whole(), File.ReadAllBytes(path));
        Assert.False(Directory.Exists(path + ".parts"));
    }

    [Fact]
    public void Without_resume_finished_blocks_are_not_touched_and_another_plan_never_is()
    {
        var path = At("t.csv");
        Interrupted(path, 256);
        Assert.Contains("go on with --resume", Assert.Throws<BadFileException>(() => SweepTable.Write(sweep, path)).Message);
        var other = sweep with { Fingerprint = "another" };
        Assert.Contains("another plan", Assert.Throws<BadFileException>(() => SweepTable.Write(other, path, resume: true)).Message);
        Assert.False(File.Exists(path));
    }

    [Fact]
    public void Two_runs_at_once_are_one_too_many()
    {
        var folder = At("shards");
        using var source = new CancellationTokenSource();
        BadFileException? refused = null;
        var second = new Once(() => refused = Assert.Throws<BadFileException>(() => SweepTable.WriteShard(sweep, folder, new(1, 2), resume: true)));
        SweepTable.WriteShard(sweep, folder, new(1, 2), resume: true, second);
        Assert.Contains("another run of the same sweep (shard-1-of-2)", refused!.Message);
    }

    private sealed class Once(Action action) : IProgress<int>
    {
        private bool done;

        public void Report(int value)
        {
            if (!done)
            {
                done = true;
                action();
            }
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(8)]
    [InlineData(11)]
    public void Shards_are_disjoint_and_complete_and_gathered_they_are_the_whole(int of)
    {
        var folder = At("shards");
        var rows = 0;
        foreach (var number in Enumerable.Range(1, of).Reverse())
        {
            var before = Directory.Exists(folder) ? Directory.GetFiles(folder, "block-*").Length : 0;
            SweepTable.WriteShard(sweep, folder, new(number, of));
            rows += SweepTable.Rows(sweep, new(number, of));
            if (number > 1 && of <= 8)
            {
                Assert.True(Directory.GetFiles(folder, "block-*").Length > before);
                Assert.Contains("missing or damaged: 0", Assert.Throws<BadFileException>(() => SweepTable.Gather(folder, At("early.csv"))).Message);
            }
        }
        Assert.Equal(1000, rows);
        Assert.Equal(1000, SweepTable.Gather(folder, At("gathered.csv")));
        Assert.Equal(Whole(), File.ReadAllBytes(At("gathered.csv")));
        Assert.False(File.Exists(At("early.csv")));
    }

    [Fact]
    public async Task Parquet_holds_the_same_and_is_the_same_from_shards()
    {
        var whole = Whole("whole.parquet");
        foreach (var number in new[] { 2, 1 })
        {
            SweepTable.WriteShard(sweep, At("shards"), new(number, 2));
        }
        SweepTable.Gather(At("shards"), At("gathered.parquet"));
        Assert.Equal(whole, File.ReadAllBytes(At("gathered.parquet")));

        var csv = System.Text.Encoding.UTF8.GetString(Whole()).TrimEnd('\n').Split('\n').Select(l => l.Split(',')).ToArray();
        await using var reader = await ParquetReader.CreateAsync(At("whole.parquet"));
        using var group = reader.OpenRowGroupReader(0);
        DataField Field(string name) => reader.Schema.DataFields.First(f => f.Name == name);
        var boards = new double?[1000];
        await group.ReadAsync<double>(Field("release_board"), boards.AsMemory());
        var angles = new double?[1000];
        await group.ReadAsync<double>(Field("entry_angle_deg"), angles.AsMemory());
        var ends = new string?[1000];
        await group.ReadAsync(Field("end"), ends.AsMemory()!);
        double? Cell(string[] row, string name) => row[Array.IndexOf(csv[0], name)] is { Length: > 0 } cell ? double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture) : null;
        Assert.Equal(csv.Skip(1).Select(r => Cell(r, "release_board")), boards);
        Assert.Equal(csv.Skip(1).Select(r => Cell(r, "entry_angle_deg")), angles);
        Assert.Equal(csv.Skip(1).Select(r => r[Array.IndexOf(csv[0], "end")]), ends.Select(e => e ?? ""));
        Assert.Contains(null, angles);
    }

    [Fact]
    public void A_folder_that_is_none_is_told()
    {
        Assert.Contains("does not exist", Assert.Throws<BadFileException>(() => SweepTable.Gather(At("nowhere"), At("x.csv"))).Message);
        Directory.CreateDirectory(At("empty"));
        Assert.Contains("holds no sweep.json", Assert.Throws<BadFileException>(() => SweepTable.Gather(At("empty"), At("x.csv"))).Message);
        Assert.Contains("counted from 1 to 3", Assert.Throws<ArgumentOutOfRangeException>(() => new Shard(4, 3)).Message);
    }
}
