using System.Text.Json;
using BallSim.Cli;

namespace BallSim.Files.Tests;

/// <summary>The command, run in process with its two outputs caught.</summary>
public sealed class CommandTests : IDisposable
{
    private readonly ScenarioText text = new();

    public void Dispose() => text.Dispose();

    private static (int Code, string Output, string Error) Run(params string[] arguments) => Run(CancellationToken.None, arguments);

    private static (int Code, string Output, string Error) Run(CancellationToken cancellation, params string[] arguments)
    {
        using StringWriter output = new(), error = new();
        int code = Application.Run(arguments, new Screen(output, error, 100), cancellation);
        Assert.DoesNotContain("   at ", error.ToString() + output);
        Assert.DoesNotContain("\u001b", error.ToString() + output);
        return (code, output.ToString(), error.ToString());
    }

    private string Scenario => text.File("s.json", ScenarioText.Whole);

    private string Two => text.With("\"finishes\": [{", "\"finishes\": [{ \"name\": \"Gloss [red]\", \"polished\": true }, {");

    [Fact]
    public void A_shot_is_told_in_words()
    {
        var (code, output, error) = Run("shot", Scenario);
        Assert.Equal(0, code);
        Assert.Empty(error);
        Assert.Contains("One of each", output);
        Assert.Contains("touched the head pin after", output);
        Assert.Contains("Entry angle", output);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Fact]
    public void The_json_of_a_shot_holds_the_same_numbers_as_the_library()
    {
        var (code, output, _) = Run("shot", Scenario, "--json");
        Assert.Equal(0, code);
        using var json = JsonDocument.Parse(output);
        var candidate = BallSim.Files.Scenario.Read(Scenario).Candidates()[0];
        var shot = Shots.Simulator.Throw(candidate.Ball, candidate.Lane, candidate.Release);
        Assert.Equal("Strong", json.RootElement.GetProperty("layout").GetString());
        Assert.Equal(shot.Entry.Angle / Units.Degree, json.RootElement.GetProperty("entry_angle_deg").GetDouble());
        Assert.Equal(shot.Entry.Offset / Units.Inch, json.RootElement.GetProperty("offset_from_pocket_in").GetDouble());
        Assert.True(json.RootElement.GetProperty("touches_head_pin").GetBoolean());
        Assert.Equal("reactive", json.RootElement.GetProperty("cover").GetString());
        Assert.Equal(shot.Track.Flare / Units.Inch, json.RootElement.GetProperty("flare_in").GetDouble());
        Assert.Equal(shot.OilTakenUp / Units.Microlitre, json.RootElement.GetProperty("oil_taken_up_uL").GetDouble());
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("track_warning").ValueKind);
    }

    [Fact]
    public void A_comparison_tells_flare_oil_and_cover_and_how_clear_the_holes_are()
    {
        var (_, output, _) = Run("compare", Two);
        Assert.Contains("reactive", output);
        Assert.Contains("Oil taken", output);
        Assert.DoesNotContain("runs over", output);
        var same = Run("compare", Two, "--same-line").Output;
        Assert.Contains("Flare", same);
        using var json = JsonDocument.Parse(Run("compare", Two, "--json").Output);
        Assert.All(json.RootElement.EnumerateArray(), row =>
        {
            Assert.InRange(row.GetProperty("reaimed_flare_in").GetDouble(), 1, 9);
            Assert.InRange(row.GetProperty("reaimed_oil_taken_up_uL").GetDouble(), 10, 60);
        });
    }

    // An axis point so far over that the track runs where the grip is.
    [Fact]
    public void A_track_that_runs_over_a_hole_is_warned_of()
    {
        var path = text.With("\"over\": \"5 in\"", "\"over\": \"7.5 in\"");
        const string said = @"the track runs over the edge of the hole ""thumb"", \d\.\d\d in into it, on revolution \d+, \d+\.\d ft from the foul line";
        var (code, output, _) = Run("compare", path);
        Assert.Equal(0, code);
        Assert.Matches(said, string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        Assert.Matches(said, string.Join(' ', Run("shot", path).Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        using var json = JsonDocument.Parse(Run("shot", path, "--json").Output);
        Assert.Matches(said, json.RootElement.GetProperty("track_warning").GetString());
        using var rows = JsonDocument.Parse(Run("compare", path, "--json").Output);
        Assert.Matches(said, rows.RootElement[0].GetProperty("track_warning").GetString());
    }

    [Fact]
    public void The_csv_of_a_shot_runs_from_release_to_pins()
    {
        var path = Path.Combine(text.Folder, "path.csv");
        Assert.Equal(0, Run("shot", Scenario, "--csv", path).Code);
        var lines = File.ReadAllLines(path);
        Assert.Equal(602, lines.Length);
        Assert.StartsWith("time_s,phase,x_m,y_m,board,", lines[0]);
        Assert.StartsWith("0,sliding,", lines[1]);
        Assert.Equal(29, double.Parse(lines[1].Split(',')[4]), 1e-9);
        Assert.All(lines, line => Assert.Equal(24, line.Split(',').Length));
        Assert.True(double.Parse(lines[^1].Split(',')[3]) > 18);
    }

    [Fact]
    public void The_page_of_a_comparison_holds_its_rows_and_its_balls()
    {
        var path = Path.Combine(text.Folder, "page.html");
        Assert.Equal(0, Run("compare", Two, "--html", path).Code);
        var page = File.ReadAllText(path);
        Assert.StartsWith("<!DOCTYPE html>", page);
        Assert.Contains("<td>Gloss [red]</td>", page);
        Assert.Contains("<h3>Strong</h3>", page);
        var (code, _, error) = Run("compare", Two, "--html", Path.Combine(text.Folder, "none", "page.html"));
        Assert.Equal(1, code);
        Assert.Contains("cannot be written", error);
        Assert.Contains("is a folder", Run("compare", Two, "--html", text.Folder).Error);
    }

    [Fact]
    public void A_comparison_is_re_aimed_unless_asked_otherwise()
    {
        var (code, output, error) = Run("compare", Two);
        Assert.Equal(0, code);
        // A slow machine is told how far the table is; nothing else is said.
        Assert.All(error.Split('\n', StringSplitOptions.RemoveEmptyEntries), line => Assert.Matches(@"^ballsim: \d+ of 2 rows$", line));
        Assert.Contains("Sanded", output);
        // A name is text, never markup.
        Assert.Contains("[red]", output);
        Assert.Contains("4° to 6°", output);
        Assert.Contains("assumed", output);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 100, line));
        var same = Run("compare", Two, "--same-line");
        Assert.Equal(0, same.Code);
        Assert.Contains("own line", same.Output);
    }

    [Fact]
    public void The_csv_and_json_of_a_comparison_agree_and_enter_at_the_pocket()
    {
        var path = Path.Combine(text.Folder, "rows.csv");
        var (code, output, _) = Run("compare", Two, "--json", "--csv", path);
        Assert.Equal(0, code);
        var lines = File.ReadAllLines(path);
        using var json = JsonDocument.Parse(output);
        Assert.Equal(2, json.RootElement.GetArrayLength());
        Assert.Equal(3, lines.Length);
        var names = lines[0].Split(',');
        for (int i = 0; i < 2; i++)
        {
            var row = json.RootElement[i];
            Assert.Equal(names, row.EnumerateObject().Select(p => p.Name));
            Assert.InRange(row.GetProperty("reaimed_offset_from_pocket_in").GetDouble() * Units.Inch, -1e-4, 1e-4);
            var column = Array.IndexOf(names, "reaimed_entry_angle_deg");
            Assert.Equal(row.GetProperty("reaimed_entry_angle_deg").GetDouble(), double.Parse(lines[i + 1].Split(',')[column]));
        }
    }

    [Fact]
    public void A_row_without_a_line_to_the_pocket_says_why()
    {
        // Dry and dull: from the right edge every line hooks far across, and half a degree is not enough to hold it.
        var path = text.File("s.json", ScenarioText.Whole.Replace("{ \"shape\": \"crowned\", \"length\": \"40 ft\", \"volume\": \"25 mL\" }", "\"dry\"").Replace("\"board\": 29", "\"board\": 1"));
        var (code, output, _) = Run("compare", path);
        Assert.Equal(0, code);
        Assert.Contains("from board 1, launched at -1 to 8 deg, no ball reaches", output);
    }

    [Fact]
    public void A_lane_is_described_by_zones_and_held_against_the_rules()
    {
        var (code, output, error) = Run("lane", Scenario);
        Assert.Equal(0, code);
        Assert.Empty(error);
        Assert.StartsWith("Fresh: 25.0 mL to 40.0 ft; middle to outside ", output);
        Assert.Contains("cross tilt", output);
        Assert.Contains("from memory", output);
        Assert.Contains(Lanes.LaneCheck.Advice.Split(':')[0], output);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 100, line));
        using var json = JsonDocument.Parse(Run("lane", Scenario, "--json").Output);
        var zones = json.RootElement.GetProperty("zones").EnumerateArray().ToArray();
        Assert.Equal(30, zones.Length);
        // Mean films times their areas are the volume.
        var board = Lanes.Lane.Regulation.BoardWidth;
        var volume = zones.Sum(z => z.GetProperty("film_um").GetDouble() * 1e-6 * 10 * Units.Foot * board * (z.GetProperty("to_board").GetInt32() - z.GetProperty("from_board").GetInt32() + 1));
        Assert.Equal(25e-6, volume, 1e-15);
        Assert.All(json.RootElement.GetProperty("checks").EnumerateArray(), c => Assert.Equal("pass", c.GetProperty("verdict").GetString()));
        Assert.False(json.RootElement.TryGetProperty("wear", out _));
    }

    [Fact]
    public void A_lane_is_worn_by_the_scenario_s_releases_and_written_for_the_next()
    {
        var path = Path.Combine(text.Folder, "worn.csv");
        var (code, output, _) = Run("lane", Scenario, "--wear", "6", "--out", path);
        Assert.Equal(0, code);
        Assert.Contains("Fresh after 6 shots", output);
        Assert.Contains("assumed", output);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 100, line));
        using var json = JsonDocument.Parse(Run("lane", Scenario, "--wear", "6", "--json").Output);
        var wear = json.RootElement.GetProperty("wear");
        var shots = wear.GetProperty("shots").EnumerateArray().ToArray();
        Assert.Equal(6, shots.Length);
        var lost = wear.GetProperty("volume_before_mL").GetDouble() - wear.GetProperty("volume_after_mL").GetDouble();
        Assert.Equal(1e3 * lost, shots.Sum(s => s.GetProperty("taken_up_uL").GetDouble() - s.GetProperty("laid_down_uL").GetDouble()), 1e-6);
        Assert.InRange(1e3 * lost / 6, 15, 60);
        // The worn map as it was written is the lane of the same day, board by board.
        var worn = OilMapCsv.Read(path);
        var scenario = BallSim.Files.Scenario.Read(Scenario);
        var c = scenario.Candidates()[0];
        var day = Shots.LaneDay.Play(new() { Lane = c.Lane, Bowlers = [new() { Ball = c.Ball, Release = c.Release, Scatter = scenario.Bowler.Scatter }], MostShots = 6 }, scenario.Options);
        foreach (var station in worn.Stations)
        {
            for (var board = 1; board <= 39; board++)
            {
                Assert.Equal(day.After.Oil.FilmOnBoard(station, board), worn.FilmOnBoard(station, board), 1e-19);
            }
        }
        // Between the outermost boards and the edges alone the two differ.
        Assert.Equal(day.After.Volume, worn.Volume, 1e-3 * day.After.Volume);
        Assert.StartsWith("worn.csv: ", Run("lane", path).Output);
        Assert.NotEqual(output, Run("lane", Scenario, "--wear", "6", "--seed", "2").Output);
    }

    [Fact]
    public void A_lane_s_surface_comes_from_a_file_and_is_checked()
    {
        text.File("surface.csv", "# height [in]\ndistance [ft],board 0.5,board 20,board 39.5\n0,0,0,0\n30,0,0.05,0\n60,0,0,0\n");
        var path = text.With("\"name\": \"Fresh\"", "\"name\": \"Fresh\", \"topography\": { \"file\": \"surface.csv\" }");
        var (code, output, _) = Run("lane", path);
        Assert.Equal(0, code);
        Assert.Matches(@"crown +0\.050 in at 30\.0 ft +up to 0\.040 in +FAIL", output);
        Assert.Contains("seen as quoted", output);
    }

    [Theory]
    [InlineData("--wear 0: must be 1 to 10000", "lane", "s.json", "--wear", "0")]
    [InlineData("need a scenario", "lane", "oil.csv", "--wear", "3")]
    [InlineData("need a scenario", "lane", "oil.csv", "--lane", "Fresh")]
    public void What_a_lane_cannot_do_is_two(string sentence, params string[] arguments)
    {
        var (code, output, error) = Run(arguments);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Contains(sentence, error);
    }

    [Fact]
    public void One_item_of_a_list_is_picked_by_name()
    {
        var (code, output, _) = Run("shot", Two, "--finish", "sanded", "--json");
        Assert.Equal(0, code);
        Assert.Contains("\"finish\": \"Sanded\"", output);
        var (wrong, _, error) = Run("shot", Two, "--finish", "Sandy");
        Assert.Equal(2, wrong);
        Assert.Equal("ballsim: --finish Sandy: there is no finish of this name; the scenario has \"Gloss [red]\", \"Sanded\"\n", error);
    }

    [Fact]
    public void What_init_writes_can_be_thrown_and_is_not_overwritten()
    {
        var folder = Path.Combine(text.Folder, "demo");
        var (code, output, _) = Run("init", folder);
        Assert.Equal(0, code);
        Assert.Contains($"ballsim compare {Path.Combine(folder, "scenario.json")}", output);
        Assert.Equal(0, Run("shot", Path.Combine(folder, "scenario.json")).Code);
        File.WriteAllText(Path.Combine(folder, "ball.json"), "mine");
        var (again, _, error) = Run("init", folder);
        Assert.Equal(1, again);
        Assert.Contains("is there already; choose another folder, or overwrite with --force", error);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(folder, "ball.json")));
        Assert.Equal(0, Run("init", folder, "--force").Code);
        Assert.NotEqual("mine", File.ReadAllText(Path.Combine(folder, "ball.json")));
    }

    [Fact]
    public void Without_a_file_the_demo_is_compared()
    {
        var (code, output, _) = Run("compare", "--finish", "Polished", "--layout", "Strong");
        Assert.Equal(0, code);
        Assert.Contains("Lanternbrook", output);
    }

    [Fact]
    public void Wrong_input_is_one_and_told_in_one_sentence()
    {
        var (code, output, error) = Run("shot", text.With("18.5 mph", "18.5 rpm"));
        Assert.Equal(1, code);
        Assert.Empty(output);
        Assert.Equal($"ballsim: {Path.Combine(text.Folder, "s.json")}: releases[0].speed: \"18.5 rpm\" is a spin rate; here a speed is wanted (allowed: mph, km/h, m/s, ft/s)\n", error);
        Assert.Equal(1, Run("compare", Path.Combine(text.Folder, "none.json")).Code);
        Assert.Equal(1, Run("shot", Scenario, "--csv", Path.Combine(text.Folder, "none", "p.csv")).Code);
    }

    [Theory]
    [InlineData("throw")]
    [InlineData("shot")]
    [InlineData("shot", "a.json", "b.json")]
    [InlineData("compare", "--sameline")]
    [InlineData("shot", "a.json", "--csv")]
    [InlineData("init")]
    public void A_wrong_command_line_is_two(params string[] arguments)
    {
        var (code, output, error) = Run(arguments);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.StartsWith("ballsim: ", error);
        Assert.Contains("--help", error);
    }

    [Fact]
    public void A_wrong_word_is_named_and_nothing_else()
    {
        Assert.Equal("ballsim: Unrecognized command or argument 'throw'.\nTry: ballsim --help\n", Run("throw").Error);
        Assert.Equal("ballsim: there is no option --sameline here\nTry: ballsim compare --help\n", Run("compare", "--sameline").Error);
    }

    [Fact]
    public void A_computation_cut_short_is_three()
    {
        var (code, output, error) = Run("shot", text.With("\"title\"", "\"options\": { \"maxTime\": \"0.5 s\" }, \"title\""));
        Assert.Equal(3, code);
        Assert.NotEmpty(output);
        Assert.Contains("MaxTime", error);
    }

    [Fact]
    public void Cancelled_is_one_hundred_and_thirty_and_leaves_nothing()
    {
        using var stopped = new CancellationTokenSource();
        stopped.Cancel();
        var path = Path.Combine(text.Folder, "rows.csv");
        var (code, output, error) = Run(stopped.Token, "compare", Two, "--csv", path);
        Assert.Equal(130, code);
        Assert.Empty(output);
        Assert.Equal("ballsim: cancelled; nothing was written\n", error);
        Assert.False(File.Exists(path));
    }

    [Fact]
    public void An_error_inside_is_seventy_and_one_sentence()
    {
        using var error = new StringWriter();
        int code = Application.Run(["shot", Scenario], new Screen(new Broken(), error, 100), CancellationToken.None);
        Assert.Equal(70, code);
        Assert.Equal("ballsim: an error that should not happen (NotSupportedException: broken); please report it to the makers of BallSim, with the command line and the file.\n",
            error.ToString());
    }

    [Theory]
    [InlineData]
    [InlineData("--help")]
    [InlineData("compare", "--help")]
    public void Help_names_the_exit_codes(params string[] arguments)
    {
        var (code, output, error) = Run(arguments);
        Assert.Equal(0, code);
        Assert.Empty(error);
        Assert.Contains("130  cancelled", output);
        Assert.Equal(arguments.Length < 2, output.Contains("ballsim init house"));
    }

    [Fact]
    public void Version_is_a_version() => Assert.Matches(@"^\d+\.\d+\.\d+", Run("--version").Output);

    private sealed class Broken : StringWriter
    {
        public override void WriteLine(string? value) => throw new NotSupportedException("broken");
    }
}
