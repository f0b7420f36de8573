using System.CommandLine;
using BallSim.Files;
using BallSim.Shots;

namespace BallSim.Cli;

/// <summary><c>ballsim shot</c>: one throw.</summary>
internal static class ShotCommand
{
    public static Command Of(Screen screen)
    {
        var file = Paths.Argument<string>("SCENARIO", "Scenario file (JSON)", ArgumentArity.ExactlyOne);
        var csv = new Option<string?>("--csv") { Description = "Write the path to this CSV file, 601 points from release to end", HelpName = "PATH" };
        var json = new Option<bool>("--json") { Description = "Print the numbers as JSON instead of the table" };
        var selection = new Selection();
        var command = new Command("shot", "Throw once: the first of each list, or the ones named.") { file, csv, json };
        selection.AddTo(command);
        command.SetAction(parsed =>
        {
            var scenario = selection.Of(Scenario.Read(parsed.GetRequiredValue(file)), parsed);
            var candidate = First(scenario).Candidates()[0];
            var shot = Simulator.Throw(candidate.Ball, candidate.Lane, candidate.Release, scenario.Options);
            if (parsed.GetValue(csv) is { } path)
            {
                ShotCsv.Write(path, shot);
            }
            if (parsed.GetValue(json))
            {
                ShotJson.Write(screen.Output, candidate, shot);
            }
            else
            {
                ShotTable.Show(screen, scenario, candidate, shot);
            }
            return Finished(screen, shot);
        });
        return command;
    }

    /// <summary>3 and a sentence for a shot that a limit or the model's own end cut short.</summary>
    private static int Finished(Screen screen, Shot shot)
    {
        if (!IsCutShort(shot))
        {
            return ExitCode.Fine;
        }
        screen.Error.WriteLine($"ballsim: the ball {shot.StopSentence}; what is shown ends there");
        return ExitCode.Unfinished;
    }

    /// <summary>True where the end is not one that a ball on a lane comes to.</summary>
    public static bool IsCutShort(Shot shot) =>
        shot.StopReason is not (StopReason.HeadPin or StopReason.PassedHeadPin or StopReason.Gutter or StopReason.FoulLine);

    private static Scenario First(Scenario scenario) => scenario with
    {
        Balls = [scenario.Balls[0]],
        Layouts = [scenario.Layouts[0]],
        Finishes = [.. scenario.Finishes.Take(1)],
        Releases = [scenario.Releases[0]],
        Lanes = [scenario.Lanes[0]],
    };
}
