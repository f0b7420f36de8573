using System.Text;
using BallSim.Fitting;
using static System.FormattableString;
using static BallSim.Plots.Pages.Document;
using static BallSim.Units;

namespace BallSim.Plots.Pages;

/// <summary>The numbers of a fit and of a verdict as tables.</summary>
internal static class FitTables
{
    public static string Estimates(FitResult fit)
    {
        Estimate[] shared = [.. fit.Estimates.Where(e => e.ShotId is null)];
        return shared.Length == 0 ? "" : Table("Estimates", "What all shots have in common", ["Number", "Value", "Standard error", "95 % from", "to", "Bias taken off"], shared.Select(e =>
        {
            var unit = FitWords.Of(e.Parameter).In;
            string Text(double v, string digits) => (v / unit).ToString(digits, System.Globalization.CultureInfo.InvariantCulture);
            return (FitWords.Labelled(e.Parameter), (string[])(e.IsDetermined
                ? [Text(e.Value, "G4") + (e.IsAtBound ? " at its bound" : ""), Text(e.StandardError, "G2"), Text(e.Low95, "G4"), Text(e.High95, "G4"), e.Bias == 0 ? "-" : Text(e.Bias, "G2")]
                : ["cannot be told", "-", "-", "-", "-"]));
        }));
    }

    public static string Correlations(FitResult fit)
    {
        Estimate[] shared = [.. fit.Estimates.Where(e => e.ShotId is null)];
        return shared.Length < 2 ? "" : Table("Correlations", "Correlations of the estimates", ["", .. shared.Select(e => FitWords.Of(e.Parameter).Name)],
            shared.Select((e, i) => (FitWords.Of(e.Parameter).Name, (string[])[.. shared.Select((_, j) => i == j ? "1" : Invariant($"{fit.Correlation(i, j):+0.00;−0.00;0.00}"))])));
    }

    public static string Bands(FitResult fit) => Table("Residuals by distance", "Residuals by distance: their mean, and their root mean square in units of the noise (1 is as good as the noise)", ["Distance, ft", "Quantity", "Numbers", "Mean", "In noise"],
        fit.ResidualsByDistance.OrderBy(b => b.Quantity).ThenBy(b => b.From).Select(b =>
        {
            var (name, unit, size) = FitWords.Of(b.Quantity);
            return (Invariant($"{b.From / Foot:F0} to {b.To / Foot:F0}"), (string[])[name, Invariant($"{b.Count}"), Invariant($"{b.Mean / size:+0.00;−0.00;0.00} {unit}"), Invariant($"{b.RootMeanSquare:F2}")]);
        }));

    public static string Shots(FitResult fit)
    {
        var own = fit.Estimates.Where(e => e.ShotId is not null).GroupBy(e => e.ShotId!).ToArray();
        return own.Length == 0 ? "<p>Nothing of the single shots was fitted.</p>\n" : Table("Shots", "What was fitted of each release, with standard errors", ["Shot", .. own[0].Select(e => FitWords.Labelled(e.Parameter))], own.Select(shot =>
            (shot.Key, (string[])[.. shot.Select(e => FitWords.Of(e.Parameter).In switch { var unit => Invariant($"{e.Value / unit:F2} <small>± {e.StandardError / unit:F2}</small>") })])), encoded: true);
    }

    public static string Of(Verdict verdict)
    {
        var text = new StringBuilder($"<p class=\"note\">The ball: {Encoded(verdict.Sentence)}.</p>\n");
        if (verdict.Missed.Count > 0)
        {
            text.Append($"<p>Left out of the table: {Encoded(verdict.MissedSentence)}.</p>\n");
        }
        text.Append(Table("Verdict", "Means over the shots, and the interval of the mean difference, measured less designed", ["Metric", "Designed", "Measured", "Difference from", "to", "Tolerance", "Shots", "Finding"], verdict.Metrics.Select(m =>
        {
            var (name, unit, size) = FitWords.Of(m.Metric);
            string Text(double v) => double.IsFinite(v) ? Invariant($"{v / size:F2}{unit}") : "-";
            string Signed(double v) => double.IsFinite(v) ? Invariant($"{v / size:+0.00;−0.00;0.00}") : "-";
            return (name, (string[])[Text(m.Designed), Text(m.Measured), Signed(m.Low), Signed(m.High), "±" + Text(m.Tolerance), Invariant($"{m.Shots}"), FitWords.Of(m.Finding)]);
        })));
        return text.Append("<p>Each shot is thrown as designed with its own release as fitted, and held against its fitted path. The intervals hold together in 95 %; they carry the scatter from shot to shot and the error of the fitted friction. "
            + "Wholly within the tolerance (assumed): as designed; wholly outside: differs; else one cannot tell.</p>\n").ToString();
    }

    private static string Table(string label, string caption, string[] headings, IEnumerable<(string Head, string[] Cells)> rows, bool encoded = false)
    {
        var text = new StringBuilder($"""<div class="box" tabindex="0" role="region" aria-label="{label}"><table aria-label="{label}"><caption>{caption}</caption><thead><tr>""");
        for (var i = 0; i < headings.Length; i++)
        {
            text.Append(headings[i].Length == 0 ? "<td></td>" : $"<th scope=\"col\"{(i > 0 ? " class=\"number\"" : "")}>{Encoded(headings[i])}</th>");
        }
        text.Append("</tr></thead>\n<tbody>\n");
        foreach (var (head, cells) in rows)
        {
            text.Append($"<tr><th scope=\"row\">{Encoded(head)}</th>");
            foreach (var cell in cells)
            {
                text.Append($"<td class=\"number\">{(encoded ? cell : Encoded(cell))}</td>");
            }
            text.Append("</tr>\n");
        }
        return text.Append("</tbody></table></div>\n").ToString();
    }
}
