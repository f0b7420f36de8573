using System.CommandLine;
using BallSim.Files;

namespace BallSim.Cli;

/// <summary><c>ballsim build</c>: the sheet of a ball as it is drawn.</summary>
internal static class BuildCommand
{
    public static Command Of(Screen screen)
    {
        var file = Paths.Argument<string>("BUILD", "Build file (JSON): core, filler, cover", ArgumentArity.ExactlyOne);
        var weights = new Option<bool>("--weights") { Description = "A table of the whole line from 6 to 16 lb with this core instead of the sheet" };
        var json = new Option<bool>("--json") { Description = "Print the numbers as JSON instead of the sheet" };
        var command = new Command("build", "Build a ball from core, filler and cover: its weight, RGs, marks and balance.") { file, weights, json };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var drawing = BallDrawing.Read(path);
            var (line, machine) = (parsed.GetValue(weights), parsed.GetValue(json));
            if (!line)
            {
                var poured = drawing.Poured();
                Show(machine, () => BuildJson.Write(screen.Output, poured), () => BuildTable.Show(screen, poured));
                return ExitCode.Fine;
            }
            if (drawing.LightFiller is null)
            {
                throw new BadFileException($"{path}: filler: a line of weights needs the two densities to blend from; "
                    + "write for example \"light\": \"0.6 g/mL\", \"dense\": \"1.6 g/mL\"");
            }
            var rows = drawing.Line();
            Show(machine, () => BuildJson.Write(screen.Output, rows), () => BuildTable.Show(screen, drawing, rows));
            return ExitCode.Fine;
        });
        return command;
    }

    private static void Show(bool machine, Action json, Action table)
    {
        if (machine)
        {
            json();
        }
        else
        {
            table();
        }
    }
}
