using BallSim.Lanes;
using BallSim.Tests.Laws;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Units;

namespace BallSim.Tests.Lanes;

public class OilCellsTests
{
    private static readonly OilMap House = OilMap.Crowned(40 * Foot, 25 * Millilitre);

    [Theory]
    [InlineData(1, 120)]
    [InlineData(2, 60)]
    [InlineData(3, 37)]
    public void Cells_hold_the_film_s_volume_and_so_does_their_own_film(int perBoard, int rows)
    {
        var cells = OilCells.Of(House, perBoard, rows);
        Assert.Equal(39 * perBoard, cells.Columns);
        Assert.Equal(House.Volume, cells.Volume, 1e-12 * House.Volume);
        Assert.Equal(cells.Volume, cells.Oil.Volume, 1e-12 * House.Volume);
        Assert.Equal(cells.Volume, cells.VolumeBetween(0, 60 * Foot, 0.5, 39.5), 1e-12 * House.Volume);
    }

    [Property(MaxTest = 60)]
    public Property Whatever_lies_in_the_cells_their_film_has_the_same_volume_and_is_nowhere_below_zero() => Prop.ForAll(
        (from films in Gen.ArrayOf(Gen.OneOf(Gen.Constant(0.0), Worlds.Between(0, 1e-5)), 39 * 12) from perBoard in Gen.Choose(1, 3) from rows in Gen.Choose(10, 30) select (films, perBoard, rows)).ToArbitrary(),
        c =>
        {
            var cells = Cells(c.films, c.perBoard, c.rows);
            Assert.Equal(cells.Volume, cells.Oil.Volume, 1e-11 * cells.Volume + 1e-18);
            for (var k = 0; k < 200; k++)
            {
                Assert.True(cells.Oil.Map.At((k % 20 - 10) * 0.052, k * 0.091) >= -1e-18);
            }
        });

    [Fact]
    public void A_groove_one_cell_wide_lies_in_its_neighbours_by_three_sixteenths()
    {
        var even = OilCells.Of(OilMap.Linear(1e-5, 0, 0));
        var taken = new double[39 * 120];
        var cell = even.VolumeIn(5, 19);
        for (var row = 0; row < 120; row++)
        {
            taken[row * 39 + 19] = 0.4 * cell;
        }
        var film = even.Less(taken, out _).Oil.Map;
        double Lost(int column) => cell - film.Integral(even.CellWidth * (18.5 - column), even.CellWidth * (19.5 - column), 20 * even.CellLength, 21 * even.CellLength);
        Assert.Equal(0.4 * cell * 13 / 16, Lost(19), 1e-12 * cell);
        Assert.Equal(0.4 * cell * 1.5 / 16, Lost(18), 1e-12 * cell);
        Assert.Equal(0.4 * cell * 1.5 / 16, Lost(20), 1e-12 * cell);
    }

    [Fact]
    public void A_cell_gives_no_more_than_it_has_and_its_neighbours_lend_the_rest()
    {
        var cells = OilCells.Of(OilMap.Linear(1e-6, 0, 0));
        var cell = cells.VolumeIn(0, 0);
        var taken = new double[39 * 120];
        taken[60 * 39 + 20] = 2.6 * cell;
        taken[61 * 39 + 20] = 1.2 * cell;
        var left = cells.Less(taken, out var withheld);
        Assert.Equal(0, withheld);
        Assert.Equal(0, left.VolumeIn(60, 20));
        Assert.Equal(0, left.VolumeIn(61, 20));
        Assert.Equal(cells.Volume - 3.8 * cell, left.Volume, 1e-12 * cells.Volume);
        // The cells around (60, 20) but not (61, 20), which has none, lent 1.6 between seven.
        Assert.True(left.VolumeIn(59, 20) < cell && left.VolumeIn(59, 20) > 0.7 * cell);
        Assert.Equal(cell, left.VolumeIn(64, 20), 1e-15 * cell);
        Array.Fill(taken, 1.5 * cell);
        Assert.Equal(0, cells.Less(taken, out withheld).Volume);
        Assert.Equal(0.5 * cells.Volume, withheld, 1e-12 * cells.Volume);
    }

    [Fact]
    public void Columns_count_from_the_right_and_rows_from_the_foul_line()
    {
        var cells = OilCells.Of(OilMap.Linear(1e-5, 1e-5, -4e-7), 2, 60);
        Assert.Equal(1e-5 + 1e-5 * (19.5 * cells.CellWidth * 2 - 0.5 * cells.CellWidth) - 4e-7 * 0.5 * Foot, cells.FilmIn(0, 0), 1e-18);
        Assert.True(cells.FilmIn(0, 77) < cells.FilmIn(0, 0) && cells.FilmIn(59, 0) < cells.FilmIn(0, 0));
        Assert.Equal(cells.FilmIn(30, 10), cells.Oil.FilmAt(0.5 * RegulationLane.Width - 10.5 * cells.CellWidth, 30.5 * cells.CellLength), 1e-17);
        Assert.Equal(0, OilCells.Of(OilMap.Linear(-1e-6, 0, 0)).Volume);
    }

    [Fact]
    public void Zones_are_exact_means_over_ten_feet_by_groups_of_boards()
    {
        var zones = OilZone.Of(OilMap.Linear(1e-5, 1e-5, -4e-7));
        Assert.Equal(30, zones.Count);
        Assert.Equal([(1, 7), (8, 14), (15, 25), (26, 32), (33, 39)], zones.Take(5).Select(z => (z.FromBoard, z.ToBoard)));
        Assert.All(zones, z => Assert.Equal(1e-5 + 1e-5 * RegulationLane.PlaceOf((z.FromBoard + z.ToBoard) / 2.0) - 4e-7 * (z.FromDistance + z.ToDistance) / 2, z.Film, 1e-18));
    }

    [Fact]
    public void Equal_cells_are_equal_and_nonsense_is_refused()
    {
        Assert.Equal(OilCells.Of(House), OilCells.Of(House));
        Assert.Equal(OilCells.Of(House).GetHashCode(), OilCells.Of(House).GetHashCode());
        Assert.NotEqual(OilCells.Of(House), OilCells.Of(House, 2));
        Assert.Contains("cellsPerBoard = 0 is out of [1, 8]", Assert.Throws<ArgumentOutOfRangeException>(() => OilCells.Of(House, 0)).Message);
        Assert.Contains("row = 120 is out of [0, 119]", Assert.Throws<ArgumentOutOfRangeException>(() => OilCells.Of(House).FilmIn(120, 0)).Message);
    }

    private static OilCells Cells(double[] films, int perBoard, int rows)
    {
        // Through the book-keeping itself: a full lane less what makes the films wanted.
        var full = OilCells.Of(OilMap.Linear(2e-5, 0, 0), perBoard, rows);
        var area = full.CellWidth * full.CellLength;
        var taken = new double[full.Rows * full.Columns];
        for (var i = 0; i < taken.Length; i++)
        {
            taken[i] = full.VolumeIn(0, 0) - area * films[i * 7 % films.Length];
        }
        return full.Less(taken, out _);
    }
}
