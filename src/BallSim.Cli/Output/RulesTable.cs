using BallSim.Drilling;
using BallSim.Files;
using Spectre.Console;

namespace BallSim.Cli;

/// <summary>A ball against the rules.</summary>
internal static class RulesTable
{
    public static void Show(Screen screen, Workpiece piece, RulesCheck check)
    {
        screen.Say($"{piece.Ball.Name}{(check.Ball.Marks.IsDrilled ? ", drilled" : ", undrilled")}, against the limits in force on {piece.Measured.Day:yyyy-MM-dd}");
        screen.Output.WriteLine();
        var table = NameColumns.NewTable();
        foreach (var (heading, fixedWidth) in new[] { ("Limit of", true), ("This ball", true), ("Allowed", true), ("", true), ("Note", false) })
        {
            table.AddColumn(new TableColumn(new Text(heading)) { NoWrap = fixedWidth, Padding = new(0, 0, 1, 0) });
        }
        foreach (var line in check.Lines)
        {
            NameColumns.AddRow(table, [line.What, line.MeasuredText, line.Limit.Text, line.VerdictText, Note(piece.NoteOf(line))]);
        }
        screen.Show(table);
        if (check.Ball.Marks.IsDrilled)
        {
            screen.Output.WriteLine();
            screen.Say("Radii of gyration and differentials are those of the drilled ball; their limits are for the undrilled one.", "* ");
        }
        screen.Output.WriteLine();
        screen.Say("Sources of the limits:");
        foreach (var source in check.Lines.Where(l => l.Limit.IsSet).GroupBy(l => l.SourceText))
        {
            screen.Say($"{source.Key}: {string.Join(", ", source.Select(l => l.What))}", "  ");
        }
        screen.Output.WriteLine();
        screen.Say(RulesCheck.Advice);
        screen.Say(Verdict([.. check.Failures.Select(l => l.What)], [.. check.Unknown.Select(l => l.What)]));
    }

    // What repeats in many lines is said once below the table.
    private static string Note(string note) => note.StartsWith("as drilled", StringComparison.Ordinal) ? "*"
        : note.StartsWith("of the finish", StringComparison.Ordinal) ? "of the finish" : note;

    private static string Verdict(string[] failures, string[] unknown)
    {
        var open = unknown.Length == 0 ? "" : $"; {unknown.Length} not known";
        return failures.Length == 0 ? $"No limit fails{open}." : $"FAILS {failures.Length}: {string.Join(", ", failures)}{open}.";
    }
}
