using BallSim.Files;
using BallSim.Plots.Pages;
using BallSim.Shots;

namespace BallSim.Cli;

/// <summary>A comparison as a page.</summary>
internal static class ComparisonHtml
{
    public static void Write(string path, Scenario scenario, IReadOnlyList<ComparisonRow> rows)
    {
        var bowler = scenario.Bowler;
        var page = new ComparisonPage
        {
            Title = scenario.Title.Length > 0 ? scenario.Title : "A comparison before drilling",
            Bowler = $"{(bowler.Name.Length > 0 ? $"{bowler.Name}: " : "")}axis point {bowler.Axis}.",
            Rows = rows,
            Scatter = bowler.Scatter,
            Options = scenario.Options,
            Sheets =
            [
                .. from ball in scenario.Balls
                   from layout in scenario.Layouts
                   select new NamedSheet(scenario.Balls.Count > 1 ? $"{ball.Name}, {layout.Name}" : layout.Name, ball.Drilled(layout.Value, bowler), ball.BalanceLever),
            ],
        };
        PageFile.Save(path, page.SaveHtml);
    }
}
