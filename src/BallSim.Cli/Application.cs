using System.CommandLine;
using BallSim.Files;

namespace BallSim.Cli;

/// <summary>The command as a function: arguments in, an exit code out, and no exception past here.</summary>
internal static class Application
{
    public static int Run(IReadOnlyList<string> arguments, Screen screen, CancellationToken cancellation)
    {
        try
        {
            var parsed = Root(screen, cancellation).Parse(arguments.Count == 0 ? ["--help"] : arguments);
            if (parsed.Errors.Count > 0)
            {
                // A word that is no command also leaves the command missing; the first is what to tell.
                var errors = parsed.CommandResult.Command is RootCommand && parsed.UnmatchedTokens.Count > 0
                    ? parsed.Errors.Where(e => parsed.UnmatchedTokens.Any(t => e.Message.Contains(t))) : parsed.Errors;
                foreach (var error in errors.Select(e => e.Message).Distinct())
                {
                    screen.Error.WriteLine($"ballsim: {error}");
                }
                screen.Error.WriteLine($"Try: {Path(parsed.CommandResult.Command)} --help");
                return ExitCode.WrongCommandLine;
            }
            return parsed.Invoke(new InvocationConfiguration
            {
                Output = screen.Output,
                Error = screen.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            });
        }
        catch (BadFileException e)
        {
            return Complaint(screen, e.Message, ExitCode.WrongInput);
        }
        catch (WrongCommandLineException e)
        {
            return Complaint(screen, e.Message, ExitCode.WrongCommandLine);
        }
        catch (UnfinishedException e)
        {
            return Complaint(screen, e.Message, ExitCode.Unfinished);
        }
        catch (OperationCanceledException)
        {
            return Complaint(screen, "cancelled; nothing was written", ExitCode.Cancelled);
        }
        catch (Exception e)
        {
            var what = e.Message.ReplaceLineEndings(" ");
            return Complaint(screen, $"an error that should not happen ({e.GetType().Name}: {what}); "
                + "please report it to the makers of BallSim, with the command line and the file.", ExitCode.Unexpected);
        }
    }

    private static RootCommand Root(Screen screen, CancellationToken cancellation)
    {
        var root = new RootCommand("How a bowling ball runs: layouts, finishes and releases compared before anything is drilled.")
        {
            ShotCommand.Of(screen),
            CompareCommand.Of(screen, cancellation),
            LaneCommand.Of(screen, cancellation),
            SweepCommand.Sweep(screen, cancellation),
            SweepCommand.Gather(screen),
            FitCommand.Fit(screen, cancellation),
            FitCommand.Verdict(screen, cancellation),
            GyroCommand.Of(screen),
            BuildCommand.Of(screen),
            BenchCommands.Drill(screen),
            BenchCommands.Rules(screen),
            BenchCommands.Spin(screen),
            InitCommand.Of(screen),
        };
        HelpText.AddTo(root);
        return root;
    }

    private static int Complaint(Screen screen, string sentence, int code)
    {
        screen.Error.WriteLine($"ballsim: {sentence}");
        return code;
    }

    private static string Path(Command command) => command is RootCommand ? "ballsim" : $"ballsim {command.Name}";
}
