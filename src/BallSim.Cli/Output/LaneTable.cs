using BallSim.Lanes;
using BallSim.Shots;
using Spectre.Console;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Cli;

/// <summary>A lane: its oil by zones, its measures against the rules, and what a day did to it.</summary>
internal static class LaneTable
{
    private const double Microlitre = 1e-3 * Millilitre;

    public static void Show(Screen screen, string name, Lane lane, LaneDay? day)
    {
        screen.Say(Invariant($"{name}{(day is null ? "" : Invariant($" after {day.Shots.Count} shots"))}: {lane.Oil.Volume / Millilitre:F1} mL{Reach(lane.Oil)}{Ratio(lane.Oil)}"));
        screen.Output.WriteLine();
        Zones(screen, lane.Oil);
        screen.Say(Invariant($"Mean film in µm, in brackets in units of {OilUnit / Micrometre:F3} µm (from memory; readings and volumes disagree by a factor of two and more). Boards count from the right."));
        screen.Output.WriteLine();
        Checked(screen, LaneCheck.Of(lane));
        if (day is not null)
        {
            screen.Output.WriteLine();
            Worn(screen, day);
        }
    }

    // A worn lane has traces to the pins: where does it end for the hand that feels it?
    private static string Reach(OilMap oil)
    {
        const int halfFeet = 120;
        const double trace = 0.01 * Micrometre;
        var last = Enumerable.Range(0, halfFeet + 1).Where(k => Enumerable.Range(1, 39).Any(b => oil.FilmOnBoard(0.5 * k * Foot, b) >= trace)).DefaultIfEmpty(-1).Last();
        return last < 0 ? ", no film" : oil.Length <= 0.5 * (last + 1) * Foot ? Invariant($" to {oil.Length / Foot:F1} ft") : Invariant($" to {0.5 * last:F1} ft, traces below 0.01 µm to {oil.Length / Foot:F1} ft");
    }

    private static string Ratio(OilMap oil)
    {
        var ratio = oil.Ratio(15 * Foot);
        return double.IsFinite(ratio) ? Invariant($"; middle to outside {ratio:F1} : 1 at 15 ft") : "";
    }

    private static void Zones(Screen screen, OilMap oil)
    {
        var zones = OilZone.Of(oil);
        var table = NameColumns.NewTable();
        table.AddColumn(NameColumns.Numbers("Distance\n(ft)"));
        // As the bowler looks: the left edge on the left.
        var groups = zones.Where(z => z.FromDistance == 0).Reverse().ToArray();
        foreach (var group in groups)
        {
            table.AddColumn(NameColumns.Numbers(Invariant($"Boards\n{group.ToBoard}-{group.FromBoard}")));
        }
        foreach (var row in zones.GroupBy(z => z.FromDistance))
        {
            NameColumns.AddRow(table, [Invariant($"{row.Key / Foot:F0}-{row.First().ToDistance / Foot:F0}"),
                .. row.Reverse().Select(z => Invariant($"{z.Film / Micrometre:F2} ({z.Film / OilUnit:F0})"))]);
        }
        screen.Show(table);
    }

    private static void Checked(Screen screen, LaneCheck check)
    {
        var table = NameColumns.NewTable();
        foreach (var heading in (string[])["Limit of", "This lane", "Allowed", ""])
        {
            table.AddColumn(new TableColumn(new Text(heading)) { NoWrap = true, Padding = new(0, 0, 1, 0) });
        }
        foreach (var line in check.Lines)
        {
            NameColumns.AddRow(table, [line.What, line.ValueText, line.LimitText, line.VerdictText]);
        }
        screen.Show(table);
        screen.Say($"Source of the limits: {check.Lines[0].Source}. {LaneCheck.Advice}");
    }

    private static void Worn(Screen screen, LaneDay day)
    {
        screen.Say(Invariant($"The day: {day.Before.Volume / Millilitre:F2} mL before, {day.After.Volume / Millilitre:F2} after; {(day.Before.Volume - day.After.Volume) / day.Shots.Count / Microlitre:F1} µL a shot, the first {day.Shots[0].TakenUp / Microlitre:F1} (seed {day.Plan.Seed})."));
        screen.Output.WriteLine();
        var table = NameColumns.NewTable();
        table.AddColumn(new TableColumn(new Text("Release")));
        foreach (var heading in (string[])["Shots", "Moves", "Oil taken\n(µL)", "First line,\nbefore", "First line,\nafter"])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        foreach (var bowler in day.Bowlers)
        {
            NameColumns.AddRow(table, [day.Plan.Bowlers[bowler.Bowler].Name, Invariant($"{bowler.Shots}"), Invariant($"{bowler.Moves}"), Invariant($"{bowler.OilTaken / Microlitre:F0}"),
                Entered(bowler.EntryBefore), Entered(bowler.EntryAfter)]);
        }
        screen.Show(table);
        screen.Say("First line: the board at which it enters without scatter, on the lane before the day and after it. A bowler moves the target when the last four entries miss the pocket by two inches on average (assumed).");
        foreach (var move in day.Moves.Where(m => m.After > 0))
        {
            screen.Say($"{day.Plan.Bowlers[move.Bowler].Name} {move}.", "  ");
        }
        if (day.Shots.Count(s => s.StopReason is null) is > 0 and var lost)
        {
            screen.Say(Invariant($"{lost} shots were not thrown: the scatter led to no possible release."));
        }
    }

    private static string Entered(Entry? entry) => entry is { } e ? Trade.Board(e.Board) : "gutter";
}
