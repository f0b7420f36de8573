using System.CommandLine;
using BallSim.Files;
using BallSim.Lanes;
using BallSim.Shots;

namespace BallSim.Cli;

/// <summary><c>ballsim lane</c>: what lies on a lane, and what a number of shots makes of it.</summary>
internal static class LaneCommand
{
    // Hours of computing; a mistyped number should not start them.
    private const int MostShots = 10_000;

    public static Command Of(Screen screen, CancellationToken cancellation)
    {
        var file = Paths.Argument<string>("FILE", "Scenario file (JSON), or an oil map (.csv)", ArgumentArity.ExactlyOne);
        var wear = new Option<int?>("--wear") { Description = "Wear the lane by this many shots: each release of the scenario in turn, scattered, re-aimed when it misses", HelpName = "N" };
        var seed = new Option<int>("--seed") { Description = "Seed of the scatter", HelpName = "N", DefaultValueFactory = _ => 1 };
        var output = new Option<string?>("--out") { Description = "Write the oil, worn if --wear is given, to this CSV file", HelpName = "PATH" };
        var json = new Option<bool>("--json") { Description = "Print the numbers as JSON instead of the tables" };
        var selection = new Selection();
        var command = new Command("lane", "Describe a lane and its oil, and wear it: the first lane of the scenario, or the one named.") { file, wear, seed, output, json };
        selection.AddTo(command);
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var shots = parsed.GetValue(wear);
            if (shots is < 1 or > MostShots)
            {
                throw new WrongCommandLineException($"--wear {shots}: must be 1 to {MostShots}");
            }
            var isOil = path.EndsWith(".csv", StringComparison.OrdinalIgnoreCase);
            if (isOil && (shots is not null || selection.IsGiven(parsed)))
            {
                throw new WrongCommandLineException("an oil map names no bowler and no list: --wear and the options that pick by name need a scenario");
            }
            var scenario = isOil ? null : selection.Of(Scenario.Read(path), parsed);
            var (name, lane) = scenario?.Lanes[0] is { } sheet ? (sheet.Name, sheet.Lane) : (Path.GetFileName(path), Lane.Regulation with { Oil = OilMapCsv.Read(path) });
            var day = shots is { } count ? Worn(scenario!, lane, count, parsed.GetValue(seed), screen, cancellation) : null;
            lane = day is null ? lane : lane with { Oil = day.After.Oil };
            if (parsed.GetValue(output) is { } target)
            {
                OilMapCsv.Write(target, lane.Oil);
            }
            if (parsed.GetValue(json))
            {
                LaneJson.Write(screen.Output, name, lane, day);
            }
            else
            {
                LaneTable.Show(screen, name, lane, day);
            }
            return ExitCode.Fine;
        });
        return command;
    }

    // The first ball, layout and finish; every release is a bowler of its own.
    private static LaneDay Worn(Scenario scenario, Lane lane, int shots, int seed, Screen screen, CancellationToken cancellation)
    {
        var candidates = (scenario with
        {
            Balls = [scenario.Balls[0]],
            Layouts = [scenario.Layouts[0]],
            Finishes = [.. scenario.Finishes.Take(1)],
            Lanes = [scenario.Lanes[0]],
        }).Candidates();
        var plan = new DayPlan
        {
            Lane = lane,
            Bowlers = [.. candidates.Select(c => new DayBowler { Name = c.ReleaseName, Ball = c.Ball, Release = c.Release, Scatter = scenario.Bowler.Scatter })],
            Games = 1000,
            MostShots = shots,
            Seed = seed,
        };
        return LaneDay.Play(plan, scenario.Options, new LinePerSecond(screen.Error, shots, "shots"), cancellation);
    }
}
