using System.Text.Json;
using BallSim.Balls;
using BallSim.Cli;
using BallSim.Drilling;
using static BallSim.Units;

namespace BallSim.Files.Tests;

/// <summary>The commands that build, drill, check and spin, and what the first page shows of them.</summary>
public sealed class BenchCommandTests : IDisposable
{
    private readonly ScenarioText text = new();

    public void Dispose() => text.Dispose();

    private static (int Code, string Output, string Error) Run(params string[] arguments) => Run(100, arguments);

    private static (int Code, string Output, string Error) Run(int width, params string[] arguments)
    {
        using StringWriter output = new(), error = new();
        int code = Application.Run(arguments, new Screen(output, error, width), CancellationToken.None);
        Assert.DoesNotContain("\n   at ", "\n" + error + "\n" + output);
        Assert.All((output.ToString() + error).Split('\n'), line => Assert.True(arguments.Contains("--json") || error.ToString().Length > 0 || line.Length <= width, line));
        return (code, output.ToString(), error.ToString());
    }

    private string Demo(string file)
    {
        var folder = Path.Combine(text.Folder, "house");
        Assert.Equal(0, Run("init", folder, "--force").Code);
        return Path.Combine(folder, file);
    }

    [Fact]
    public void The_sheet_of_a_build_tells_what_the_library_tells()
    {
        var path = Demo("build.json");
        var (code, output, error) = Run("build", path);
        Assert.Equal(0, code);
        Assert.Empty(error);
        var ball = BallDrawing.Read(path).Poured().Sheet.Ball;
        Assert.Contains(FormattableString.Invariant($"low {ball.LowRg / Inch:F3}"), output);
        Assert.Contains("Top weight         2.50 oz", output);
        using var json = JsonDocument.Parse(Run("build", path, "--json").Output);
        Assert.Equal(ball.LowRg / Inch, json.RootElement.GetProperty("low_rg_in").GetDouble(), 1e-12);
        Assert.Equal(15, json.RootElement.GetProperty("weight_lb").GetDouble(), 1e-12);
    }

    [Fact]
    public void The_line_of_weights_names_what_cannot_be_had()
    {
        var path = Demo("build.json");
        var (code, output, _) = Run("build", path, "--weights");
        Assert.Equal(0, code);
        Assert.Contains("No such ball at 6, 7, 8, 9, 10, 11 lb", output);
        using var json = JsonDocument.Parse(Run("build", path, "--weights", "--json").Output);
        Assert.Equal(11, json.RootElement.GetArrayLength());
        Assert.Contains("out of reach", json.RootElement[0].GetProperty("refusal").GetString());
        var plain = text.File("plain.json", BuildText.With(BuildText.Whole, "\"weight\": \"15 lb\", \"light\": \"0.45 g/mL\", \"dense\": \"1.6 g/mL\"", "\"density\": \"1 g/mL\""));
        var (wrong, _, error) = Run("build", plain, "--weights");
        Assert.Equal(1, wrong);
        Assert.Contains("filler: a line of weights needs the two densities to blend from", error);
    }

    [Fact]
    public void The_invented_ball_keeps_the_rules_at_four_weights_and_drilling_changes_it_by_a_few_per_cent()
    {
        var bench = Workpiece.Read(Demo("bench.json"));
        double[] weights = [12, 14, 15, 16];
        var sheets = bench.DrilledLine().Where(s => weights.Any(w => Math.Abs(s.Before.Mass / Pound - w) < 1e-9)).ToArray();
        Assert.Equal(4, sheets.Length);
        Assert.All(sheets, sheet =>
        {
            // Limits of the governing body: RG 2.46 to 2.80 in, differential at most 0.060 in, as BallRules quotes them.
            var rules = BallRules.Default;
            Assert.True(rules.Rg.Keeps(sheet.Before.LowRg) && rules.Rg.Keeps(sheet.Before.HighRg) && rules.Differential.Keeps(sheet.Before.Differential));
            // Drilling moves RG and differential by up to about 5 % (USBC): a tenth at most is a few per cent.
            Assert.InRange(sheet.Ball.LowRg / sheet.Before.LowRg - 1, -0.05, 0.05);
            Assert.InRange(sheet.Ball.HighRg / sheet.Before.HighRg - 1, -0.05, 0.05);
            Assert.InRange(sheet.Ball.Differential / sheet.Before.Differential - 1, -0.10, 0.10);
            Assert.InRange(sheet.Ball.Mass / sheet.Before.Mass, 0.97, 0.995);
        });
    }

    [Fact]
    public void The_drill_sheet_holds_before_and_after()
    {
        var path = Demo("bench.json");
        var (code, output, error) = Run("drill", path);
        Assert.Equal(0, code);
        Assert.Empty(error);
        Assert.Contains("Static balance", output);
        Assert.Contains("Arcs to tape", output);
        using var json = JsonDocument.Parse(Run("drill", path, "--json").Output);
        var sheet = Workpiece.Read(path).Drilled()!;
        Assert.Equal(sheet.Ball.Mass / Pound, json.RootElement.GetProperty("after").GetProperty("weight_lb").GetDouble(), 1e-12);
        Assert.Equal(sheet.PreferredAxisShift!.Value / Degree, json.RootElement.GetProperty("preferred_axis_moved_deg").GetDouble(), 1e-12);
        Assert.Equal(StaticBalance.Of(sheet.Ball).Finger / Ounce, json.RootElement.GetProperty("static_balance").GetProperty("finger_oz").GetDouble(), 1e-12);
        var (none, _, complaint) = Run("drill", Demo("build.json"));
        Assert.Equal(1, none);
        Assert.Contains("has no layout to drill by", complaint);
    }

    [Fact]
    public void A_specification_without_a_mark_is_drilled_too()
    {
        text.File("build.json", """{ "name": "Plain", "weight": "15 lb", "lowRg": "2.5 in", "differential": "0.04 in" }""");
        var path = text.File("bench.json", BuildText.Bench);
        var (code, output, _) = Run("drill", path);
        Assert.Equal(0, code);
        Assert.Contains("drilled out of: mean density throughout (assumed)", output);
        Assert.Contains("symmetric about its pin, had none", output);
        Assert.Equal(1, Run("drill", path, "--weights").Code);
    }

    [Fact]
    public void Rules_end_with_a_clear_line_and_zero_even_where_one_fails()
    {
        var path = Demo("bench.json");
        var (code, output, _) = Run("rules", path);
        Assert.Equal(0, code);
        Assert.Equal("No limit fails; 5 not known.", output.TrimEnd().Split('\n')[^1]);
        Assert.Contains(RulesCheck.Advice, output);
        var heavy = text.File("heavy.json", """{ "name": "Heavy", "weight": "16.04 lb", "lowRg": "2.5 in", "differential": "0.065 in" }""");
        (code, output, _) = Run("rules", heavy);
        Assert.Equal(0, code);
        Assert.StartsWith("FAILS 2: weight, total differential; ", output.TrimEnd().Split('\n')[^1]);
        using var json = JsonDocument.Parse(Run("rules", heavy, "--json").Output);
        Assert.Equal(2, json.RootElement.GetProperty("failures").GetInt32());
        Assert.Contains("0 even where a limit fails", Run("rules", "--help").Output);
    }

    [Fact]
    public void What_follows_from_the_drawing_is_called_computed_and_a_measurement_goes_before_it()
    {
        var folder = Path.GetDirectoryName(Demo("bench.json"))!;
        var path = Path.Combine(folder, "bench.json");
        var computed = Workpiece.Read(path);
        RuleLine Of(Workpiece piece) => piece.Checked().Lines.Single(l => l.What == "static balance, side");
        Assert.Equal("computed", computed.NoteOf(Of(computed)));
        Assert.Equal(computed.Drilled()!.Balance!.Value.Side, Of(computed).Measured!.Value, 1e-12);
        File.WriteAllText(path, BuildText.With(File.ReadAllText(path), "\"hardness\"", "\"sideWeight\": \"3.5 oz\", \"hardness\""));
        var weighed = Workpiece.Read(path);
        Assert.Equal(RuleVerdict.Fail, Of(weighed).Verdict);
        Assert.Equal("given", weighed.NoteOf(Of(weighed)));
    }

    [Fact]
    public void A_spin_settles_with_dissipation_and_never_without()
    {
        var path = Demo("bench.json");
        var (code, output, _) = Run("spin", path);
        Assert.Equal(0, code);
        Assert.Contains("within 5 deg: first after", output);
        using var json = JsonDocument.Parse(Run("spin", path, "--json").Output);
        Assert.Equal(601, json.RootElement.GetProperty("samples").GetArrayLength());
        File.WriteAllText(path, BuildText.With(File.ReadAllText(path), """{ "squareToMomentum": "0.05 N m s" }""", "\"none\""));
        Assert.Contains("never: without dissipation nothing migrates", Run("spin", path).Output);
    }

    [Theory]
    [InlineData("build")]
    [InlineData("drill")]
    [InlineData("rules")]
    [InlineData("spin")]
    public void Wrong_input_is_one_sentence(string command)
    {
        var (code, output, error) = Run(command, text.File("bad.json", "{ \"name\": 1 "));
        Assert.Equal(1, code);
        Assert.Empty(output);
        Assert.StartsWith("ballsim: ", error);
        Assert.Single(error.TrimEnd().Split('\n'));
        Assert.Equal(1, Run(command, Path.Combine(text.Folder, "none.json")).Code);
        Assert.Equal(2, Run(command).Code);
        Assert.Equal(2, Run(command, "a.json", "--wieghts").Code);
        Assert.Contains("Exit codes", Run(command, "--help").Output);
    }

    [Fact]
    public void The_first_page_shows_what_the_commands_print()
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "BallSim.sln")))
        {
            root = root.Parent;
        }
        var page = File.ReadAllText(Path.Combine(root!.FullName, "README.md")).ReplaceLineEndings("\n");
        // As into a pipe, where no terminal says how wide a line may be.
        foreach (var arguments in (string[][])[["build", Demo("build.json")], ["build", Demo("build.json"), "--weights"], ["drill", Demo("bench.json"), "--weights"]])
        {
            Assert.Contains("```text\n" + Run(200, arguments).Output.ReplaceLineEndings("\n").TrimEnd() + "\n```", page);
        }
    }
}
