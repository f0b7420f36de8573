using BallSim.Lanes;
using FsCheck;
using FsCheck.Xunit;

namespace BallSim.Tests.Lanes;

/// <summary>The table that leads from a coordinate to its interval, against looking through all knots. By construction.</summary>
public class KnotsTests
{
    [Property(Arbitrary = [typeof(Grids)], MaxTest = 300)]
    public void So_many_steps_from_a_bin_find_the_interval(Grid grid, Spot spot, bool fine)
    {
        var values = grid.X;
        // With bins of less than half an interval, that which a bin begins in or the next.
        var knots = fine ? Knots.Fine(values) : new Knots(values);
        if (fine && 2.02 * (values[^1] - values[0]) < (1 << 14) * values.Zip(values.Skip(1), (a, b) => b - a).Min())
        {
            Assert.True(knots.Steps < 2);
        }
        var column = spot.Column % (values.Length - 1);
        foreach (var place in new[] { values[column], values[column + 1], values[column] + spot.U * (values[column + 1] - values[column]), values[0] - 0.1, values[^1] + 0.1 })
        {
            var exact = 0;
            while (exact < values.Length - 2 && values[exact + 1] <= place)
            {
                exact++;
            }
            Assert.Equal(exact, knots.IndexOf(place));
            // In single precision the bin may be the next one, but no farther off than the rounding.
            var at = ((float)place - (float)values[0]) * (float)knots.PerUnit;
            var bin = at > 0 ? (int)Math.Min(at, knots.Bins.Length - 1) : 0;
            var interval = knots.Bins[bin];
            for (var i = 0; i < knots.Steps; i++)
            {
                if (interval < values.Length - 2 && values[interval + 1] <= place)
                {
                    interval++;
                }
            }
            Assert.Equal(exact, interval);
        }
    }

    [Fact]
    public void Equal_intervals_need_two_steps()
    {
        var knots = new Knots([.. Enumerable.Range(0, 40).Select(i => 0.5 * i)]);
        Assert.Equal(2, knots.Steps);
    }
}
