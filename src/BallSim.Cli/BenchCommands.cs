using System.CommandLine;
using BallSim.Drilling;
using BallSim.Files;

namespace BallSim.Cli;

/// <summary><c>ballsim drill</c>, <c>rules</c> and <c>spin</c>: one ball on the bench.</summary>
internal static class BenchCommands
{
    public static Command Drill(Screen screen)
    {
        var weights = new Option<bool>("--weights") { Description = "A table of the line from 6 to 16 lb with this core, drilled alike" };
        return Of("drill", "Drill a ball: weight, RGs, axes and static balance before and after.", "Bench file (JSON): ball, layout, bowler", (piece, path, machine, parsed) =>
        {
            var sheet = piece.Drilled() ?? throw new BadFileException($"{path}: has no layout to drill by; write a bench file with ball, layout and bowler: "
                + """{ "ball": { "file": "build.json" }, "layout": { "pinToAxis": "4 in", "angleAtPin": "50 deg", "angleAtAxis": "40 deg" }, "bowler": {...} }""");
            var line = parsed.GetValue(weights) ? Line(piece, path) : null;
            switch (machine, line)
            {
                case (true, null):
                    DrillJson.Write(screen.Output, piece, sheet);
                    break;
                case (true, not null):
                    DrillJson.Write(screen.Output, piece, line);
                    break;
                case (false, null):
                    DrillTable.Show(screen, piece, sheet);
                    break;
                default:
                    DrillTable.Show(screen, piece, line);
                    break;
            }
            return ExitCode.Fine;
        }, weights);
    }

    public static Command Rules(Screen screen) => Of("rules", "Check a ball against the rules: advice; 0 even where a limit fails.",
        "Bench, build or ball file (JSON)", (piece, _, machine, _) =>
        {
            var check = piece.Checked();
            if (machine)
            {
                RulesJson.Write(screen.Output, piece, check);
            }
            else
            {
                RulesTable.Show(screen, piece, check);
            }
            return ExitCode.Fine;
        });

    public static Command Spin(Screen screen) => Of("spin", "Spin a ball: the way of its spin axis to the preferred axis.",
        "Bench, build or ball file (JSON)", (piece, path, machine, _) =>
        {
            var record = piece.Spin.Run(piece.Drilled()?.Ball ?? piece.Ball.Built());
            if (machine)
            {
                SpinJson.Write(screen.Output, piece, record);
            }
            else
            {
                SpinTable.Show(screen, piece, record);
            }
            if (record.IsComplete)
            {
                return ExitCode.Fine;
            }
            screen.Error.WriteLine($"ballsim: the test was ended after {record.Steps} steps at {Trade.Seconds(record.Duration)}; what is shown ends there");
            return ExitCode.Unfinished;
        });

    private static IReadOnlyList<DrillSheet> Line(Workpiece piece, string path)
    {
        try
        {
            return piece.DrilledLine();
        }
        catch (ArgumentException e)
        {
            throw new BadFileException($"{path}: {e.Message}");
        }
    }

    private static Command Of(string name, string description, string wanted, Func<Workpiece, string, bool, ParseResult, int> action, params IEnumerable<Option> more)
    {
        var file = Paths.Argument<string>("FILE", wanted, ArgumentArity.ExactlyOne);
        var json = new Option<bool>("--json") { Description = "Print the numbers as JSON instead of the table" };
        var command = new Command(name, description) { file, json };
        foreach (var option in more)
        {
            command.Add(option);
        }
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            return action(Workpiece.Read(path), path, parsed.GetValue(json), parsed);
        });
        return command;
    }
}
