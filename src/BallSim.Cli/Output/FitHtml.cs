using BallSim.Files;
using BallSim.Fitting;
using BallSim.Plots.Pages;

namespace BallSim.Cli;

/// <summary>A fit, with a verdict or without, as a page.</summary>
internal static class FitHtml
{
    public static void Write(string path, Scenario scenario, FitResult fit, TrackNoise noise, Verdict? verdict)
    {
        var bowler = scenario.Bowler;
        var page = new FitPage
        {
            Title = (scenario.Title.Length > 0 ? $"{scenario.Title}: " : "") + (verdict is null ? "tracked shots, fitted" : "tracked shots against the design"),
            Bowler = $"{(bowler.Name.Length > 0 ? $"{bowler.Name}: " : "")}axis point {bowler.Axis}.",
            Fit = fit,
            Noise = noise,
            Verdict = verdict,
        };
        PageFile.Save(path, page.SaveHtml);
    }
}
