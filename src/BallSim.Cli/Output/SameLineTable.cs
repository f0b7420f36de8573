using BallSim.Files;
using BallSim.Shots;

namespace BallSim.Cli;

/// <summary>The comparison on the bowler's line as it is: what the eye would see if nobody moved.</summary>
internal static class SameLineTable
{
    public static void Show(Screen screen, Scenario scenario, IReadOnlyList<ComparisonRow> rows)
    {
        var names = new NameColumns(rows);
        names.Heading(screen, scenario);
        var table = NameColumns.NewTable();
        names.AddTo(table);
        string[] headings =
            ["Entry\nangle", "Entry\nboard", "Off pocket\n(in)", "Breakpoint\n(board, ft)", "Rolls\n(ft)", "Speed\n(mph)", "Spin\n(rpm)", "Flare\n(in)", "Oil\n(µL)"];
        foreach (var heading in headings)
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        foreach (var row in rows)
        {
            NameColumns.AddRow(table, [.. names.Of(row.Candidate), .. Numbers(row.SameLine), Trade.Arc(row.SameLine.Track.Flare), Trade.Oil(row.SameLine.OilTakenUp)]);
        }
        screen.Show(table);
        screen.Output.WriteLine();
        screen.Say("Every row is thrown on the bowler's own line, in the scenario's order. Entry is at the touch of the head pin. "
            + "Boards count from the right. Flare: first ring of the track to last. Oil: taken up by the cover."
            + (rows.Any(r => r.SameLine.StopReason == StopReason.PassedHeadPin) ? " " + Trade.StarNote : ""));
    }

    private static IEnumerable<string> Numbers(Shot shot)
    {
        var (breakpoint, roll) = (Trade.Breakpoint(shot.Breakpoint), Trade.Feet(shot.StartOfRoll?.Distance));
        if (!shot.ReachedPins)
        {
            return [Trade.None, Trade.None, Trade.OffsetOf(shot), breakpoint, roll, Trade.None, Trade.None];
        }
        var entry = shot.Entry;
        return [Trade.Angle(entry.Angle), Trade.Board(entry.Board), Trade.OffsetOf(shot), breakpoint, roll, Trade.Miles(entry.Speed), Trade.Turns(entry.SpinRate)];
    }
}
