using System.CommandLine;
using BallSim.Files;
using BallSim.Shots;

namespace BallSim.Cli;

/// <summary><c>ballsim compare</c>: every combination of a scenario's lists.</summary>
internal static class CompareCommand
{
    public static Command Of(Screen screen, CancellationToken cancellation)
    {
        var file = Paths.Argument<string?>("SCENARIO", "Scenario file (JSON); without one, the demo", ArgumentArity.ZeroOrOne);
        var sameLine = new Option<bool>("--same-line") { Description = "The table on the line as given, instead of re-aimed at the pocket" };
        var csv = new Option<string?>("--csv") { Description = "Write all rows, both ways, to this CSV file", HelpName = "PATH" };
        var html = new Option<string?>("--html") { Description = "Write a page to open, print and hand on: table, paths, motion, balls", HelpName = "FILE" };
        var json = new Option<bool>("--json") { Description = "Print all rows, both ways, as JSON instead of the table" };
        var selection = new Selection();
        var command = new Command("compare", "Throw every combination of balls, layouts, finishes, releases and lanes, re-aimed at the pocket.")
        {
            file, sameLine, csv, html, json,
        };
        selection.AddTo(command);
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file);
            var scenario = selection.Of(path is null ? Demo.Scenario() : Scenario.Read(path), parsed);
            var rows = Comparison.Of(Candidates(scenario, path), scenario.Bowler.Scatter, scenario.Options,
                new LinePerSecond(screen.Error, (int)scenario.Combinations), cancellation);
            if (parsed.GetValue(csv) is { } target)
            {
                ComparisonCsv.Write(target, rows);
            }
            if (parsed.GetValue(html) is { } page)
            {
                ComparisonHtml.Write(page, scenario, rows);
            }
            if (parsed.GetValue(json))
            {
                ComparisonJson.Write(screen.Output, rows);
            }
            else if (parsed.GetValue(sameLine))
            {
                SameLineTable.Show(screen, scenario, rows);
            }
            else
            {
                ReAimedTable.Show(screen, scenario, rows);
            }
            return Finished(screen, rows);
        });
        return command;
    }

    /// <summary>3 and a sentence where a shot on the given line was cut short by a limit or by the model's own end.</summary>
    private static int Finished(Screen screen, IReadOnlyList<ComparisonRow> rows)
    {
        if (rows.FirstOrDefault(row => ShotCommand.IsCutShort(row.SameLine)) is not { } cut)
        {
            return ExitCode.Fine;
        }
        screen.Error.WriteLine($"ballsim: {cut.Candidate}: the ball {cut.SameLine.StopSentence}");
        return ExitCode.Unfinished;
    }

    private static IReadOnlyList<Candidate> Candidates(Scenario scenario, string? path)
    {
        try
        {
            return scenario.Candidates();
        }
        catch (ArgumentException e)
        {
            throw new BadFileException($"{path}: {e.Message}");
        }
    }
}
