using static BallSim.Units;

namespace BallSim.Files.Tests;

public sealed class TopographyCsvTests : IDisposable
{
    private const string Whole = "# any remark\n# height [mm]\n\ndistance [ft],board 1, 20,board 39\n0,0.1,0.3,0.2\n30,0,0.5,0.1\n60.5,0,0,0\n";

    private readonly ScenarioText text = new();

    public void Dispose() => text.Dispose();

    private string Complaint(string content) => text.Complaint(() => TopographyCsv.Read(text.File("t.csv", content)));

    [Fact]
    public void Heights_are_read_where_they_stand()
    {
        var t = TopographyCsv.Read(text.File("t.csv", Whole));
        Assert.True(t.IsMeasured);
        Assert.Equal(0.3e-3, t.HeightAt(0, 0), 1e-15);
        Assert.Equal(0.5e-3, t.HeightAt(0, 30 * Foot), 1e-15);
        Assert.Equal(0.1e-3, t.HeightAt(Lanes.Lane.Regulation.PlaceOf(39), 30 * Foot), 1e-15);
    }

    [Fact]
    public void A_scenario_names_it_keeps_it_and_writes_it_back()
    {
        text.File("t.csv", Whole);
        var path = text.With("\"name\": \"Fresh\"", "\"name\": \"Fresh\", \"topography\": { \"file\": \"t.csv\" }");
        var scenario = Scenario.Read(path);
        Assert.Equal("t.csv", scenario.Lanes[0].TopographyFile);
        Assert.Equal(0.5e-3, scenario.Lanes[0].Lane.Topography.HeightAt(0, 30 * Foot), 1e-15);
        var copy = Path.Combine(text.Folder, "copy.json");
        scenario.Write(copy);
        Assert.Equal(scenario.Lanes[0].Lane, Scenario.Read(copy).Lanes[0].Lane);
        var both = text.With("\"name\": \"Fresh\"", "\"name\": \"Fresh\", \"crossSlope\": 0.001, \"topography\": { \"file\": \"t.csv\" }");
        Assert.Equal("s.json: lanes[0].crossSlope: has no meaning here: the surface is measured in the file", text.Complaint(() => Scenario.Read(both)));
        var outside = text.With("\"name\": \"Fresh\"", "\"name\": \"Fresh\", \"topography\": { \"file\": \"../t.csv\" }");
        Assert.Contains("must stay in the folder of this file", text.Complaint(() => Scenario.Read(outside)));
    }

    [Fact]
    public void What_is_wrong_is_told_with_its_line()
    {
        Assert.Equal("t.csv: line 5: has 3 fields; expected 4: the distance and 3 heights", Complaint(Whole.Replace("0,0.1,0.3,0.2", "0,0.1,0.3")));
        Assert.Equal("t.csv: line 5: \"low\" is not a number; expected a height", Complaint(Whole.Replace("0,0.1,0.3,0.2", "0,0.1,low,0.2")));
        Assert.StartsWith("t.csv: line 2: \"mils\" is not a unit of length; expected one of in, ft, mm", Complaint(Whole.Replace("[mm]", "[mils]")));
        Assert.StartsWith("t.csv: line 4: stands without a unit of height", Complaint(Whole.Replace("# height [mm]\n", "")));
        Assert.StartsWith("t.csv: line 4: \"station\" is not the distance and its unit", Complaint(Whole.Replace("distance [ft]", "station")));
        Assert.StartsWith("t.csv: has no header", Complaint("# height [mm]\n"));
        Assert.Contains("stations has 1 value(s)", Complaint("# height [mm]\ndistance [ft],1,39\n0,0,0\n"));
        Assert.Contains("is the unit right?", Complaint(Whole.Replace("[mm]", "[m]").Replace("board 1,", "board 19,").Replace("board 39", "board 21")));
        Assert.Contains("does not exist", text.Complaint(() => TopographyCsv.Read(Path.Combine(text.Folder, "none.csv"))));
    }
}
