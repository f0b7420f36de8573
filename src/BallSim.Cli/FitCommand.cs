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
        var html = new Option<string?>("--html") { Description = "Write a page to open, print and hand on: estimates, residuals along the lane, shots", HelpName = "FILE" };
        var command = new Command("fit", "Fit the friction of a lane and the releases to tracked shots.") { json, html };
        input.AddTo(command);
        command.SetAction(parsed =>
        {
            var (shots, scenario) = input.Of(parsed);
            var options = input.Options(parsed, scenario);
            var fit = Fitted(shots, options, parsed.GetRequiredValue(input.Tracks), cancellation);
            if (parsed.GetValue(html) is { } page)
            {
                FitHtml.Write(page, scenario, fit, options.Noise, verdict: null);
            }
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
        var html = new Option<string?>("--html") { Description = "Write a page to open, print and hand on: verdict, estimates, residuals along the lane, shots", HelpName = "FILE" };
        var command = new Command("verdict", "Does the ball do on the lane what it was designed to do? The scenario's friction is what the design counted on.") { json, html };
        input.AddTo(command);
        command.SetAction(parsed =>
        {
            var (shots, scenario) = input.Of(parsed);
            var options = input.Options(parsed, scenario);
            var fit = Fitted(shots, options, parsed.GetRequiredValue(input.Tracks), cancellation);
            var verdict = BallSim.Fitting.Verdict.Of(fit, shots, options.Simulator);
            if (parsed.GetValue(html) is { } page)
            {
                FitHtml.Write(page, scenario, fit, options.Noise, verdict);
            }
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
        private readonly Option<bool> clock = new("--clock") { Description = "The clock of each track starts anywhere: fit what it shows when the ball passes the foul line" };
        private readonly Option<double?> slopes = new("--slopes") { Description = "Fit the slopes of the lane across and along, expected to be 0 give or take this, mm/m", HelpName = "MM" };
        private readonly Option<double?> drag = new("--drag") { Description = "Fit the air's drag coefficient, expected to be the scenario's give or take this", HelpName = "CD" };
        private readonly Option<string[]> gyro = new("--gyro") { Description = "One more shot: the record of a gyroscope in the ball (CSV), its spin rate by the time from the foul line; may be given again", HelpName = "FILE" };
        private readonly Option<double> gyroNoise = new("--gyro-noise") { Description = "Standard deviation of the spin rates, rpm", HelpName = "RPM", DefaultValueFactory = _ => new TrackNoise().SpinRate / Units.Rpm };
        private readonly Selection selection = new();

        public Argument<string> Tracks { get; } = Paths.Argument<string>("TRACKS", "Tracked shots (CSV)", ArgumentArity.ExactlyOne);

        public void AddTo(Command command)
        {
            command.Add(Tracks);
            command.Add(scenario);
            command.Add(lateral);
            command.Add(time);
            command.Add(clock);
            command.Add(slopes);
            command.Add(drag);
            command.Add(gyro);
            command.Add(gyroNoise);
            selection.AddTo(command);
        }

        public (IReadOnlyList<FitShot> Shots, Scenario Scenario) Of(ParseResult parsed)
        {
            var read = selection.Of(Scenario.Read(parsed.GetRequiredValue(scenario)), parsed);
            var one = (read with { Balls = [read.Balls[0]], Layouts = [read.Layouts[0]], Finishes = [.. read.Finishes.Take(1)], Releases = [read.Releases[0]], Lanes = [read.Lanes[0]] }).Candidates()[0];
            List<TrackedShot> tracks = [.. TracksCsv.Read(parsed.GetRequiredValue(Tracks), one.Lane)];
            foreach (var record in parsed.GetValue(gyro) ?? [])
            {
                tracks.Add(Flown(record, tracks));
            }
            return ([.. tracks.Select(t => new FitShot(t, one.Ball, one.Lane, one.Release))], read);
        }

        public FitOptions Options(ParseResult parsed, Scenario read)
        {
            var (mm, ms, rpm) = (parsed.GetValue(lateral), parsed.GetValue(time), parsed.GetValue(gyroNoise));
            if (mm is not (>= 0.001 and <= 1000) || ms is not (>= 0.001 and <= 1000))
            {
                throw new WrongCommandLineException("--noise and --time-noise: must be 0.001 to 1000");
            }
            if (rpm is not (>= 0.01 and <= 100))
            {
                throw new WrongCommandLineException("--gyro-noise: must be 0.01 to 100 rpm");
            }
            var usual = FitOptions.For(read.Bowler.Scatter);
            List<FreeParameter> parameters = [.. usual.Parameters];
            if (Width(parsed, slopes, 1e-3, 50, "mm/m") is { } tilt)
            {
                var prior = new Prior(tilt * 1e-3);
                parameters.AddRange([new(FitParameter.CrossSlope, prior), new(FitParameter.LengthSlope, prior)]);
            }
            if (Width(parsed, drag, 1e-3, 2, "") is { } coefficient)
            {
                parameters.Add(new(FitParameter.DragCoefficient, new Prior(coefficient)));
            }
            if (parsed.GetValue(clock))
            {
                parameters.Add(new(FitParameter.ClockOffset));
            }
            return usual with
            {
                Parameters = parameters,
                Noise = new() { Lateral = mm * 1e-3, Time = ms * 1e-3, SpinRate = rpm * Units.Rpm },
                Simulator = read.Options with { Tolerance = Math.Max(read.Options.Tolerance, 1e-5) },
            };
        }

        // How much a number is left open, or null where it is not to be fitted.
        private static double? Width(ParseResult parsed, Option<double?> option, double least, double most, string unit)
        {
            var width = parsed.GetValue(option);
            return width is null || (width >= least && width <= most) ? width : throw new WrongCommandLineException(FormattableString.Invariant($"{option.Name}: must be {least} to {most} {unit}").TrimEnd());
        }

        private static TrackedShot Flown(string path, IReadOnlyList<TrackedShot> others)
        {
            var name = Path.GetFileNameWithoutExtension(path);
            if (others.Any(t => t.Id == name))
            {
                throw new BadFileException($"{path}: there is a shot \"{name}\" already, and a record is called by its file; rename the file");
            }
            try
            {
                return GyroSample.AsTrack(name, GyroCsv.Read(path));
            }
            catch (ArgumentException e)
            {
                throw new BadFileException($"{path}: {e.Message.Split(" (Parameter")[0]}");
            }
        }
    }
}
