using BallSim.Files;
using BallSim.Shots;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Cli;

/// <summary>The comparison with every row re-aimed at the pocket, the best first.</summary>
internal static class ReAimedTable
{
    public static void Show(Screen screen, Scenario scenario, IReadOnlyList<ComparisonRow> rows)
    {
        var names = new NameColumns(rows);
        names.Heading(screen, scenario);
        var table = NameColumns.NewTable();
        table.AddColumn(NameColumns.Numbers("#"));
        names.AddTo(table);
        string[] headings =
            ["Entry\nangle", "Line\nmoved", "Breakpoint\n(board, ft)", "Rolls\n(ft)", "Speed\n(mph)", "Spin\n(rpm)", "Old line:\noff (in)"];
        foreach (var heading in headings)
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        var ranked = Comparison.Ranked(rows);
        for (int i = 0; i < ranked.Count; i++)
        {
            var row = ranked[i];
            NameColumns.AddRow(table, [Invariant($"{i + 1}"), .. names.Of(row.Candidate), .. Numbers(row), Trade.OffsetOf(row.SameLine)]);
        }
        screen.Show(table);
        screen.Output.WriteLine();
        foreach (var (row, number) in ranked.Select((row, i) => (row, i + 1)).Where(r => !r.row.ReAimed.IsFound))
        {
            screen.Say(row.ReAimed.Reason + ".", Invariant($"  {number,3}  "));
        }
        CoverTable.Show(screen, ranked);
        Footnotes(screen, scenario, ranked);
    }

    private static IEnumerable<string> Numbers(ComparisonRow row)
    {
        if (row.ReAimed.Shot is not { } shot)
        {
            return [Trade.None, Trade.None, Trade.None, Trade.None, Trade.None, Trade.None];
        }
        var entry = shot.Entry;
        var spread = row.Spread is { } s ? Invariant($" ±{s.Angle / Degree:F1}") : " ±?";
        return
        [
            $"{(row.IsWithinScatter ? "~ " : "")}{Trade.Angle(entry.Angle)}{spread}",
            Trade.Move(row.LineMove),
            Trade.Breakpoint(shot.Breakpoint),
            Trade.Feet(shot.StartOfRoll?.Distance),
            Trade.Miles(entry.Speed),
            Trade.Turns(entry.SpinRate),
        ];
    }

    private static void Footnotes(Screen screen, Scenario scenario, IReadOnlyList<ComparisonRow> ranked)
    {
        screen.Say("Every row starts from the bowler's own board; the launch angle is moved (plus: towards the bowler's own gutter) until "
            + "the ball enters at the pocket. Breakpoint, roll, speed and spin are those of the moved line; the last column is where the "
            + "ball enters on the old one, in inches from the pocket. Boards count from the right."
            + (ranked.Any(r => r.SameLine.StopReason == StopReason.PassedHeadPin) ? " " + Trade.StarNote : ""));
        screen.Say("Flare is the greatest distance between the first and the last ring of the track on the ball, in a turn that between neighbours; oil taken up is what the cover takes off the lane less what it leaves there. "
            + "Holes count from the middle of the track to the edge; less than nothing is over it.");
        screen.Say("Sorted by how far the entry angle lies outside 4° to 6° (rows inside keep the scenario's order).");
        var s = scenario.Bowler.Scatter;
        var numbers = Invariant($"speed {s.Speed / MilesPerHour:0.##} mph, launch {s.LaunchAngle / Degree:0.##}°, board {s.Board:0.##}, ")
            + Invariant($"spin {s.SpinRate / Rpm:0.##} rpm, rotation {s.AxisRotation / Degree:0.##}°, tilt {s.AxisTilt / Degree:0.##}°");
        screen.Say($"± is what the bowler's scatter does to the entry angle (one standard deviation; {numbers}"
            + (s == new Releases.Scatter() ? ", assumed" : "") + "), from finite differences of the shot, added in quadrature."
            + (ranked.Any(r => r.ReAimed.IsFound && r.Spread is null) ? " ±? where a scattered throw does not reach the pins." : "")
            + (ranked.Any(r => r.IsWithinScatter)
                ? " ~ marks rows whose entry angle differs from the first row's by less than that: no single throw would tell them apart." : ""));
    }
}
