using BallSim.Shots;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Cli;

/// <summary>What a comparison's shots do to the ball: flare, oil taken up, and how near the track comes to a hole.</summary>
internal static class CoverTable
{
    /// <summary>The rows by the numbers of the table before, and a sentence for every hole that a track meets.</summary>
    public static void Show(Screen screen, IReadOnlyList<ComparisonRow> ranked)
    {
        var table = NameColumns.NewTable();
        table.AddColumn(NameColumns.Numbers("#"));
        table.AddColumn(new Spectre.Console.TableColumn(new Spectre.Console.Text("Cover")) { NoWrap = true });
        foreach (var heading in (string[])["Flare\n(in)", "in a turn\n(in)", "Oil taken\nup (µL)", "Track clear of\nthe holes by (in)"])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        foreach (var (row, number) in ranked.Select((row, i) => (row, i + 1)))
        {
            var shot = row.ReAimed.Shot ?? row.SameLine;
            NameColumns.AddRow(table, [Invariant($"{number}"), row.Candidate.Ball.Cover.Name, .. Flare(shot), Trade.Oil(shot.OilTakenUp), Clearance(row, shot)]);
        }
        screen.Show(table);
        screen.Output.WriteLine();
        var warnings = ranked.SelectMany((row, i) => row.TrackWarnings.Select(warning => (Number: i + 1, Text: warning))).ToArray();
        foreach (var (number, warning) in warnings)
        {
            screen.Say(warning + ".", Invariant($"  {number,3}  "));
        }
        if (warnings.Length > 0)
        {
            screen.Output.WriteLine();
        }
    }

    public static IEnumerable<string> Flare(Shot shot) => [Trade.Arc(shot.Track.Flare), Trade.Arc(shot.Track.FlarePerRevolution)];

    private static string Clearance(ComparisonRow row, Shot shot) =>
        shot.Track.Against(row.Candidate.Holes) is { Count: > 0 } all ? Trade.Arc(all.Min(c => c.Clearance)) : Trade.None;
}
