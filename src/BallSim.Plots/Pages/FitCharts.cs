using BallSim.Fitting;
using Plotly.NET;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Plots.Pages;

/// <summary>Residuals of a fit along the lane: a chart for every measured quantity, and a dozen shots on each.</summary>
internal static class FitCharts
{
    // More shots than this on one chart cannot be told apart.
    private const int OnOne = 12;

    /// <summary>Shots that are drawn.</summary>
    public const int MostShots = 3 * OnOne;

    public static IEnumerable<(GenericChart Chart, string Id)> Residuals(FitResult fit)
    {
        string[] shots = [.. fit.Shots.Select(s => s.Track.Id).Take(MostShots)];
        foreach (var quantity in fit.Residuals.Select(r => r.Quantity).Distinct().Order())
        {
            var (name, unit, size) = FitWords.Of(quantity);
            var part = 0;
            foreach (var some in shots.Chunk(OnOne))
            {
                part++;
                FitResidual[] rows = [.. fit.Residuals.Where(r => r.Quantity == quantity && some.Contains(r.ShotId))];
                if (rows.Length == 0)
                {
                    continue;
                }
                var title = $"Left over of the {name}" + (shots.Length > OnOne ? $", shots {some[0]} to {some[^1]}" : "");
                yield return (new Column(name, unit, [.. rows.Select(r => r.Value / size)]).Residuals(
                    new("distance", "ft", [.. rows.Select(r => r.Distance / Foot)]), [.. rows.Select(r => r.ShotId)],
                    new("noise", unit, [.. rows.Select(r => Math.Abs(r.Value / r.Standardised) / size)]), title), Invariant($"residuals-{quantity}-{part}").ToLowerInvariant());
            }
        }
    }
}
