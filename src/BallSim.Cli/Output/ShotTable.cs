using BallSim.Drilling;
using BallSim.Files;
using BallSim.Shots;
using Spectre.Console;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Cli;

/// <summary>One throw in words and numbers.</summary>
internal static class ShotTable
{
    public static void Show(Screen screen, Scenario scenario, Candidate candidate, Shot shot)
    {
        if (scenario.Title.Length > 0)
        {
            screen.Say(scenario.Title);
            screen.Output.WriteLine();
        }
        var table = NameColumns.NewTable();
        table.HideHeaders();
        table.AddColumn(new("")).AddColumn(new(""));
        foreach (var (name, value) in Thrown(candidate).Concat(Seen(candidate, shot)))
        {
            NameColumns.AddRow(table, [name, value]);
        }
        screen.Show(table);
    }

    private static IEnumerable<(string Name, string Value)> Thrown(Candidate candidate)
    {
        yield return ("Ball", $"{candidate.BallName}: {candidate.Ball}");
        yield return ("Layout", $"{candidate.LayoutName}: {LayoutMeasures.Of(candidate.Ball)}");
        if (candidate.FinishName.Length > 0)
        {
            yield return ("Finish", $"{candidate.FinishName}: {candidate.Ball.Finish}");
        }
        yield return ("Lane", $"{candidate.LaneName}: {candidate.Lane.Oil}");
        yield return ("Release", $"{candidate.ReleaseName}: {candidate.Release}");
    }

    private static IEnumerable<(string Name, string Value)> Seen(Candidate candidate, Shot shot)
    {
        yield return ("The ball", shot.StopSentence);
        if (shot.ReachedPins)
        {
            var e = shot.Entry;
            yield return ("Entry angle", Invariant($"{e.Angle / Degree:F2}°"));
            yield return ("Entry", Invariant($"board {e.Board:F1}, {OffPocket(e.Offset)} (board {e.BoardAtPinLine:F1} at the pin's line)"));
            var slip = e.SlipSpeed > 0 ? Invariant($"slipping at {e.SlipSpeed:F2} m/s") : "rolling";
            yield return ("At the pins", $"{Trade.Miles(e.Speed)} mph, {Trade.Turns(e.SpinRate)} rpm, "
                + Invariant($"rotation {e.AxisRotation / Degree:F0}°, tilt {e.AxisTilt / Degree:F0}°, {slip}"));
            yield return ("Time, turns", Invariant($"{e.Time:F2} s, {e.Revolutions:F1} turns"));
        }
        yield return ("Breakpoint", shot.Breakpoint.ToString());
        yield return ("End of skid", shot.EndOfSkid?.ToString() ?? "none: it hardly turns");
        var again = shot.SlippedAgain == 0 ? "" : shot.SlippedAgain == 1 ? "; slipped again once" : $"; slipped again {shot.SlippedAgain} times";
        yield return ("Start of roll", shot.StartOfRoll is { } roll
            ? Invariant($"board {roll.Board:F1} at {roll.Distance / Foot:F1} ft") + again
            : "not before the end");
        yield return ("Track", Invariant($"flare {shot.Track.Flare / Inch:F2} in over {shot.Track.Rings.Count(r => r.IsWhole)} rings, ")
            + Invariant($"{shot.Track.FlarePerRevolution / Inch:F2} in a turn; {Trade.Oil(shot.OilTakenUp)} µL of oil taken up"));
        if (shot.Track.Against(candidate.Holes) is { Count: > 0 } clearances)
        {
            var nearest = clearances.MinBy(c => c.Clearance);
            yield return ("Holes", nearest.IsTouched ? string.Join("; ", shot.Track.Warnings(candidate.Holes))
                : Invariant($"nearest the {nearest.Hole.Name}, {nearest.Clearance / Inch:F2} in clear on revolution {nearest.Revolution}"));
        }
        yield return ("Energy lost", Invariant($"to friction {-shot.End.FrictionWork:F1} J, to the air {-shot.End.DragWork:F1} J"));
    }

    private static string OffPocket(double offset) => Math.Abs(offset) < 0.05 * Inch ? "in the pocket"
        : Invariant($"{Math.Abs(offset) / Inch:F1} in {(offset > 0 ? "right" : "left")} of the pocket");
}
