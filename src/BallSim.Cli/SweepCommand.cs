using System.CommandLine;
using BallSim.Files;

namespace BallSim.Cli;

/// <summary><c>ballsim sweep</c> and <c>ballsim gather</c>: many throws into a table, on one machine or on many.</summary>
internal static class SweepCommand
{
    public static Command Sweep(Screen screen, CancellationToken cancellation)
    {
        var file = Paths.Argument<string>("PLAN", "Plan of the sweep (JSON)", ArgumentArity.ExactlyOne);
        var output = new Option<string?>("--out") { Description = "The table to write, .csv or .parquet; with --shard the folder for the parts. By default beside the plan", HelpName = "PATH" };
        var number = new Option<int?>("--shard") { Description = "Compute this part only, counted from 1; needs --of", HelpName = "K" };
        var of = new Option<int?>("--of") { Description = "How many parts there are", HelpName = "N" };
        var resume = new Option<bool>("--resume") { Description = "Go on where a run was interrupted; begins from nothing where there is none" };
        var engine = EngineChoice.Option();
        var command = new Command("sweep", "Throw a ball over and over, inputs varied by a plan, into a table.") { file, output, number, of, resume, engine };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var shard = ShardOf(parsed.GetValue(number), parsed.GetValue(of));
            var sweep = SweepFile.Read(path);
            var stem = Path.Combine(Path.GetDirectoryName(path) ?? "", Path.GetFileNameWithoutExtension(path));
            var target = parsed.GetValue(output) ?? (shard is null ? $"{stem}.csv" : $"{stem}.shards");
            var rows = shard is { } part ? SweepTable.Rows(sweep, part) : sweep.Plan.Rows;
            var computes = EngineChoice.Engine(parsed.GetRequiredValue(engine), screen);
            using var card = computes as IDisposable;
            sweep = sweep with { Plan = sweep.Plan with { Options = sweep.Plan.Options with { Engine = computes } } };
            var progress = new LinePerSecond(screen.Error, rows);
            try
            {
                if (shard is { } mine)
                {
                    SweepTable.WriteShard(sweep, target, mine, parsed.GetValue(resume), progress, cancellation);
                    screen.Output.WriteLine($"{rows} of {sweep.Plan.Rows} rows are in {target}, part {mine.Number} of {mine.Of}.");
                }
                else
                {
                    SweepTable.Write(sweep, target, parsed.GetValue(resume), progress, cancellation);
                    screen.Output.WriteLine($"{rows} rows are in {target}.");
                }
                return ExitCode.Fine;
            }
            catch (OperationCanceledException)
            {
                screen.Error.WriteLine("ballsim: cancelled; what is finished is kept, and the same command with --resume goes on");
                return ExitCode.Cancelled;
            }
        });
        return command;
    }

    public static Command Gather(Screen screen)
    {
        var folder = Paths.Argument<string>("DIR", "Folder that the parts were written to", ArgumentArity.ExactlyOne);
        var output = new Option<string?>("--out") { Description = "The table to write, .csv or .parquet; by default beside the folder", HelpName = "PATH" };
        var command = new Command("gather", "Put the parts of a sweep together: the same table as from one machine.") { folder, output };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(folder);
            var target = parsed.GetValue(output) ?? Path.ChangeExtension(path.TrimEnd('/', Path.DirectorySeparatorChar), ".csv");
            screen.Output.WriteLine($"{SweepTable.Gather(path, target)} rows are in {target}.");
            return ExitCode.Fine;
        });
        return command;
    }

    private static Shard? ShardOf(int? number, int? of)
    {
        if (number is null && of is null)
        {
            return null;
        }
        if (number is not { } k || of is not { } n)
        {
            throw new WrongCommandLineException("--shard and --of go together: --shard 3 --of 8");
        }
        try
        {
            return new Shard(k, n);
        }
        catch (ArgumentException e)
        {
            throw new WrongCommandLineException($"--shard {k} --of {n}: {e.Message.Split(" (Parameter")[0]}");
        }
    }
}
