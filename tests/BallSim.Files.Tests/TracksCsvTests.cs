using BallSim.Cli;
using BallSim.Fitting;
using BallSim.Shots;
using System.Globalization;
using System.Text.Json;
using static BallSim.Units;

namespace BallSim.Files.Tests;

/// <summary>Tracks and gyroscope records from files, and the commands that fit them.</summary>
public sealed class TracksCsvTests : IDisposable
{
    private readonly ScenarioText text = new();

    public void Dispose() => text.Dispose();

    private static IReadOnlyList<TrackedShot> Read(string csv) => TracksCsv.Read(new StringReader(csv), "t.csv");

    private static void Refused(string csv, params string[] words)
    {
        var e = Assert.Throws<BadFileException>(() => Read(csv));
        Assert.All(words, w => Assert.Contains(w, e.Message));
    }

    [Fact]
    public void Units_of_the_header_are_taken_and_shots_told_apart()
    {
        var shots = Read("# a remark\nshot,distance [ft],time [ms],board,spin [rpm]\nb,1,40,20,350\na,1,41,21,\nb,3,120,19.5,\n");
        Assert.Equal(["b", "a"], shots.Select(s => s.Id));
        var first = shots[0].Points[0];
        Assert.Equal(1 * Foot, first.Distance!.Value, 1e-12);
        Assert.Equal(0.040, first.Time!.Value, 1e-12);
        Assert.Equal(0, first.X!.Value, 1e-12);
        Assert.Equal(350 * Rpm, first.SpinRate!.Value, 1e-12);
        Assert.Equal(3, first.Line);
        Assert.Null(shots[1].Points[0].SpinRate);
        Assert.Empty(shots[0].Notes);
    }

    [Fact]
    public void Gaps_outliers_duplicates_and_wrong_order_are_remarks_with_their_lines()
    {
        var lines = Enumerable.Range(1, 20).Select(i => string.Create(CultureInfo.InvariantCulture, $"1,{i},{0.10 - 0.002 * i:F4}")).ToList();
        lines[9] = "1,10,0.3800";          // line 11: outlier
        lines.Insert(3, "1,4,0.0920");     // line 5, and line 6 stands twice
        (lines[14], lines[15]) = (lines[15], lines[14]); // lines 16 and 17 changed places
        lines.Add("1,32,0.0400");          // line 23: after a gap
        var shot = Assert.Single(Read("shot,distance [ft],x [m]\n" + string.Join('\n', lines)));
        Assert.Equal(21, shot.Points.Count);
        Assert.True(shot.Points.Zip(shot.Points.Skip(1)).All(p => p.First.Distance < p.Second.Distance));
        int[] Lines(QualityIssue issue) => [.. shot.Notes.Where(n => n.Issue == issue).Select(n => n.Line)];
        Assert.Equal([12], Lines(QualityIssue.Outlier));
        Assert.Equal([6], Lines(QualityIssue.Duplicate));
        Assert.Equal([17], Lines(QualityIssue.OutOfOrder));
        Assert.Equal([23], Lines(QualityIssue.Gap));
    }

    [Fact]
    public void What_cannot_be_read_is_refused_with_its_place()
    {
        Refused("", "empty");
        Refused("shot,distance,x [m]\n", "without its unit", "distance [in]");
        Refused("shot,distance [mph],x [m]\n", "not a unit of length", "column 2");
        Refused("shot,distanse [ft],x [m]\n", "did you mean \"distance\"");
        Refused("shot,x [m]\n1,0\n", "neither a distance nor a time");
        Refused("shot,distance [ft],x [m]\n1,1,a\n", "line 2, x", "not a number");
        Refused("shot,distance [ft],x [m]\n1,1\n", "line 2", "has 2 fields; expected 3");
        Refused("shot,distance [ft],x [m]\n1,1,5\n", "place across", "5 m");
        Refused("shot,distance [ft],x [m],board\n1,1,0,20\n", "both board and x");
        Refused("shot;distance [ft];x [m]\n", "semicolons");
    }

    [Fact]
    public void A_gyroscope_s_record_is_read()
    {
        var samples = GyroCsv.Read(new StringReader("time [ms],wx [rpm],wy [rpm],wz [rpm]\n0,1,2,3\n10,2,2,3\n"), "g.csv");
        Assert.Equal(2, samples.Count);
        Assert.Equal(0.01, samples[1].Time, 1e-12);
        Assert.Equal(2 * Rpm, samples[1].AngularVelocity.X, 1e-12);
        var e = Assert.Throws<BadFileException>(() => GyroCsv.Read(new StringReader("time [ms],wx [rpm],wy [rpm],wz [rpm]\n0,1,2,3\n0,2,2,3\n"), "g.csv"));
        Assert.Contains("line 3, time", e.Message);
        Assert.Equal(2, GyroSample.AsTrack("g", samples).Points.Count);
    }

    private string Tracks()
    {
        var candidate = Scenario.Read(text.File("s.json", ScenarioText.Whole)).Candidates()[0];
        var random = new Random(7);
        var csv = "shot,distance [m],time [s],x [m]\n";
        for (var s = 1; s <= 3; s++)
        {
            var release = candidate.Release with { LaunchAngle = candidate.Release.LaunchAngle + 0.1 * s * Degree };
            var shot = Simulator.Throw(candidate.Ball, candidate.Lane, release);
            for (var i = 0; i < 20; i++)
            {
                var p = shot.AtDistance(0.5 + 0.9 * i);
                csv += string.Create(CultureInfo.InvariantCulture, $"{s},{p.Y:F4},{p.Time + 0.004 * (random.NextDouble() - 0.5):F5},{p.X + 0.01 * (random.NextDouble() - 0.5):F5}\n");
            }
        }
        return text.File("tracks.csv", csv);
    }

    private static (int Code, string Output, string Error) Run(params string[] arguments)
    {
        using StringWriter output = new(), error = new();
        var code = Application.Run(arguments, new Screen(output, error, 100), CancellationToken.None);
        return (code, output.ToString(), error.ToString());
    }

    [Fact]
    public void The_commands_tell_the_fit_and_the_verdict()
    {
        var (tracks, scenario) = (Tracks(), text.File("s.json", ScenarioText.Whole));
        var (code, output, error) = Run("fit", tracks, scenario);
        Assert.Empty(error);
        Assert.Equal(0, code);
        Assert.Contains("Dry friction", output);
        Assert.Contains("Correlations:", output);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 112, line));

        (code, output, _) = Run("fit", tracks, scenario, "--json");
        Assert.Equal(0, code);
        using var fit = JsonDocument.Parse(output);
        Assert.True(fit.RootElement.GetProperty("converged").GetBoolean());
        Assert.Equal(3 + 3 * 6, fit.RootElement.GetProperty("estimates").GetArrayLength());

        (code, output, _) = Run("verdict", tracks, scenario);
        Assert.Equal(0, code);
        Assert.Contains("Entry angle", output);
        Assert.Contains("The ball: ", output);
    }

    [Theory]
    [InlineData("--noise", "0")]
    [InlineData("--slopes", "0")]
    [InlineData("--drag", "3")]
    [InlineData("--gyro-noise", "1000")]
    public void A_number_out_of_range_is_a_wrong_command_line(string option, string value)
    {
        var (code, _, error) = Run("fit", Tracks(), text.File("s.json", ScenarioText.Whole), option, value);
        Assert.Equal(2, code);
        Assert.Contains(option, error);
    }

    [Fact]
    public void The_page_tells_estimates_residuals_shots_and_the_verdict()
    {
        var (tracks, scenario, page) = (Tracks(), text.File("s.json", ScenarioText.Whole), text.File("page.html", ""));
        Assert.Equal(0, Run("fit", tracks, scenario, "--html", page).Code);
        var written = File.ReadAllText(page);
        Assert.DoesNotContain("id=\"verdict\"", written);
        foreach (var part in (string[])["id=\"found\"", "Dry friction</th>", "Correlations of the estimates", "id=\"residuals-lateral-1\"", "id=\"residuals-time-1\"", "Residuals by distance", "Launch angle, &#176;</th>", "&#177; 5 mm across"])
        {
            Assert.Contains(part, written);
        }
        Assert.Equal(0, Run("verdict", tracks, scenario, "--html", page).Code);
        Assert.Contains("id=\"verdict\"", File.ReadAllText(page));
        Assert.Contains("Entry angle</th>", File.ReadAllText(page));

        var (code, _, error) = Run("fit", tracks, scenario, "--html", Path.GetDirectoryName(page)!);
        Assert.Equal(1, code);
        Assert.Contains("is a folder", error);
    }

    [Fact]
    public void Clock_slopes_and_drag_are_fitted_where_they_are_asked_for()
    {
        var (code, output, error) = Run("fit", Tracks(), text.File("s.json", ScenarioText.Whole), "--clock", "--slopes", "0.5", "--drag", "0.1", "--json");
        Assert.Equal((0, ""), (code, error));
        using var fit = JsonDocument.Parse(output);
        var names = fit.RootElement.GetProperty("estimates").EnumerateArray().Select(e => e.GetProperty("parameter").GetString()).ToArray();
        Assert.Equal(6 + 3 * 7, names.Length);
        Assert.Equal(3, names.Count(n => n == "ClockOffset"));
        Assert.Single(names, n => n == "CrossSlope");
        Assert.Single(names, n => n == "LengthSlope");
        Assert.Single(names, n => n == "DragCoefficient");
        // The tracks were made with clocks that are right.
        Assert.All(fit.RootElement.GetProperty("estimates").EnumerateArray().Where(e => e.GetProperty("parameter").GetString() == "ClockOffset"),
            e => Assert.InRange(Math.Abs(e.GetProperty("value").GetDouble()), 0, 4 * e.GetProperty("standard_error").GetDouble()));
    }

    [Fact]
    public void The_record_of_a_gyroscope_is_one_more_shot()
    {
        var scenario = text.File("s.json", ScenarioText.Whole);
        var candidate = Scenario.Read(scenario).Candidates()[0];
        var shot = Simulator.Throw(candidate.Ball, candidate.Lane, candidate.Release);
        var csv = "time [s],wx [rad/s],wy [rad/s],wz [rad/s]\n";
        for (var i = 1; i <= 40; i++)
        {
            var spin = shot.At(0.05 * i).SpinRate;
            csv += string.Create(CultureInfo.InvariantCulture, $"{0.05 * i:F2},{0.6 * spin:F5},{0.8 * spin:F5},0\n");
        }
        var record = text.File("flown.csv", csv);
        var tracks = Tracks();
        var (code, output, error) = Run("fit", tracks, scenario, "--gyro", record, "--gyro-noise", "0.5", "--json");
        Assert.Equal((0, ""), (code, error));
        using var fit = JsonDocument.Parse(output);
        var spun = fit.RootElement.GetProperty("estimates").EnumerateArray().Single(e => e.GetProperty("shot").GetString() == "flown" && e.GetProperty("parameter").GetString() == "SpinRate");
        Assert.InRange(Math.Abs(spun.GetProperty("value").GetDouble() - candidate.Release.SpinRate), 0, 0.1 * Rpm);
        Assert.Contains(fit.RootElement.GetProperty("residuals_by_distance").EnumerateArray(), b => b.GetProperty("quantity").GetString() == "SpinRate");

        Assert.Contains("already", Run("fit", tracks, scenario, "--gyro", record, "--gyro", record).Error);
        Assert.Equal(1, Run("fit", tracks, scenario, "--gyro", record, "--gyro", record).Code);
    }

    [Fact]
    public void A_free_spin_tells_the_ratios_of_the_moments()
    {
        // Euler's equation for moments 0.0270, 0.0281, 0.0279 by small steps of the midpoint rule.
        double[] moments = [0.0270, 0.0281, 0.0279], w = [20, 25, 15];
        double[] Rate(double[] v) => [(moments[1] - moments[2]) / moments[0] * v[1] * v[2], (moments[2] - moments[0]) / moments[1] * v[2] * v[0], (moments[0] - moments[1]) / moments[2] * v[0] * v[1]];
        var csv = "time [s],wx [rad/s],wy [rad/s],wz [rad/s]\n";
        for (var i = 0; i <= 400; i++)
        {
            csv += string.Create(CultureInfo.InvariantCulture, $"{0.01 * i:F2},{w[0]:F6},{w[1]:F6},{w[2]:F6}\n");
            for (var step = 0; step < 10; step++)
            {
                var half = Rate(w).Select((r, k) => w[k] + 0.0005 * r).ToArray();
                w = [.. Rate(half).Select((r, k) => w[k] + 0.001 * r)];
            }
        }
        var record = text.File("spin.csv", csv);
        var (code, output, error) = Run("gyro", record, "--noise", "0.1");
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("0.96085", output);
        Assert.Contains("0.99288", output);
        Assert.Equal(2, Run("gyro", record, "--noise", "0").Code);
        Assert.Equal(1, Run("gyro", text.File("short.csv", "time [s],wx [rad/s],wy [rad/s],wz [rad/s]\n0,1,2,3\n")).Code);
    }
}
