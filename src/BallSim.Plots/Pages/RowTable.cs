using System.Text;
using BallSim.Releases;
using BallSim.Shots;
using static System.FormattableString;
using static BallSim.Plots.Pages.Document;
using static BallSim.Units;

namespace BallSim.Plots.Pages;

/// <summary>The rows of a comparison as a table that sorts by any heading.</summary>
internal static class RowTable
{
    public static string Of(IReadOnlyList<ComparisonRow> ranked, Scatter scatter)
    {
        var names = RowNames.Varying(ranked);
        var text = new StringBuilder("<p>Re-aimed at the pocket, the row nearest to the band of entry angles first. Press a heading to sort by it. Rows inside the band are tinted and carry a dot.</p>\n");
        text.Append("""<div class="box" tabindex="0" role="region" aria-label="Table of the comparison"><table class="sortable" aria-label="Comparison"><thead><tr>""");
        text.Append("""<th scope="col" class="number" aria-sort="ascending"><button type="button">Rank</button></th>""");
        foreach (var (heading, _) in names)
        {
            text.Append($"""<th scope="col" aria-sort="none"><button type="button">{heading}</button></th>""");
        }
        foreach (var heading in (string[])["Entry angle, °", "Line moved, °", "Breakpoint, board", "Breakpoint, ft", "Rolls from, ft", "Speed, mph", "Spin, rpm", "Old line: off, in"])
        {
            text.Append($"""<th scope="col" class="number" aria-sort="none"><button type="button">{heading}</button></th>""");
        }
        text.Append("</tr></thead>\n<tbody>\n");
        for (var i = 0; i < ranked.Count; i++)
        {
            var row = ranked[i];
            text.Append($"<tr{(row.DistanceFromBand == 0 ? " class=\"inside\"" : "")}>").Append(Number(i + 1, Invariant($"{i + 1}")));
            foreach (var (_, of) in names)
            {
                text.Append($"<td>{Encoded(of(row.Candidate))}</td>");
            }
            text.Append(Numbers(row)).Append(Off(row.SameLine)).Append("</tr>\n");
        }
        text.Append("</tbody></table></div>\n");
        foreach (var (row, i) in ranked.Select((row, i) => (row, i)).Where(r => !r.row.ReAimed.IsFound))
        {
            text.Append(Invariant($"<p>Row {i + 1}: {Encoded(row.ReAimed.Reason)}.</p>\n"));
        }
        text.Append(Notes(scatter));
        return text.ToString();
    }

    private static string Numbers(ComparisonRow row)
    {
        if (row.ReAimed.Shot is not { } shot)
        {
            return string.Concat(Enumerable.Repeat(Missing, 7));
        }
        var angle = shot.Entry.Angle / Degree;
        var spread = row.Spread is { } s ? Invariant($" <small>± {s.Angle / Degree:F1}</small>") : " <small>± ?</small>";
        var mark = row.DistanceFromBand == 0 ? "● " : row.IsWithinScatter ? "~ " : "";
        var breakpoint = shot.Breakpoint;
        return Number(angle, Invariant($"{mark}{angle:F1}{spread}"), "number angle") + Number(row.LineMove / Degree, Invariant($"{row.LineMove / Degree:+0.0;−0.0;0.0}"))
            + (breakpoint.IsEnd ? Missing + Missing : Number(breakpoint.Board, Invariant($"{breakpoint.Board:F1}")) + Number(breakpoint.Distance / Foot, Invariant($"{breakpoint.Distance / Foot:F0}")))
            + (shot.StartOfRoll is { } roll ? Number(roll.Distance / Foot, Invariant($"{roll.Distance / Foot:F0}")) : Missing)
            + Number(shot.Entry.Speed / MilesPerHour, Invariant($"{shot.Entry.Speed / MilesPerHour:F1}")) + Number(shot.Entry.SpinRate / Rpm, Invariant($"{shot.Entry.SpinRate / Rpm:F0}"));
    }

    private static string Off(Shot shot)
    {
        if (!shot.ReachedPins)
        {
            return $"""<td class="number" data-value="">{(shot.StopReason == StopReason.Gutter ? "gutter" : "unfinished")}</td>""";
        }
        var inches = shot.Entry.Offset / Inch;
        var side = Math.Abs(inches) < 0.05 ? "" : inches > 0 ? " right" : " left";
        return Number(inches, Invariant($"{(shot.StopReason == StopReason.PassedHeadPin ? "* " : "")}{Math.Abs(inches):F1}{side}"));
    }

    private const string Missing = """<td class="number" data-value="">-</td>""";

    private static string Number(double value, string text, string kind = "number") => Invariant($"""<td class="{kind}" data-value="{value:R}">{text}</td>""");

    private static string Notes(Scatter s) =>
        "<p>Every row starts from the bowler's own board; the launch angle is moved (plus: towards the bowler's own gutter) until the ball enters at the pocket. The last column tells where it would enter on the old line, "
        + "from the pocket; * misses the head pin, told at the line of the pins. Boards count from the right.</p>\n"
        + Invariant($"<p>± is what the bowler's scatter does to the entry angle, one standard deviation: speed {s.Speed / MilesPerHour:0.##} mph, launch {s.LaunchAngle / Degree:0.##}°, board {s.Board:0.##}, spin {s.SpinRate / Rpm:0.##} rpm, ")
        + Invariant($"rotation {s.AxisRotation / Degree:0.##}°, tilt {s.AxisTilt / Degree:0.##}°{(s == new Scatter() ? " (assumed)" : "")}. ~ marks rows whose angle differs from the first row's by less than that: a single throw would not tell them apart.</p>\n");
}
