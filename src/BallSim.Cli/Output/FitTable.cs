using BallSim.Fitting;
using BallSim.Plots.Pages;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Cli;

/// <summary>A fit in words and numbers, and the verdict on a ball.</summary>
internal static class FitTable
{
    private const int MostNotes = 20;

    public static void Show(Screen screen, FitResult fit)
    {
        Heading(screen, fit);
        var table = NameColumns.NewTable();
        table.AddColumn(new(""));
        foreach (var heading in (string[])["Value", "Error", "95 % from", "to"])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        foreach (var e in fit.Estimates.Where(e => e.ShotId is null))
        {
            var (name, unit) = (FitWords.Labelled(e.Parameter), FitWords.Of(e.Parameter).In);
            NameColumns.AddRow(table, e.IsDetermined
                ? [name, Invariant($"{e.Value / unit:G4}"), Invariant($"{e.StandardError / unit:G2}"), Invariant($"{e.Low95 / unit:G4}"), Invariant($"{e.High95 / unit:G4}{(e.IsAtBound ? " at its bound" : "")}")]
                : [name, "cannot be told", "", "", ""]);
        }
        screen.Show(table);
        screen.Output.WriteLine();
        Residuals(screen, fit);
        var correlations = from i in Enumerable.Range(0, fit.Estimates.Count(e => e.ShotId is null))
                           from j in Enumerable.Range(0, i)
                           select Invariant($"{fit.Estimates[j].Parameter}-{fit.Estimates[i].Parameter} {fit.Correlation(i, j):+0.00;-0.00}");
        screen.Say($"Correlations: {string.Join(", ", correlations)}.");
        foreach (var one in fit.Unseparated)
        {
            screen.Say(one.Sentence + ".");
        }
        Notes(screen, fit);
    }

    public static void Show(Screen screen, FitResult fit, Verdict verdict)
    {
        Heading(screen, fit);
        var table = NameColumns.NewTable();
        table.AddColumn(new(""));
        foreach (var heading in (string[])["Designed", "Measured", "Difference\nfrom", "to", "Tolerance", ""])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        foreach (var m in verdict.Metrics)
        {
            var (name, symbol, unit) = FitWords.Of(m.Metric);
            string Text(double v) => double.IsFinite(v) ? Invariant($"{v / unit:F2}{symbol}") : Trade.None;
            string Signed(double v) => double.IsFinite(v) ? Invariant($"{v / unit:+0.00;-0.00;0.00}") : Trade.None;
            NameColumns.AddRow(table, [name, Text(m.Designed), Text(m.Measured), Signed(m.Low), Signed(m.High), "±" + Text(m.Tolerance), FitWords.Of(m.Finding)]);
        }
        screen.Show(table);
        screen.Say($"The ball: {verdict.Sentence}.");
        if (verdict.Missed.Count > 0)
        {
            screen.Say($"Left out of the metrics: {verdict.MissedSentence}.");
        }
        screen.Say("Each shot is thrown as designed with its own release as fitted, and held against its fitted path. The intervals of the mean difference hold together in 95 %; they carry the scatter from shot to shot and the error of the fitted friction. "
            + "Wholly within the tolerance (assumed): as designed; wholly outside: differs; else one cannot tell.");
        foreach (var one in fit.Unseparated)
        {
            screen.Say(one.Sentence + ".");
        }
        Notes(screen, fit);
    }

    private static void Heading(Screen screen, FitResult fit)
    {
        screen.Say(Invariant($"{fit.Shots.Count} shots, {fit.Residuals.Count} measured numbers; {fit.Reason} after {fit.Iterations} steps. Chi-square {fit.ChiSquare:F0} on {fit.DegreesOfFreedom:F0} degrees of freedom: ")
            + FitWords.Goodness(fit) + ".");
        screen.Output.WriteLine();
    }

    private static void Residuals(Screen screen, FitResult fit)
    {
        var table = NameColumns.NewTable();
        table.AddColumn(NameColumns.Numbers("Distance\n(ft)"));
        foreach (var heading in (string[])["Across,\nmean (mm)", "rms in\nnoise", "Time,\nmean (ms)", "rms in\nnoise"])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        foreach (var row in fit.ResidualsByDistance.GroupBy(b => b.From).OrderBy(g => g.Key))
        {
            IEnumerable<string> Cells(FitQuantity quantity) => row.Where(b => b.Quantity == quantity).Select(b => (string[])[Invariant($"{1000 * b.Mean:+0.0;-0.0;0.0}"), Invariant($"{b.RootMeanSquare:F2}")]).DefaultIfEmpty([Trade.None, Trade.None]).First();
            NameColumns.AddRow(table, [Invariant($"{row.Key / Foot:F0}-{row.First().To / Foot:F0}"), .. Cells(FitQuantity.Lateral), .. Cells(FitQuantity.Time)]);
        }
        screen.Show(table);
        screen.Say("Measured less fitted. A mean that is not near zero over several stretches: the path is of another shape than the model's.");
    }

    private static void Notes(Screen screen, FitResult fit)
    {
        foreach (var (shot, note) in fit.Notes.Take(MostNotes))
        {
            screen.Say($"shot {shot}, {note}.", "  ");
        }
        if (fit.Notes.Count > MostNotes)
        {
            screen.Say($"and {fit.Notes.Count - MostNotes} remarks more.", "  ");
        }
    }
}
