using System.CommandLine;
using BallSim.Files;
using BallSim.Fitting;
using BallSim.Shots;

namespace BallSim.Cli;

/// <summary><c>ballsim fit</c> and <c>ballsim verdict</c>: tracked shots against the model.</summary>
internal static class FitCommand
{
    public static Command Fit(Screen screen, CancellationToken cancellation)
    {
        var input = new Input();
        var json = new Option<bool>("--json") { Description = "Print the numbers as JSON instead of the table" };
        var command = new Command("fit", "Fit the friction of a lane and the releases to tracked shots.") { json };
        input.AddTo(command);
        command.SetAction(parsed =>
        {
            var (shots, scenario) = input.Of(parsed);
            var fit = Fitted(shots, input.Options(parsed, scenario), parsed.GetRequiredValue(input.Tracks), cancellation);
            if (parsed.GetValue(json))
            {
                FitJson.Write(screen.Output, fit);
            }
            else
            {
                FitTable.Show(screen, fit);
            }
            return Finished(screen, fit);
        });
        return command;
    }

    public static Command Verdict(Screen screen, CancellationToken cancellation)
    {
        var input = new Input();
        var json = new Option<bool>("--json") { Description = "Print the numbers as JSON instead of the table" };
        var command = new Command("verdict", "Does the ball do on the lane what it was designed to do? The scenario's friction is what the design counted on.") { json };
        input.AddTo(command);
        command.SetAction(parsed =>
        {
            var (shots, scenario) = input.Of(parsed);
            var options = input.Options(parsed, scenario);
            var fit = Fitted(shots, options, parsed.GetRequiredValue(input.Tracks), cancellation);
            var verdict = BallSim.Fitting.Verdict.Of(fit, shots, options.Simulator);
            if (parsed.GetValue(json))
            {
                FitJson.Write(screen.Output, verdict);
            }
            else
            {
                FitTable.Show(screen, fit, verdict);
            }
            return Finished(screen, fit);
        });
        return command;
    }

    private static FitResult Fitted(IReadOnlyList<FitShot> shots, FitOptions options, string path, CancellationToken cancellation)
    {
        try
        {
            return TrackFit.Of(shots, options, cancellation);
        }
        catch (ArgumentException e)
        {
            throw new BadFileException($"{path}: {e.Message.Split(" (Parameter")[0]}");
        }
    }

    private static int Finished(Screen screen, FitResult fit)
    {
        if (fit.IsConverged)
        {
            return ExitCode.Fine;
        }
        screen.Error.WriteLine($"ballsim: the fit did not come to its end: {fit.Reason}");
        return ExitCode.Unfinished;
    }

    /// <summary>The arguments and options that both commands share.</summary>
    private sealed class Input
    {
        private readonly Argument<string> scenario = Paths.Argument<string>("SCENARIO", "Scenario file (JSON): the ball, the layout, the lane, the release meant, the bowler's scatter", ArgumentArity.ExactlyOne);
        private readonly Option<double> lateral = new("--noise") { Description = "Standard deviation of the places across, mm", HelpName = "MM", DefaultValueFactory = _ => 5 };
        private readonly Option<double> time = new("--time-noise") { Description = "Standard deviation of the times, ms", HelpName = "MS", DefaultValueFactory = _ => 4 };
        private readonly Selection selection = new();

        public Argument<string> Tracks { get; } = Paths.Argument<string>("TRACKS", "Tracked shots (CSV)", ArgumentArity.ExactlyOne);

        public void AddTo(Command command)
        {
            command.Add(Tracks);
            command.Add(scenario);
            command.Add(lateral);
            command.Add(time);
            selection.AddTo(command);
        }

        public (IReadOnlyList<FitShot> Shots, Scenario Scenario) Of(ParseResult parsed)
        {
            var read = selection.Of(Scenario.Read(parsed.GetRequiredValue(scenario)), parsed);
            var one = (read with { Balls = [read.Balls[0]], Layouts = [read.Layouts[0]], Finishes = [.. read.Finishes.Take(1)], Releases = [read.Releases[0]], Lanes = [read.Lanes[0]] }).Candidates()[0];
            return ([.. TracksCsv.Read(parsed.GetRequiredValue(Tracks), one.Lane).Select(t => new FitShot(t, one.Ball, one.Lane, one.Release))], read);
        }

        public FitOptions Options(ParseResult parsed, Scenario read)
        {
            var (mm, ms) = (parsed.GetValue(lateral), parsed.GetValue(time));
            if (mm is not (>= 0.001 and <= 1000) || ms is not (>= 0.001 and <= 1000))
            {
                throw new WrongCommandLineException("--noise and --time-noise: must be 0.001 to 1000");
            }
            return FitOptions.For(read.Bowler.Scatter) with
            {
                Noise = new() { Lateral = mm * 1e-3, Time = ms * 1e-3 },
                Simulator = read.Options with { Tolerance = Math.Max(read.Options.Tolerance, 1e-5) },
            };
        }
    }
}
