using System.Text.RegularExpressions;
using BallSim.Fitting;
using BallSim.Lanes;
using BallSim.Plots.Pages;
using BallSim.Shots;

namespace BallSim.Plots.Tests;

public partial class FitPageTests
{
    private const string Hostile = "</script><img src=x onerror=alert(1)>&\"'";

    // Straight shots on a lane of one friction, each point off by a millimetre to alternating sides.
    private static (FitResult Fit, FitShot[] Shots) Fitted(int count, Func<int, string> id)
    {
        var lane = Lane.Regulation with { GivenFriction = FrictionMap.Zones((0, 0.08)) };
        var (release, ball) = (Throws.Usual, Throws.Drilled().Ball);
        var shot = Simulator.Throw(ball, lane, release);
        FitShot[] shots = [.. Enumerable.Range(0, count).Select(k => new FitShot(TrackedShot.Of(id(k), Enumerable.Range(1, 5).Select(i => shot.AtDistance(3.5 * i)).Select((p, i) =>
            new TrackedPoint { Distance = p.Y, X = p.X + (i % 2 == 0 ? 1e-3 : -1e-3), Time = p.Time })), ball, lane, release))];
        return (TrackFit.Of(shots, new() { Parameters = [new(FitParameter.Dry), new(FitParameter.Speed, new(0.1))] }), shots);
    }

    [Fact]
    public void It_tells_the_fit_in_the_units_of_the_trade()
    {
        var (fit, shots) = Fitted(2, k => $"no. {k}");
        var page = new FitPage { Title = "A fit", Fit = fit, Verdict = Verdict.Of(fit, shots, SimulatorOptions.Default) }.ToHtml();
        Assert.Contains(FormattableString.Invariant($"Dry friction</th><td class=\"number\">{fit[FitParameter.Dry].Value:G4}</td>"), page);
        Assert.Contains(FormattableString.Invariant($"no. 1</th><td class=\"number\">{fit[FitParameter.Speed, 1].Value / Units.MilesPerHour:F2} <small>"), page);
        Assert.Equal(2, Charts().Count(page));
        Assert.Contains("id=\"verdict\"", page);
        Assert.Contains("Entry speed</th>", page);
        Assert.DoesNotContain("are drawn; the table holds all", page);
        // One estimate is correlated with nothing.
        Assert.DoesNotContain("Correlations of the estimates", page);
    }

    [Fact]
    public void Of_many_shots_the_first_are_drawn_a_dozen_to_a_chart()
    {
        var (fit, _) = Fitted(40, k => $"{k + 1}");
        var page = new FitPage { Title = "Many", Fit = fit }.ToHtml();
        Assert.Equal(6, Charts().Count(page));
        Assert.Contains("shots 25 to 36", page);
        Assert.Contains("The first 36 of 40 shots are drawn", page);
    }

    [Fact]
    public void A_name_from_a_file_stays_a_name()
    {
        var page = new FitPage { Title = Hostile, Bowler = Hostile, Fit = Fitted(1, _ => Hostile).Fit }.ToHtml();
        var outside = Script().Replace(page, "");
        Assert.DoesNotContain("<img", outside);
        Assert.DoesNotContain("</script", outside);
        Assert.Contains("&lt;img", outside);
    }

    [GeneratedRegex("<figure ")]
    private static partial Regex Charts();

    [GeneratedRegex("<script[^>]*>.*?</script>", RegexOptions.Singleline)]
    private static partial Regex Script();
}
