using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Files.Tests;

/// <summary>Files of built balls and of the bench: what they say is what the library builds, and what is wrong in them is told with file, place and range.</summary>
public sealed class BuildFileTests : IDisposable
{
    private readonly ScenarioText text = new();

    public void Dispose() => text.Dispose();

    private BallDrawing Read(string content) => BallDrawing.Read(text.File("build.json", content));

    private string Refused(string old, string @new) => text.Complaint(() => Read(BuildText.With(BuildText.Whole, old, @new)));

    private string Bench(string old, string @new)
    {
        text.File("build.json", BuildText.Whole);
        return text.Complaint(() => Workpiece.Read(text.File("bench.json", BuildText.With(BuildText.Bench, old, @new))));
    }

    [Fact]
    public void A_file_builds_what_the_same_numbers_build_in_code()
    {
        var poured = Read(BuildText.Whole).Poured();
        var build = new BallBuild
        {
            Radius = 8.55 / 2 * Inch,
            CoverThickness = 0.7 * Inch,
            CoverDensity = 1180,
            FillerDensity = 450,
            Core = [new(Solid.Ellipsoid(1.3 * Inch, 1.85 * Inch, 2.85 * Inch), 3000), new(Solid.Cylinder(0.7 * Inch, 0.8 * Inch).Moved(new(0, 0, 1.4 * Inch)), 3400)],
            Cover = Cover.Urethane,
        }.WithCoreTurned(Rotation.About(Vector3D.UnitX, 35 * Degree));
        var ball = CoreShift.For(FillerBlend.For(build, 15 * Pound, 450, 1600).Build, 2.5 * Ounce).Build.Ball;
        Assert.Equal(ball.Mass, poured.Sheet.Ball.Mass, 1e-12);
        Assert.Equal(ball.LowRg, poured.Sheet.Ball.LowRg, 1e-12);
        Assert.Equal(ball.HighRg, poured.Sheet.Ball.HighRg, 1e-12);
        Assert.Equal(0, (ball.CentreOfMass - poured.Sheet.Ball.CentreOfMass).Length, 1e-12);
        Assert.Equal(Cover.Urethane, poured.Sheet.Ball.Cover);
    }

    [Fact]
    public void Both_wishes_are_met_together()
    {
        var poured = Read(BuildText.Whole).Poured();
        Assert.Equal(15 * Pound, poured.Sheet.Ball.Mass, 1e-12);
        Assert.Equal(2.5 * Ounce, poured.TopWeight, 1e-12);
    }

    [Fact]
    public void A_drawing_written_and_read_is_the_same()
    {
        var drawing = Read("""
            {
              "name": "All forms", "diameter": "8.5 in", "balanceLever": "3 in",
              "cover": { "thickness": "0.5 in", "density": "1.2 g/mL", "material": { "name": "mine", "pores": "0.1 um" } },
              "filler": { "density": "0.9 g/mL" },
              "cores": [
                { "form": "sphere", "diameter": "1 in", "density": "2 g/mL" },
                { "form": "cap", "diameter": "1 in", "height": "0.4 in", "density": "2 g/mL", "place": { "x": "1.5 in" } },
                { "form": "shell", "diameter": "1 in", "innerDiameter": "0.5 in", "density": "2 g/mL", "place": { "x": "-1.5 in" } },
                { "form": "cone", "diameter": "1 in", "topDiameter": "0 in", "height": "1 in", "density": "2 g/mL", "place": { "y": "1.5 in" } },
                { "form": "ring", "diameter": "1 in", "tubeDiameter": "0.3 in", "density": "2 g/mL", "place": { "y": "-1.5 in" } },
                { "form": "box", "width": "1 in", "depth": "0.5 in", "height": "0.6 in", "density": "2 g/mL", "place": { "z": "1.5 in" }, "turn": [{ "about": "x", "by": "20 deg" }, { "about": { "x": 1, "y": 1 }, "by": "0.1 rad" }] },
                { "form": "turned", "density": "2 g/mL", "place": { "z": "-2 in" }, "outline": [
                  { "along": "-0.5 in", "off": "0 in" }, { "along": "-0.5 in", "off": "0.4 in" }, { "along": "0.4 in", "off": "0 in", "through": { "along": "0.1 in", "off": "0.35 in" } }] }
              ],
              "turn": { "about": "y", "by": "10 deg" }
            }
            """);
        var path = Path.Combine(text.Folder, "again.json");
        drawing.Write(path);
        var again = BallDrawing.Read(path);
        var second = Path.Combine(text.Folder, "second.json");
        again.Write(second);
        Assert.Equal(File.ReadAllText(path), File.ReadAllText(second));
        Assert.Equal(drawing.Poured().Sheet.Ball.Inertia, again.Poured().Sheet.Ball.Inertia);
        Assert.Equal(7, again.Cores.Count);
        // The four sizes of a box and the volume of a shell, so that no diameter is taken for a radius.
        Assert.Equal(1 * 0.5 * 0.6 * Math.Pow(Inch, 3), again.Cores[5].Built().Solid.Volume, 1e-15);
        Assert.Equal(Math.PI / 6 * (1 - 0.125) * Math.Pow(Inch, 3), again.Cores[2].Built().Solid.Volume, 1e-15);
    }

    [Fact]
    public void A_mesh_is_read_from_its_file_in_its_unit()
    {
        // A tetrahedron of edge vectors 40 mm along the axes: volume a³/6.
        (int X, int Y, int Z)[] p = [(0, 0, 0), (40, 0, 0), (0, 40, 0), (0, 0, 40)];
        int[][] faces = [[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3]];
        var stl = "solid core\n" + string.Concat(faces.Select(f => "facet normal 0 0 0\nouter loop\n" + string.Concat(f.Select(i => $"vertex {p[i].X} {p[i].Y} {p[i].Z}\n"))
            + "endloop\nendfacet\n")) + "endsolid core\n";
        text.File("core.stl", stl);
        var cores = BuildText.Whole[BuildText.Whole.IndexOf("\"cores\"", StringComparison.Ordinal)..BuildText.Whole.IndexOf("\"turn\"", StringComparison.Ordinal)];
        var drawing = Read(BuildText.Whole.Replace(cores, "\"cores\": { \"form\": \"mesh\", \"file\": \"core.stl\", \"unit\": \"mm\", \"density\": \"3 g/mL\" }, ").Replace("\"topWeight\": \"2.5 oz\",", ""));
        Assert.Equal(Math.Pow(0.04, 3) / 6, drawing.Cores[0].Built().Solid.Volume, 1e-12);
        Assert.Equal("build.json: cores.unit: \"cubit\" must be one of \"mm\", \"cm\", \"m\", \"in\"", text.Complaint(() =>
            Read(BuildText.Whole.Replace(cores, "\"cores\": { \"form\": \"mesh\", \"file\": \"core.stl\", \"unit\": \"cubit\", \"density\": \"3 g/mL\" }, "))));
        Assert.Contains("must stay in the folder", text.Complaint(() =>
            Read(BuildText.Whole.Replace(cores, "\"cores\": { \"form\": \"mesh\", \"file\": \"../core.stl\", \"unit\": \"mm\", \"density\": \"3 g/mL\" }, "))));
    }

    [Fact]
    public void A_scenario_takes_a_built_ball_and_drills_it()
    {
        text.File("build.json", BuildText.Whole);
        var specification = "{ \"name\": \"First\", \"weight\": \"15 lb\", \"lowRg\": \"2.48 in\", \"differential\": \"0.05 in\", \"intermediateDifferential\": \"0.015 in\" }";
        var path = text.With(specification, $$"""{ "name": "Named", "file": "build.json" }, {{BuildText.Whole}}""");
        var scenario = Scenario.Read(path);
        var candidates = scenario.Candidates();
        Assert.Equal(["Named", "Second"], candidates.Select(c => c.BallName));
        var poured = Read(BuildText.Whole).Poured().Sheet.Ball;
        var expected = poured.Drill(scenario.Layouts[0].Value, Grip.Fingertip, scenario.Bowler.Axis);
        Assert.All(candidates, c => Assert.Equal(expected.Inertia, c.Ball.Inertia));
        Assert.True(candidates[0].Ball.Mass < poured.Mass - 1 * Ounce);
        // Written with the drawing inside, it throws the same.
        var again = Path.Combine(text.Folder, "again.json");
        scenario.Write(again);
        var read = Scenario.Read(again).Candidates();
        Assert.Equal(candidates[1].Ball.Inertia, read[1].Ball.Inertia);
        Assert.True(Simulator.Throw(candidates[1].Ball, candidates[1].Lane, candidates[1].Release).ReachedPins);
    }

    [Fact]
    public void A_change_of_core_shows_in_the_path()
    {
        var ball = "{ \"name\": \"First\", \"weight\": \"15 lb\", \"lowRg\": \"2.48 in\", \"differential\": \"0.05 in\", \"intermediateDifferential\": \"0.015 in\" }";
        double Entry(string build)
        {
            var candidate = Scenario.Read(text.With(ball, build)).Candidates()[0];
            return Simulator.Throw(candidate.Ball, candidate.Lane, candidate.Release).Entry.Offset;
        }
        Assert.NotEqual(Entry(BuildText.Whole), Entry(BuildText.With(BuildText.Whole, "5.7 in", "5.2 in")), 0.002);
    }

    [Fact]
    public void A_stated_density_is_what_the_drill_takes_out()
    {
        var ball = """{ "name": "First", "weight": "15 lb", "lowRg": "2.48 in", "differential": "0.05 in", "density": DENSITY }""";
        double Removed(string density)
        {
            text.File("build.json", ball.Replace("DENSITY", density));
            return Workpiece.Read(text.File("bench.json", BuildText.Bench)).Drilled()!.Removed.Mass;
        }
        var thin = Removed("\"1 g/mL\"");
        Assert.Equal(1.2, Removed("\"1.2 g/mL\"") / thin, 1e-12);
        Assert.InRange(Removed("""{ "density": "1.2 g/mL", "coverThickness": "1 in" }""") / thin, 1.15, 1.35);
        Assert.Equal("bench.json: ball.density: 1.2 has no unit; a density is written as text with its unit, such as \"1.2 kg/m3\" (allowed: kg/m3, g/mL)",
            text.Complaint(() => Workpiece.Read(text.File("bench.json", BuildText.With(BuildText.Bench, "{ \"file\": \"build.json\" }", ball.Replace("DENSITY", "1.2"))))));
    }

    [Fact]
    public void A_thumbless_grip_has_two_holes()
    {
        text.File("build.json", BuildText.Whole);
        var path = text.File("bench.json", BuildText.With(BuildText.Bench, "\"hand\"", "\"grip\": { \"middleSpan\": \"4.5 in\", \"ringSpan\": \"4.5 in\", \"thumbless\": true }, \"hand\""));
        Assert.Equal(["middle finger", "ring finger"], Workpiece.Read(path).Drilled()!.Holes.Select(h => h.Name));
    }

    [Fact]
    public void What_is_wrong_is_told_with_place_and_range()
    {
        Assert.Equal("build.json: cover.thickness: \"7 in\" is out of [0, 3] in; did you mean \"7 mm\"?", Refused("\"0.7 in\"", "\"7 in\""));
        Assert.Equal("build.json: cover.thickness: 0.7 has no unit; a length is written as text with its unit, such as \"0.7 in\" (allowed: in, ft, mm, cm, m)", Refused("\"0.7 in\"", "0.7"));
        Assert.Equal("build.json: diameter: \"4.3 in\" is out of [8.3, 8.7] in", Refused("\"topWeight\"", "\"diameter\": \"4.3 in\", \"topWeight\""));
        Assert.Equal("build.json: cores[0].widht: is an unknown field; did you mean \"width\"? (known here: form, density, diameter, innerDiameter, topDiameter, tubeDiameter, width, depth, "
            + "height, outline, file, unit, turn, place)", Refused("\"width\"", "\"widht\""));
        Assert.Equal("build.json: cores[0].form: \"elipsoid\" must be one of \"sphere\", \"cap\", \"shell\", \"ellipsoid\", \"cylinder\", \"cone\", \"ring\", \"box\", \"turned\", \"mesh\"; "
            + "did you mean \"ellipsoid\"?", Refused("\"ellipsoid\"", "\"elipsoid\""));
        Assert.Equal("build.json: cores[1]: the field \"height\" is missing; write for example \"height\": \"4.5 in\"", Refused("\"height\": \"0.8 in\", ", ""));
        Assert.Equal("build.json: cores[1].width: has no meaning here: cylinder knows diameter, height", Refused("\"height\": \"0.8 in\", ", "\"height\": \"0.8 in\", \"width\": \"1 in\", "));
        Assert.Equal("build.json: filler: the field \"light\" is missing; write for example \"light\": \"0.6 g/mL\"", Refused("\"light\": \"0.45 g/mL\", ", ""));
        Assert.Equal("build.json: filler: give either \"density\": \"0.95 g/mL\", or the weight the ball shall have: \"weight\": \"15 lb\" with \"light\" and \"dense\"",
            Refused("\"weight\": \"15 lb\", ", ""));
        Assert.StartsWith("build.json: topWeight: \"0.01 oz\": a top weight of 0.010 oz is out of reach of a shift along", Refused("2.5 oz", "0.01 oz"));
        Assert.Equal("build.json: filler.weight: \"8 lb\": a weight of 8.000 lb is out of reach of this core and cover: with fillers from 450 to 1600 kg/m³ the ball weighs from 11.567 to 18.325 lb",
            Refused("15 lb", "8 lb"));
    }

    [Fact]
    public void A_core_too_large_is_refused_at_its_place() =>
        Assert.Matches(@"^build\.json: part 1, ellipsoid .* beyond the .* that the cover leaves", Refused("5.7 in", "7.9 in"));

    [Fact]
    public void What_is_wrong_on_the_bench_is_told_there()
    {
        Assert.Equal("bench.json: layuot: is an unknown field; did you mean \"layout\"? (known here: title, ball, bowler, layout, measured, spin)", Bench("\"layout\"", "\"layuot\""));
        Assert.Equal("bench.json: the field \"layout\" is missing; write for example \"layout\": { \"pinToAxis\": \"4 in\", \"angleAtPin\": \"50 deg\", \"angleAtAxis\": \"40 deg\" }",
            Bench("\"layout\": { \"pinToAxis\": \"4.5 in\", \"angleAtPin\": \"55 deg\", \"angleAtAxis\": \"40 deg\" },", ""));
        Assert.StartsWith("bench.json: bowler: the holes \"middle finger\" and \"ring finger\" meet",
            Bench("\"hand\"", "\"grip\": { \"middleSpan\": \"4.5 in\", \"ringSpan\": \"4.5 in\", \"ring\": { \"depth\": \"3 in\", \"lateralPitch\": \"-0.5 in\" } }, \"hand\""));
        Assert.Equal("bench.json: spin.dissipation: the field \"rotorMoment\" is missing; write for example \"rotorMoment\": \"0.002 kg m2\"",
            Bench("\"layout\"", "\"spin\": { \"dissipation\": { \"rotorCoupling\": \"0.01 N m s\" } }, \"layout\""));
        Assert.Equal("bench.json: measured.day: \"1.1.2026\" is not a day; write it as \"2026-01-31\"", Bench("\"layout\"", "\"measured\": { \"day\": \"1.1.2026\" }, \"layout\""));
        Assert.Equal("bench.json: measured.balanceHoles: 1.5: balanceHoles is a count; write a whole number", Bench("\"layout\"", "\"measured\": { \"balanceHoles\": 1.5 }, \"layout\""));
        Assert.StartsWith("s.json: is a scenario with lists of balls and layouts", text.Complaint(() => Workpiece.Read(text.File("s.json", ScenarioText.Whole))));
    }
}
