using System.CommandLine;
using BallSim.Files;
using BallSim.Fitting;
using static System.FormattableString;

namespace BallSim.Cli;

/// <summary><c>ballsim gyro</c>: the shape of a ball's inertia from a gyroscope in it.</summary>
internal static class GyroCommand
{
    public static Command Of(Screen screen)
    {
        var record = Paths.Argument<string>("RECORD", "Record of the gyroscope while the ball spins free of torques (CSV: time, wx, wy, wz)", ArgumentArity.ExactlyOne);
        var noise = new Option<double>("--noise") { Description = "Standard deviation of each component, rpm", HelpName = "RPM", DefaultValueFactory = _ => 1 };
        var command = new Command("gyro", "The ratios of a ball's moments of inertia and its principal axes, from a gyroscope in it while it spins free.") { record, noise };
        command.SetAction(parsed =>
        {
            var (path, rpm) = (parsed.GetRequiredValue(record), parsed.GetValue(noise));
            if (rpm is not (>= 1e-6 and <= 90))
            {
                throw new WrongCommandLineException("--noise: must be 0.000001 to 90 rpm");
            }
            var fit = Fitted(path, rpm * Units.Rpm);
            if (!fit.IsConverged)
            {
                screen.Error.WriteLine($"ballsim: the fit did not come to its end: {fit.Reason}");
                return ExitCode.Unfinished;
            }
            Show(screen, fit);
            return ExitCode.Fine;
        });
        return command;
    }

    private static void Show(Screen screen, GyroFit fit)
    {
        var axes = fit.Shape.Principal;
        var table = NameColumns.NewTable();
        table.AddColumn(new("Moment"));
        foreach (var heading in (string[])["Over the greatest", "Error", "Axis in the sensor: x", "y", "z"])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        void Row(string name, string ratio, string error, Vector3D axis) => NameColumns.AddRow(table, [name, ratio, error, Invariant($"{axis.X:F4}"), Invariant($"{axis.Y:F4}"), Invariant($"{axis.Z:F4}")]);
        Row("least", Invariant($"{fit.LeastToGreatest:F5}"), Invariant($"{fit.LeastToGreatestError:G2}"), axes.Least);
        Row("middle", Invariant($"{fit.MiddleToGreatest:F5}"), Invariant($"{fit.MiddleToGreatestError:G2}"), axes.Middle);
        Row("greatest", "1", "", axes.Greatest);
        screen.Show(table);
        screen.Say(Invariant($"Chi-square {fit.ChiSquare:F0} on {fit.DegreesOfFreedom} degrees of freedom. A free spin tells the ratios of the moments, not their size; radii of gyration go as their square roots. Torques of air and bench are neglected. Where a ball spins steadily about a principal axis, the errors are large."));
    }

    private static GyroFit Fitted(string path, double noise)
    {
        try
        {
            return GyroFit.Of(GyroCsv.Read(path), noise);
        }
        catch (ArgumentException e)
        {
            throw new BadFileException($"{path}: {e.Message.Split(" (Parameter")[0]}");
        }
    }
}
