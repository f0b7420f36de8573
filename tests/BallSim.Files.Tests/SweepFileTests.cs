using BallSim.Sweeps;

namespace BallSim.Files.Tests;

/// <summary>The plan of a sweep as a file, and what is refused.</summary>
public sealed class SweepFileTests : IDisposable
{
    private const string Factors = """[{ "vary": "release.speed", "from": "17 mph", "to": "20 mph" }]""";

    private readonly ScenarioText text = new();

    public void Dispose() => text.Dispose();

    private string Plan(string factors, string design = "\"design\": \"sobol\", \"count\": 64", string more = "")
    {
        text.File("s.json", ScenarioText.Whole);
        return text.File("plan.json", $$"""{ "scenario": "s.json", {{design}}, "factors": {{factors}}{{more}} }""");
    }

    private string Refusal(string factors, string design = "\"design\": \"sobol\", \"count\": 64", string more = "")
    {
        var path = Plan(factors, design, more);
        return text.Complaint(() => SweepFile.Read(path));
    }

    [Fact]
    public void A_plan_is_read_with_units_distributions_and_choices()
    {
        var sweep = SweepFile.Read(Plan("""
            [
              { "vary": "release.spinRate", "mean": "350 rpm", "deviation": "10 rpm" },
              { "vary": "oil.length", "from": "38 ft", "to": "46 ft" },
              { "vary": "lane.temperature", "values": ["68 F", "20 C"] },
              { "vary": "layout.pinToAxis", "from": "2 in", "to": "6 in" },
              { "vary": "ball.differential", "from": "0.03 in", "to": "0.05 in" },
              { "vary": "finish.grit", "values": [500, 2000] },
              { "vary": "cover", "among": ["plastic", "reactive"] },
              { "vary": "cover.pores", "from": "0.1 um", "to": "0.5 um" }
            ]
            """));
        Assert.Equal(["cover", "release_spin_rate_rpm", "oil_length_ft", "lane_temperature_F", "layout_pin_to_axis_in", "ball_differential_in", "finish_grit", "cover_pores_um"], sweep.Plan.Factors.Select(f => f.Name));
        Assert.Equal(64, sweep.Plan.Rows);
        var row = Sweep.Block(sweep.Plan, 5, 1)[0];
        var (ball, lane, release) = sweep.Plan.Build(row.Values);
        Assert.Equal(row.Values[1], release.SpinRate);
        Assert.Equal(row.Values[2], lane.Oil.Length, 1e-9);
        Assert.Equal(20, row.Values[3], 1e-9);
        Assert.Equal(row.Values[3], lane.Temperature, 1e-9);
        // A choice first, then the numbers within it, whatever the order in the file.
        Assert.Equal(row.Values[7], ball.Cover.Pores);
        Assert.Equal(row.Values[0] == 0 ? "plastic" : "reactive", ball.Cover.Name);
        Assert.Equal(row.Values[6] == 500 ? 1.21e-6 : 0.41e-6, ball.Finish.Roughness, 0.02e-6);
        Assert.Equal(68, (double)sweep.Plan.Factors[3].Shown(row.Values[3]), 1e-9);
        Assert.Null(row.Failure);
    }

    [Fact]
    public void A_factorial_shares_balls_and_lanes()
    {
        var sweep = SweepFile.Read(Plan("""[{ "vary": "layout.pinToAxis", "from": "2 in", "to": "6 in", "steps": 3 }, { "vary": "release.board", "from": 28, "to": 30, "steps": 2 }]""", "\"design\": \"factorial\""));
        Assert.Equal(6, sweep.Plan.Rows);
        double[] Values(int row) => sweep.Plan.Design.Values(sweep.Plan.Factors, row);
        Assert.Same(sweep.Plan.Build(Values(0)).Ball, sweep.Plan.Build(Values(1)).Ball);
        Assert.NotSame(sweep.Plan.Build(Values(0)).Ball, sweep.Plan.Build(Values(2)).Ball);
        Assert.Same(sweep.Plan.Build(Values(0)).Lane, sweep.Plan.Build(Values(5)).Lane);
    }

    [Fact]
    public void A_ball_from_a_drawing_has_the_numbers_of_its_drawing()
    {
        const string drawing = """
            { "name": "Drawn", "diameter": "8.55 in", "cover": { "thickness": "0.75 in", "density": "1.18 g/mL", "material": "reactive" },
              "filler": { "weight": "15 lb", "light": "0.6 g/mL", "dense": "1.6 g/mL" },
              "cores": [{ "form": "ellipsoid", "density": "2.5 g/mL", "width": "3.5 in", "depth": "3.7 in", "height": "4.5 in" }] }
            """;
        text.File("drawn.json", drawing);
        text.File("s.json", ScenarioText.Whole.Replace("""{ "name": "First", "weight": "15 lb", "lowRg": "2.48 in", "differential": "0.05 in", "intermediateDifferential": "0.015 in" }""", """{ "file": "drawn.json" }"""));
        var path = text.File("plan.json", """{ "scenario": "s.json", "design": "random", "count": 8, "factors": [{ "vary": "ball.core1.height", "from": "4 in", "to": "5 in" }, { "vary": "ball.filler.weight", "from": "14 lb", "to": "15 lb" }] }""");
        var sweep = SweepFile.Read(path);
        var rows = Sweep.Rows(sweep.Plan).ToArray();
        Assert.All(rows, r => Assert.Null(r.Failure));
        Assert.Equal(8, rows.Select(r => sweep.Plan.Build(r.Values).Ball.Differential).Distinct().Count());
        var wrong = text.File("plan.json", """{ "scenario": "s.json", "design": "random", "count": 8, "factors": [{ "vary": "ball.lowRg", "values": ["2.5 in"] }] }""");
        Assert.Contains("\"ball.lowRg\" must be one of", text.Complaint(() => SweepFile.Read(wrong)));
    }

    [Theory]
    [InlineData("""[{ "vary": "release.sped", "from": "17 mph", "to": "20 mph" }]""", "plan.json: factors[0].vary: \"release.sped\" must be one of")]
    [InlineData("""[{ "vary": "release.sped", "from": "17 mph", "to": "20 mph" }]""", "did you mean \"release.speed\"?")]
    [InlineData("""[{ "vary": "release.speed", "from": "17 mph", "to": "90 mph" }]""", "plan.json: factors[0].to: \"90 mph\" is out of [1.118, 39.15] mph")]
    [InlineData("""[{ "vary": "release.speed", "from": 17, "to": "20 mph" }]""", "plan.json: factors[0].from: 17 has no unit")]
    [InlineData("""[{ "vary": "release.speed", "from": "20 mph", "to": "17 mph" }]""", "plan.json: factors[0].to: \"17 mph\" must be greater than \"from\"")]
    [InlineData("""[{ "vary": "release.speed", "from": "17 mph" }]""", "plan.json: factors[0]: give \"from\" and \"to\"")]
    [InlineData("""[{ "vary": "release.speed", "mean": "17 mph", "deviation": "0 mph" }]""", "plan.json: factors[0].deviation: \"0 mph\" must be more than nothing")]
    [InlineData("""[{ "vary": "layout", "among": ["Weak"] }]""", "plan.json: factors[0].among[0]: \"Weak\" must be one of \"Strong\"")]
    [InlineData("""[{ "vary": "layout", "from": 1 }]""", "plan.json: factors[0].from: has no meaning here")]
    [InlineData("""[{ "vary": "oil.film", "from": "1 um", "to": "2 um" }]""", "\"oil.film\" must be one of")]
    [InlineData("""[{ "vary": "release.speed", "values": ["17 mph"] }, { "vary": "release.speed", "values": ["18 mph"] }]""", "plan.json: factors[1]: varies release.speed, which a factor before it varies already")]
    public void Wrong_factors_are_told_with_path_and_range(string factors, string said) => Assert.Contains(said, Refusal(factors));

    [Fact]
    public void Wrong_designs_are_told()
    {
        Assert.Contains("plan.json: design: \"sobl\" must be one of", Refusal(Factors, "\"design\": \"sobl\", \"count\": 8"));
        Assert.Contains("plan.json: the field \"count\" is missing", Refusal(Factors, "\"design\": \"latin\""));
        Assert.Contains("plan.json: count: 0.5 must be a whole number", Refusal(Factors, "\"design\": \"latin\", \"count\": 0.5"));
        Assert.Contains("plan.json: count: has no meaning here", Refusal(Factors, "\"design\": \"factorial\", \"count\": 5"));
        Assert.Contains("no levels", Refusal("""[{ "vary": "release.board", "mean": 29, "deviation": 1 }]""", "\"design\": \"factorial\""));
        Assert.Contains("plan.json: tolerance: \"3 in\" is out of", Refusal(Factors, more: ", \"tolerance\": \"3 in\""));
        Assert.Contains("plan.json: use.lane: \"Stale\" must be one of \"Fresh\"", Refusal(Factors, more: ", \"use\": { \"lane\": \"Stale\" }"));
        Assert.Contains("plan.json: window.leastAngle: \"200 deg\" is out of", Refusal(Factors, more: ", \"window\": { \"leastAngle\": \"200 deg\" }"));
    }

    [Fact]
    public void The_fingerprint_is_that_of_all_the_files()
    {
        var before = SweepFile.Read(Plan(Factors)).Fingerprint;
        Assert.Equal(before, SweepFile.Read(Plan(Factors)).Fingerprint);
        Assert.NotEqual(before, SweepFile.Read(Plan(Factors, "\"design\": \"sobol\", \"count\": 65")).Fingerprint);
        var plan = Plan(Factors);
        text.File("s.json", ScenarioText.Whole.Replace("380 rpm", "381 rpm"));
        Assert.NotEqual(before, SweepFile.Read(plan).Fingerprint);
    }
}
