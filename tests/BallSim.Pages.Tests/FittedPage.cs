using System.Text.Json;
using BallSim.Fitting;
using BallSim.Lanes;
using BallSim.Plots.Pages;
using BallSim.Shots;
using Deque.AxeCore.Commons;

namespace BallSim.Pages.Tests;

/// <summary>The page of a fit with a verdict, opened at both widths.</summary>
public class FittedPage(Chromium chromium) : IClassFixture<Chromium>
{
    private string Written()
    {
        var lane = Lane.Regulation with { GivenFriction = FrictionMap.Zones((0, 0.08)) };
        var ball = Balls.Ball.FromSpecification(15 * Units.Pound, 2.48 * Units.Inch, 0.05 * Units.Inch);
        Releases.Release release = new() { Board = 24, LaunchAngle = 3 * Units.Degree, Speed = 8, SpinRate = 35, AxisRotation = 1, AxisTilt = 0.2, AxisInBall = Vector3D.UnitX };
        FitShot[] shots = [.. Enumerable.Range(1, 14).Select(k => new FitShot(TrackedShot.Of($"{k}", Enumerable.Range(1, 8).Select(i =>
        {
            var p = Simulator.Throw(ball, lane, release).AtDistance(2.2 * i);
            return new TrackedPoint { Distance = p.Y, X = p.X + 4e-3 * Math.Sin(3 * k + 7 * i), Time = p.Time + 3e-3 * Math.Cos(5 * k + 2 * i) };
        })), ball, lane, release))];
        var fit = TrackFit.Of(shots, FitOptions.For() with { Parameters = [new(FitParameter.Dry), new(FitParameter.DragCoefficient, new(0.1)), .. FitOptions.Release(new())] });
        var path = chromium.PathOf("fit");
        new FitPage { Title = "Fourteen shots", Bowler = "Somebody", Fit = fit, Verdict = Verdict.Of(fit, shots, SimulatorOptions.Default) }.SaveHtml(path);
        return path;
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task It_draws_fits_its_width_and_keeps_nobody_out(int width)
    {
        await using var sight = await chromium.Open(Written(), width, 800);
        Assert.Empty(sight.Complaints);
        Assert.Empty(sight.Outside);
        Assert.Equal(4, await sight.Page.EvaluateExpressionAsync<int>("[...document.querySelectorAll('figure')].filter((f) => f.querySelector('.main-svg')).length"));
        var over = await sight.Page.EvaluateFunctionAsync<string[]>("""
            () => {
              const wide = document.documentElement.clientWidth;
              return [...document.querySelectorAll("body *")].filter((e) => !e.closest(".box") && !e.closest("svg") && e.getBoundingClientRect().right > wide + 1).map((e) => `${e.tagName}.${e.className}`).slice(0, 5);
            }
            """);
        Assert.Empty(over);
        await sight.Page.EvaluateExpressionAsync(new BundledAxeScriptProvider().GetScript());
        var found = await sight.Page.EvaluateFunctionAsync<JsonElement>("async () => { const r = await axe.run(document, { resultTypes: ['violations'] }); return r.violations.map((v) => ({ id: v.id, impact: v.impact, nodes: v.nodes.slice(0, 4).map((n) => n.html.slice(0, 160)) })); }");
        Assert.Empty(found.EnumerateArray().Where(v => v.GetProperty("impact").GetString() is "serious" or "critical").Select(v => v.ToString()));
    }
}
