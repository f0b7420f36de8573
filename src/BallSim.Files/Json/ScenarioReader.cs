using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Files.Text;
using BallSim.Releases;

namespace BallSim.Files.Json;

/// <summary>
/// From a JSON file to a scenario: the lists and what holds between them. The parts are read by <see cref="PartReader"/>.
/// </summary>
internal static class ScenarioReader
{
    // Far more than anyone compares; it bounds the checks between lists.
    private const int LongestList = 100;

    public static Scenario Read(string path) => From(JsonFile.Opened(path));

    public static Scenario From(Field root)
    {
        var members = root.Members("title", "bowler", "balls", "layouts", "finishes", "releases", "lanes", "friction", "options");
        var ballList = List(members.Required("balls", Examples.Balls));
        var layoutList = List(members.Required("layouts", Examples.Layouts));
        var finishList = members.Optional("finishes") is { } finishes ? List(finishes) : [];
        var releaseList = List(members.Required("releases", Examples.Releases));
        var laneList = List(members.Required("lanes", Examples.Lanes));
        var bowlerField = members.Required("bowler", Examples.Bowler);
        var bowler = PartReader.Bowler(bowlerField);
        var scenario = new Scenario
        {
            Title = members.Optional("title")?.Text() ?? "",
            Bowler = bowler,
            Balls = [.. ballList.Select(PartReader.Ball)],
            Layouts = [.. layoutList.Select(PartReader.Layout)],
            Finishes = [.. finishList.Select(PartReader.Finish)],
            Releases = [.. releaseList.Select(r => PartReader.Release(r, bowler.Axis.Hand))],
            Lanes = [.. laneList.Select(PartReader.Lane)],
            Options = PartReader.Options(members.Optional("options"), members.Optional("friction")),
        };
        Unique(ballList, [.. scenario.Balls.Select(b => b.Name)]);
        Unique(layoutList, [.. scenario.Layouts.Select(l => l.Name)]);
        Unique(finishList, [.. scenario.Finishes.Select(f => f.Name)]);
        Unique(releaseList, [.. scenario.Releases.Select(r => r.Name)]);
        Unique(laneList, [.. scenario.Lanes.Select(l => l.Name)]);
        CheckTogether(scenario, bowlerField, layoutList, releaseList);
        // The law of friction is checked as a whole where it meets a ball and a lane.
        members.Optional("friction")?.Built(() => scenario.Options.Friction.Coefficient(scenario.Balls[0].Built(), scenario.Lanes[0].Lane, 0, 0));
        return scenario;
    }

    /// <summary>A ball from a file of its own.</summary>
    public static BallSheet BallFile(string path) => PartReader.OwnBall(JsonFile.Opened(path));

    private static IReadOnlyList<Field> List(Field field) => field.Items(LongestList);

    private static void Unique(IReadOnlyList<Field> items, IReadOnlyList<string> names)
    {
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        for (int i = 0; i < names.Count; i++)
        {
            if (!seen.Add(names[i]))
            {
                throw items[i].Wrong($"the name \"{names[i]}\" is used twice in this list; give every item a name of its own");
            }
        }
    }

    // Nothing is thrown yet, but every layout must be possible on every ball and every release on every lane: better said now, with the
    // field, than later.
    private static void CheckTogether(Scenario scenario, Field bowler, IReadOnlyList<Field> layouts, IReadOnlyList<Field> releases)
    {
        var drilled = scenario.Balls.SelectMany(ball => layouts.Select((field, i) => Drilled(scenario, ball, i, field, bowler))).ToArray()[0];
        for (int i = 0; i < releases.Count; i++)
        {
            var (members, release) = (releases[i].Members(PartReader.ReleaseFields), scenario.Releases[i].Value);
            foreach (var lane in scenario.Lanes)
            {
                members.Built(() => release.StartOn(lane.Lane, drilled));
            }
        }
    }

    private static Ball Drilled(Scenario scenario, BallSheet sheet, int layout, Field field, Field bowler)
    {
        try
        {
            return sheet.Drilled(scenario.Layouts[layout].Value, scenario.Bowler).Ball;
        }
        catch (ArgumentException e) when (e.ParamName == "layout")
        {
            var distance = field.Members(PartReader.LayoutFields).Required("pinToAxis", "");
            throw distance.Wrong($"{distance.Written} on \"{sheet.Name}\": {Worded.Sentence(e)}");
        }
        catch (ArgumentException e)
        {
            throw bowler.Wrong($"on \"{sheet.Name}\" with layout \"{scenario.Layouts[layout].Name}\": {Worded.Sentence(e)}");
        }
    }
}
