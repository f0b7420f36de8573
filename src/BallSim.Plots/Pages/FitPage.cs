using System.Text;
using BallSim.Fitting;
using static System.FormattableString;
using static BallSim.Plots.Pages.Document;
using static BallSim.Units;

namespace BallSim.Plots.Pages;

/// <summary>A fit of tracked shots as one page to open, print and hand on: what was found and how well, what cannot be told apart, what the fit leaves over along the lane, and the verdict on the ball if there is one. The page carries all it needs and fetches nothing.</summary>
public sealed record FitPage
{
    /// <summary>What was fitted, as a title.</summary>
    public required string Title { get; init; }

    /// <summary>Who bowled, in a few words.</summary>
    public string Bowler { get; init; } = "";

    /// <summary>The fit.</summary>
    public required FitResult Fit { get; init; }

    /// <summary>How well the device was said to measure.</summary>
    public TrackNoise Noise { get; init; } = new();

    /// <summary>Whether the ball does what it was designed to do; null: not asked.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>Writes the page, by way of a temporary file that is renamed.</summary>
    /// <param name="path">The file; its folder must exist.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void SaveHtml(string path) => WholeFile.Replace(path, ToHtml());

    /// <summary>The page as text.</summary>
    public string ToHtml()
    {
        (string Id, string Name)[] always = [("found", "What was found"), ("residuals", "What is left over"), ("shots", "The shots"), ("assumed", "What is assumed")];
        var body = new StringBuilder(Document.Header(Title, Bowler, Verdict is null ? always : [("verdict", "The verdict"), .. always]));
        if (Verdict is { } verdict)
        {
            body.Append("<section id=\"verdict\"><h2>The verdict</h2>\n").Append(FitTables.Of(verdict)).Append("</section>\n");
        }
        body.Append("<section id=\"found\"><h2>What was found</h2>\n").Append(Found()).Append("</section>\n");
        body.Append("<section id=\"residuals\"><h2>What is left over</h2>\n").Append(LeftOver()).Append("</section>\n");
        body.Append("<section id=\"shots\"><h2>The shots</h2>\n").Append(FitTables.Shots(Fit)).Append(Remarks()).Append("</section>\n");
        body.Append("<section id=\"assumed\"><h2>What is assumed</h2>\n").Append(Assumed()).Append("</section>\n</main>\n");
        body.Append("<footer><div class=\"column\"><p>Computed by BallSim. Friction fitted on one day is that of this ball on this lane on that day.</p></div></footer>");
        return Document.Of(Encoded(Title), body.ToString());
    }

    private string Found()
    {
        var text = new StringBuilder(Invariant($"<p>{Fit.Shots.Count} shots, {Fit.Residuals.Count} measured numbers. {(Fit.IsConverged ? "The fit came to its end" : "The fit did not come to its end")} ({Encoded(Fit.Reason)}) after {Fit.Iterations} steps. Chi-square {Fit.ChiSquare:F0} on {Fit.DegreesOfFreedom:F0} degrees of freedom: {FitWords.Goodness(Fit)}.</p>\n"));
        text.Append(FitTables.Estimates(Fit));
        foreach (var one in Fit.Unseparated)
        {
            text.Append($"<p class=\"note\">{Encoded(one.Sentence)}.</p>\n");
        }
        return text.Append(FitTables.Correlations(Fit)).ToString();
    }

    private string LeftOver()
    {
        var text = new StringBuilder("<p>Measured less fitted, at the least misfit. A good fit keeps two points of three inside the band, and no shot to one side; a mean that is not near zero over several stretches: the path is of another shape than the model's.</p>\n");
        foreach (var (chart, id) in FitCharts.Residuals(Fit))
        {
            text.Append(Drawing.Of(chart, id).Html(caption: false)).Append('\n');
        }
        if (Fit.Shots.Count > FitCharts.MostShots)
        {
            text.Append(Invariant($"<p>The first {FitCharts.MostShots} of {Fit.Shots.Count} shots are drawn; the table holds all.</p>\n"));
        }
        return text.Append(FitTables.Bands(Fit)).ToString();
    }

    private string Remarks()
    {
        if (Fit.Notes.Count == 0)
        {
            return "";
        }
        var text = new StringBuilder("<h3>Remarks on the tracks</h3>\n<ul>\n");
        foreach (var (shot, note) in Fit.Notes)
        {
            text.Append($"<li>{Encoded($"shot {shot}, {note}")}</li>\n");
        }
        return text.Append("</ul>\n").ToString();
    }

    private string Assumed() =>
        Invariant($"<ul>\n<li>Noise of the tracks: {Encoded(Noise.ToString())}. Errors count as independent of each other.</li>\n")
        + "<li>Releases scatter about the one meant as the scenario's bowler does: that is the prior of each.</li>\n"
        + "<li>The equations and the friction law are right but for the numbers fitted. Intervals say nothing of what a wrong model does; the residuals along the lane do.</li>\n"
        + (Fit.Estimates.Any(e => e.Bias != 0) ? "<li>The bias that the bending of the model gives the estimates is taken off them, to second order.</li>\n" : "") + "</ul>\n";
}
