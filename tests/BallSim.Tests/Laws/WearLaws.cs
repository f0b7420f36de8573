using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BallSim.Tests.Laws;

/// <summary>Oil is neither made nor lost: what the lane loses, the cover gains, on any ball, release and pattern.</summary>
public class WearLaws
{
    private static Arbitrary<(Ball Ball, OilCells Cells, Release Release, bool Fresh)> Cases => (
        from ball in Worlds.Drilled
        from oil in Worlds.Oil
        from perBoard in Gen.Choose(1, 2)
        from rows in Gen.Elements(40, 120)
        from release in Worlds.AnyRelease
        from fresh in Gen.Elements(true, true, true, false)
        select (ball, OilCells.Of(oil, perBoard, rows), release, fresh)).ToArbitrary();

    [Property(MaxTest = 40)]
    public Property The_cells_lose_what_the_cover_gains() => Prop.ForAll(Cases, c =>
    {
        var shot = Simulator.Throw(c.Ball, Lane.Regulation with { Oil = c.Cells.Oil }, c.Release, new() { Tolerance = 1e-9, FreshCover = c.Fresh, MaxTransitions = 5000, MaxSteps = 2_000_000 });
        var wear = LaneWear.Of(shot, c.Cells);
        Assert.Equal(0, wear.Withheld, 1e-6 * wear.TakenUp);
        Assert.True(Math.Abs(wear.Imbalance) <= 1e-6 * wear.TakenUp, $"{wear.Imbalance / wear.TakenUp:E2} of {wear}");
        Assert.Equal(wear.Before.Volume - wear.After.Volume, wear.Loss, 1e-12 * wear.Before.Volume);
        Assert.Equal(wear.After.Volume, wear.After.Oil.Volume, 1e-12 * wear.Before.Volume);
        Assert.True(wear is { TakenUp: > 0, LaidDown: >= 0, Absorbed: >= 0, OnOldRings: >= 0 });
        for (var row = 0; row < wear.After.Rows; row++)
        {
            for (var column = 0; column < wear.After.Columns; column++)
            {
                Assert.True(wear.After.VolumeIn(row, column) >= 0);
            }
        }
    });
}
