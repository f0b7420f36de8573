using System.CommandLine;
using BallSim.Files;

namespace BallSim.Cli;

/// <summary><c>ballsim init</c>: the demo's files, to edit.</summary>
internal static class InitCommand
{
    public static Command Of(Screen screen)
    {
        var folder = Paths.Argument<string>("DIR", "Folder to write to; made if it is not there", ArgumentArity.ExactlyOne);
        var force = new Option<bool>("--force") { Description = "Overwrite files that are there" };
        var command = new Command("init", "Write a scenario, an oil file, files of two balls and the plan of a sweep to edit.") { folder, force };
        command.SetAction(parsed =>
        {
            var target = parsed.GetRequiredValue(folder);
            Write(target, parsed.GetValue(force));
            var scenario = Path.Combine(target, Demo.Files[0]);
            screen.Output.WriteLine($"Written to {target}:");
            screen.Output.WriteLine("  scenario.json  bowler, layouts, finishes, releases, lanes: edit this one first");
            screen.Output.WriteLine("  ball.json      the ball, from its specification sheet");
            screen.Output.WriteLine("  oil.csv        the oil of one lane, board by board");
            screen.Output.WriteLine("  build.json     a ball of your own: core, filler, cover");
            screen.Output.WriteLine("  bench.json     that ball on the bench: layout, bowler, how it is spun");
            screen.Output.WriteLine("  sweep.json     some thousand throws over speed, spin, layout and oil");
            screen.Output.WriteLine();
            screen.Output.WriteLine("Next:");
            screen.Output.WriteLine($"  ballsim compare {scenario}");
            screen.Output.WriteLine($"  ballsim shot {scenario}");
            screen.Output.WriteLine($"  ballsim build {Path.Combine(target, "build.json")}");
            screen.Output.WriteLine($"  ballsim drill {Path.Combine(target, "bench.json")}");
            return ExitCode.Fine;
        });
        return command;
    }

    private static void Write(string folder, bool force)
    {
        try
        {
            if (!force && Demo.Files.FirstOrDefault(f => File.Exists(Path.Combine(folder, f))) is { } there)
            {
                throw new BadFileException($"{Path.Combine(folder, there)}: is there already; choose another folder, or overwrite with --force");
            }
            Directory.CreateDirectory(folder);
            foreach (var file in Demo.Files)
            {
                File.WriteAllBytes(Path.Combine(folder, file), Demo.Content(file));
            }
        }
        catch (Exception e) when (e is UnauthorizedAccessException or ArgumentException or NotSupportedException or IOException and not BadFileException)
        {
            throw new BadFileException($"{folder}: cannot be written: {e.Message}");
        }
    }
}
