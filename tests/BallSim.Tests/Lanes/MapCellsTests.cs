using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Lanes;

public class MapCellsTests
{
    [Fact]
    public void A_map_kept_by_its_cells_is_the_same_map()
    {
        var oil = OilMap.Crowned(40 * Foot, 25 * Millilitre);
        var kept = oil.Cells;
        var again = OilMap.FromCells(oil.Kind, oil.Length, new(kept.X, kept.Y, kept.Coefficients));
        Assert.Equal(oil, again);
        Assert.Equal(oil.ToString(), again.ToString());
        Assert.NotEqual(oil, OilMap.FromCells(oil.Kind, oil.Length + 0.1, kept));
        var friction = FrictionMap.Zones((0, 0.04), (12, 0.2));
        Assert.Equal(friction, FrictionMap.FromCells(friction.Cells));
        Assert.Equal("friction 0.04 to 0.2", friction.ToString());
        var surface = Topography.FromHeights([0, 10, 18], [1, 20, 39], new[,] { { 0, 1e-3, 0 }, { 1e-3, 2e-3, 0 }, { 0, 1e-3, 1e-3 } });
        Assert.Equal(surface, Topography.FromCells(surface.Cells!));
        Assert.Null(Topography.Tilted(0.001).Cells);
    }

    [Fact]
    public void A_throw_over_cells_made_by_hand_follows_their_polynomial()
    {
        // mu = 0.1 everywhere, written as one cell: the closed form of a sliding sphere holds, v = v0 - mu g t until 2/7 v0 is lost; here over the whole of the lane, s = (v0^2 - v^2) / (2 mu g).
        var c = new double[16];
        c[0] = 0.1;
        var lane = Lane.Unbounded(FrictionMap.FromCells(new([0, 1], [0, 1], c)));
        Assert.Equal(Lane.Unbounded(FrictionMap.Constant(0.1)), lane);
        Assert.Equal(0.1, lane.GivenFriction!.Cells.At(3, 12));
        // y^3 x from the corner (0, 0): the last cell goes on for ever.
        c[0] = 0;
        c[7] = 2e-6;
        Assert.Equal(2e-6 * 0.5 * 8, new MapCells([0, 1], [0, 1], c).At(0.5, 2), 1e-18);
        Assert.Equal("1 by 1 cells", new MapCells([0, 1], [0, 1], c).ToString());
    }

    [Fact]
    public void Cells_that_cannot_be_are_refused()
    {
        var c = new double[16];
        Assert.Contains("x must increase", Assert.Throws<ArgumentException>(() => new MapCells([1, 1], [0, 1], c)).Message);
        Assert.Contains("has 16 numbers; 1 by 2 cells have 32", Assert.Throws<ArgumentException>(() => new MapCells([0, 1], [0, 1, 2], c)).Message);
        Assert.Contains("coefficients[5]", Assert.Throws<ArgumentOutOfRangeException>(() => new MapCells([0, 1], [0, 1], [.. c.Select((_, i) => i == 5 ? double.NaN : 0)])).Message);
        // Within the range at three corners, beyond it at the fourth: mu = 3 x y.
        c[5] = 3;
        Assert.Contains("mu in the cell (0, 0) = 3 is out of", Assert.Throws<ArgumentOutOfRangeException>(() => FrictionMap.FromCells(new([0, 1], [0, 1], c))).Message);
        // In the middle alone: 4 y (1 - y) times 2.5 at y = 1/2.
        (c[5], c[1], c[2]) = (0, 10, -10);
        Assert.Contains("= 2.5 is out of", Assert.Throws<ArgumentOutOfRangeException>(() => FrictionMap.FromCells(new([0, 1], [0, 1], c))).Message);
        Assert.Contains("film in the cell (0, 0)", Assert.Throws<ArgumentOutOfRangeException>(() => OilMap.FromCells("own", 10, new([0, 1], [0, 1], c))).Message);
        (c[1], c[2], c[0]) = (0, 0, 11);
        Assert.Contains("height in the cell (0, 0)", Assert.Throws<ArgumentOutOfRangeException>(() => Topography.FromCells(new([0, 1], [0, 1], c))).Message);
    }
}
