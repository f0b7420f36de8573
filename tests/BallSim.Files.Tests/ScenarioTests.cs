using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Files.Tests;

public sealed class ScenarioTests : IDisposable
{
    private readonly ScenarioText text = new();

    public void Dispose() => text.Dispose();

    private string Refused(string old, string @new) => text.Complaint(() => Scenario.Read(text.With(old, @new)));

    [Fact]
    public void A_scenario_becomes_what_the_library_throws()
    {
        var scenario = Scenario.Read(text.File("s.json", ScenarioText.Whole));
        Assert.Equal("One of each", scenario.Title);
        var candidate = Assert.Single(scenario.Candidates());
        Assert.Equal("First, Strong, Sanded, Usual, Fresh", candidate.ToString());
        // The same by hand, from the library alone.
        var ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch)
            .Drill(new Layout(4 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch)) with { Finish = Finish.Sanded(2000) };
        Assert.Equal(ball, candidate.Ball);
        Assert.Equal(18.5 * MilesPerHour, candidate.Release.Speed);
        Assert.Equal(4 * Degree, candidate.Release.LaunchAngle);
        Assert.Equal(29, candidate.Release.Board);
        var oil = OilMap.Crowned(40 * Foot, 25 * Millilitre);
        Assert.Equal(oil.FilmOnBoard(10 * Foot, 15), candidate.Lane.Oil.FilmOnBoard(10 * Foot, 15));
    }

    [Fact]
    public void Lists_make_every_combination_and_a_single_object_is_a_list_of_one()
    {
        var two = ScenarioText.Whole
            .Replace("\"finishes\": [{ \"name\": \"Sanded\", \"grit\": 2000 }]", "\"finishes\": [{ \"name\": \"Dull\", \"roughness\": \"0.9 um\" }, { \"name\": \"Gloss\", \"polished\": true }]")
            .Replace("\"lanes\": [{", "\"lanes\": [{ \"name\": \"Bare\", \"oil\": \"dry\" }, {")
            .Replace("\"releases\": [{", "\"releases\": {").Replace("\"13 deg\" }]", "\"13 deg\" }");
        var candidates = Scenario.Read(text.File("s.json", two)).Candidates();
        Assert.Equal(["Dull, Bare", "Dull, Fresh", "Gloss, Bare", "Gloss, Fresh"], candidates.Select(c => $"{c.FinishName}, {c.LaneName}"));
        Assert.Equal(0.9e-6, candidates[0].Ball.Finish.Roughness, 1e-20);
        Assert.Equal(Finish.Polished, candidates[2].Ball.Finish);
    }

    [Fact]
    public void Without_finishes_the_ball_keeps_its_own()
    {
        var path = text.With("\"finishes\": [{ \"name\": \"Sanded\", \"grit\": 2000 }],", "");
        Assert.Equal(0.5e-6, Scenario.Read(path).Candidates()[0].Ball.Finish.Roughness);
    }

    [Fact]
    public void Too_many_combinations_are_refused_with_the_count()
    {
        string Many(string item, int count) => string.Join(',', Enumerable.Range(1, count).Select(i => item.Replace("#", i.ToString())));
        var path = text.File("s.json", ScenarioText.Whole
            .Replace("{ \"name\": \"Sanded\", \"grit\": 2000 }", Many("{ \"name\": \"F#\", \"grit\": 2000 }", 30))
            .Replace("{ \"name\": \"Strong\", \"pinToAxis\": \"4 in\", \"angleAtPin\": \"50 deg\", \"angleAtAxis\": \"40 deg\" }",
                Many("{ \"name\": \"L#\", \"pinToAxis\": \"4 in\", \"angleAtPin\": \"50 deg\", \"angleAtAxis\": \"40 deg\" }", 20)));
        Assert.Equal("1 balls x 20 layouts x 30 finishes x 1 releases x 1 lanes make 600 combinations; at most 500 are compared at once: shorten a list or split the scenario",
            Assert.Throws<ArgumentException>(() => Scenario.Read(path).Candidates()).Message);
    }

    [Fact]
    public void A_scenario_written_and_read_is_the_same()
    {
        text.File("balls/second.json", """{ "name": "Second", "weight": "14 lb", "lowRg": "2.5 in", "differential": "0.03 in", "pinToCg": "3 in", "topWeight": "2 oz", "cover": { "name": "odd", "pores": "0.3 um", "absorption": "2 1/s" } }""");
        OilMapCsv.Write(Path.Combine(text.Folder, "oil.csv"), OilMap.Crowned(40 * Foot, 25 * Millilitre));
        var rich = ScenarioText.Whole
            .Replace("\"balls\": [{", "\"balls\": [{ \"name\": \"Other\", \"file\": \"balls/second.json\" }, {")
            .Replace("\"up\": \"1/2 in\" }", "\"up\": \"1/2 in\" }, \"grip\": { \"middleSpan\": \"4 3/8 in\", \"ringSpan\": \"4.4 in\", \"thumb\": { \"diameter\": \"0.95 in\", \"depth\": \"70 mm\", \"forwardPitch\": \"1/8 in\" } }, \"scatter\": { \"speed\": \"0.3 mph\" }")
            .Replace("\"13 deg\"", "\"13 deg\", \"axis\": { \"over\": \"4.75 in\", \"up\": \"-0.25 in\" }, \"loft\": \"10 in\", \"rollPhase\": \"30 deg\"")
            .Replace("\"lanes\": [{", """
                "lanes": [{ "name": "File", "oil": { "file": "oil.csv", "unitFilm": "0.2 um" }, "crossSlope": 0.0005, "temperature": "72 F", "oilViscosity": "35 cP" },
                { "name": "Even", "oil": { "shape": "even", "length": "40 ft", "film": "40 units" } },
                { "name": "Tapered", "oil": { "shape": "tapered", "film": "10 um", "fullTo": "8 ft", "endFilm": "1 um", "length": "12 m", "runout": "50 cm" } },
                { "name": "Dry", "oil": "dry" }, {
                """)
            .Replace("\"title\"", "\"friction\": { \"floor\": 0.025, \"gapFloor\": \"0.3 um\" }, \"options\": { \"tolerance\": \"0.01 mm\", \"airDrag\": false, \"maxTime\": \"20 s\" }, \"title\"");
        var first = Scenario.Read(text.File("s.json", rich));
        var copy = Path.Combine(text.Folder, "copy.json");
        first.Write(copy);
        var second = Scenario.Read(copy);
        Assert.Equal(first.Title, second.Title);
        Assert.Equal(first.Bowler, second.Bowler);
        Assert.Equal(first.Options, second.Options);
        Assert.Equal(first.Balls, second.Balls);
        Assert.Equal(first.Layouts, second.Layouts);
        Assert.Equal(first.Finishes, second.Finishes);
        Assert.Equal(first.Releases, second.Releases);
        // Oil maps compare by reference; what was written about them must be the same, and so the film.
        Assert.Equal(first.Lanes.Select(l => (l.Name, l.Oil with { Table = null })), second.Lanes.Select(l => (l.Name, l.Oil with { Table = null })));
        Assert.Equal(first.Lanes.Select(l => l.Lane with { Oil = OilMap.Dry }), second.Lanes.Select(l => l.Lane with { Oil = OilMap.Dry }));
        Assert.Equal(first.Lanes.Select(l => l.Lane.Oil.Volume), second.Lanes.Select(l => l.Lane.Oil.Volume));
        // And a second copy is the same file.
        var again = Path.Combine(text.Folder, "again.json");
        second.Write(again);
        Assert.Equal(File.ReadAllText(copy), File.ReadAllText(again));
        Assert.Empty(Directory.GetFiles(text.Folder, "*.tmp"));
    }

    [Fact]
    public void Left_to_itself_a_sheet_means_what_the_library_means()
    {
        var sheet = new BallSheet { Name = "B", Weight = 15 * Pound, LowRg = 2.5 * Inch, Differential = 0.04 * Inch };
        Assert.Equal(Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0.04 * Inch), sheet.Built());
        var crowned = new OilSheet { Shape = OilShape.Crowned, Length = 40 * Foot, Volume = 25 * Millilitre }.Built();
        var even = new OilSheet { Shape = OilShape.Even, Length = 40 * Foot, Film = 5 * Micrometre }.Built();
        foreach (var (distance, board) in new[] { (1.0, 3.0), (20.0, 8.0), (39.5, 20.0), (30.0, 30.0) })
        {
            Assert.Equal(OilMap.Crowned(40 * Foot, 25 * Millilitre).FilmOnBoard(distance * Foot, board), crowned.FilmOnBoard(distance * Foot, board));
            Assert.Equal(OilMap.Even(40 * Foot, 5 * Micrometre).FilmOnBoard(distance * Foot, board), even.FilmOnBoard(distance * Foot, board));
        }
    }

    [Fact]
    public void A_left_handed_bowler_stays_left_handed_in_every_release()
    {
        var path = text.File("s.json", ScenarioText.Whole.Replace("\"right\"", "\"left\"").Replace("\"13 deg\"", "\"13 deg\", \"axis\": { \"over\": \"4.75 in\", \"up\": \"0 in\" }"));
        var candidate = Scenario.Read(path).Candidates()[0];
        Assert.Equal(Hand.Left, candidate.Ball.Marks.Hand);
        Assert.Equal(Hand.Left, candidate.Release.Axis!.Value.Hand);
    }

    [Theory]
    [InlineData("\"board\": 29", "\"board\": 29, \"board\": 28", "s.json: releases[0].board: is given twice; keep one")]
    [InlineData("\"board\": 29", "\"board\": 45", "s.json: releases[0].board: 45 is out of [0.5, 39.5]")]
    [InlineData("\"speed\": \"18.5 mph\", ", "", "s.json: releases[0]: the field \"speed\" is missing; write for example \"speed\": \"18 mph\"")]
    [InlineData("\"name\": \"Strong\", ", "", "s.json: layouts[0]: the field \"name\" is missing; write for example \"name\": \"First\"")]
    [InlineData("\"name\": \"Strong\"", "\"name\": \"\"", "s.json: layouts[0].name: \"\" must be a text of 1 to 80 characters on one line")]
    [InlineData("\"hand\": \"right\"", "\"hand\": \"rigth\"", "s.json: bowler.hand: \"rigth\" must be one of \"right\", \"left\"; did you mean \"right\"?")]
    [InlineData("\"grit\": 2000", "\"grit\": 2000, \"polished\": true", "s.json: finishes[0]: give exactly one of \"grit\": 2000, \"roughness\": \"0.5 um\" or \"polished\": true")]
    [InlineData("\"grit\": 2000", "\"grit\": 20", "s.json: finishes[0].grit: 20 is out of [100, 10000]")]
    [InlineData("\"volume\": \"25 mL\"", "\"film\": \"5 um\"", "s.json: lanes[0].oil.film: has no meaning here: crowned oil knows length, volume, fullTo, endFraction, fullFrom, fullUpTo, edgeFraction, runout")]
    [InlineData("\"volume\": \"25 mL\"", "\"volume\": \"25 mL\", \"fullTo\": \"50 ft\"", "s.json: lanes[0].oil.fullTo: \"50 ft\" is out of [0, 39] ft; did you mean \"50 in\"?")]
    [InlineData("\"balls\": [{", "\"balls\": [], \"unused\": [{", "s.json: unused: is an unknown field (known here: title, bowler, balls, layouts, finishes, releases, lanes, friction, options)")]
    [InlineData("\"layouts\": [{", "\"layouts\": [{ \"name\": \"strong\", \"pinToAxis\": \"4 in\", \"angleAtPin\": \"50 deg\", \"angleAtAxis\": \"40 deg\" }, {", "s.json: layouts[1]: the name \"Strong\" is used twice in this list; give every item a name of its own")]
    [InlineData("\"lowRg\": \"2.48 in\"", "\"lowRg\": \"2.48 ft\"", "s.json: balls[0].lowRg: \"2.48 ft\" is out of [0.1917, 0.2417] ft; did you mean \"2.48 in\"?")]
    [InlineData("\"differential\": \"0.05 in\"", "\"differential\": \"0.05 in\", \"topWeight\": \"3 oz\"", "s.json: balls[0].topWeight: \"3 oz\": topWeight says how much but not where; give pinToCg, the arc from the pin to the centre of gravity's mark, too")]
    [InlineData("\"over\": \"5 in\"", "\"over\": \"5 ft\"", "s.json: bowler.axis.over: \"5 ft\" is out of [-0.6667, 0.6667] ft; did you mean \"5 in\"?")]
    [InlineData("\"title\": \"One of each\"", "\"options\": { \"airDrag\": \"yes\" }", "s.json: options.airDrag: \"yes\" must be true or false, without quotes")]
    [InlineData("\"title\": \"One of each\"", "\"friction\": { \"floor\": 0.15 }", "s.json: friction: Floor + ViscousCeiling = 0.23 is not below Dry = 0.2: oil would then grip better than the dry lane at high slip; lower Floor or ViscousCeiling, or raise Dry")]
    public void What_is_wrong_is_named_with_its_place(string old, string @new, string expected)
    {
        var complaint = Refused(old, @new);
        Assert.Equal(expected, complaint);
    }

    [Theory]
    [InlineData("/etc/oil.csv", "s.json: lanes[0].oil.file: \"/etc/oil.csv\" must be a path relative to this file, written with /")]
    [InlineData("C:/oil.csv", "s.json: lanes[0].oil.file: \"C:/oil.csv\" must be a path relative to this file, written with /")]
    [InlineData("../oil.csv", "s.json: lanes[0].oil.file: \"../oil.csv\" must stay in the folder of this file: no \"..\" and no empty part")]
    [InlineData("a/../../oil.csv", "s.json: lanes[0].oil.file: \"a/../../oil.csv\" must stay in the folder of this file: no \"..\" and no empty part")]
    [InlineData("none.csv", "none.csv: does not exist")]
    public void A_file_named_in_a_scenario_must_lie_beside_it(string file, string expected) =>
        Assert.Equal(expected, Refused("\"shape\": \"crowned\", \"length\": \"40 ft\", \"volume\": \"25 mL\"", $"\"file\": \"{file}\""));

    // What the messages tell people to write must itself be right.
    [Fact]
    public void The_examples_in_the_messages_make_a_scenario()
    {
        var path = text.File("s.json", $$"""
            { "bowler": {{Json.Examples.Bowler}}, "balls": {{Json.Examples.Balls}}, "layouts": {{Json.Examples.Layouts}},
              "releases": {{Json.Examples.Releases}}, "lanes": {{Json.Examples.Lanes}} }
            """);
        Assert.Single(Scenario.Read(path).Candidates());
        Assert.Contains(Json.Examples.Oil, Json.Examples.Lanes);
        Assert.Contains(Json.Examples.Axis, Json.Examples.Bowler);
    }

    [Fact]
    public void A_complaint_about_a_ball_file_names_that_file()
    {
        text.File("ball.json", """{ "name": "Second", "weight": "14 lb", "lowRg": "2.5", "differential": "0.03 in" }""");
        Assert.Equal("ball.json: lowRg: \"2.5\" has no unit; a length carries one, such as \"4.5 in\" (allowed: in, ft, mm, cm, m)",
            Refused("\"balls\": [{", "\"balls\": [{ \"file\": \"ball.json\" }, {"));
    }

    [Fact]
    public void Files_beyond_the_limits_are_refused_before_they_are_taken_in()
    {
        Assert.Equal("no.json: does not exist", text.Complaint(() => Scenario.Read(Path.Combine(text.Folder, "no.json"))));
        Assert.Equal("s.json: is larger than 4 MB, the most that is read", text.Complaint(() => Scenario.Read(text.File("s.json", new string(' ', 4 * 1024 * 1024) + "{}"))));
        Assert.Equal("s.json: line 1, column 33: is nested more than 32 deep; a scenario needs no more than five levels",
            text.Complaint(() => Scenario.Read(text.File("s.json", new string('[', 100_000)))));
        Assert.StartsWith("s.json: line 1, column 1: is not JSON:", text.Complaint(() => Scenario.Read(text.File("s.json", "scenario"))));
        Assert.Contains("is a folder, not a file", text.Complaint(() => Scenario.Read(text.Folder)));
    }

    // Whatever piece of a good file is torn out or doubled, the reader answers with a scenario or a complaint, and with nothing else.
    [Fact]
    public void Torn_files_never_end_in_anything_but_a_complaint()
    {
        for (int start = 0; start < ScenarioText.Whole.Length; start += 7)
        {
            var torn = ScenarioText.Whole.Remove(start, Math.Min(5, ScenarioText.Whole.Length - start));
            try
            {
                Scenario.Read(text.File("s.json", torn));
            }
            catch (BadFileException e)
            {
                Assert.Contains("s.json", e.Message);
            }
        }
    }

    [Fact]
    public void A_failed_write_leaves_the_old_file()
    {
        var scenario = Scenario.Read(text.File("s.json", ScenarioText.Whole));
        var before = File.ReadAllText(Path.Combine(text.Folder, "s.json"));
        var nowhere = Path.Combine(text.Folder, "none", "s.json");
        Assert.StartsWith(Path.Combine("none", "s.json") + ": cannot be written:", text.Complaint(() => scenario.Write(nowhere)));
        Assert.Throws<InvalidOperationException>(() => Json.JsonFile.Write(Path.Combine(text.Folder, "s.json"), _ => throw new InvalidOperationException()));
        Assert.Equal(before, File.ReadAllText(Path.Combine(text.Folder, "s.json")));
        Assert.Single(Directory.GetFiles(text.Folder));
    }
}
