using BallSim.Lanes;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Units;

namespace BallSim.Tests.Lanes;

public class OilMapTests
{
    private static readonly OilMap crowned = OilMap.Crowned(length: 40 * Foot, volume: 25 * Millilitre);

    [Property(MaxTest = 200)]
    public FsCheck.Property A_crowned_map_holds_the_stated_volume() => Prop.ForAll(
        (from volume in Gen.Choose(1, 999)
         from length in Gen.Choose(20, 60)
         from fullTo in Gen.Choose(0, 18)
         from fraction in Gen.Choose(0, 20)
         from full in Gen.Choose(10, 200)
         from wide in Gen.Choose(0, 190)
         from edge in Gen.Choose(0, 20)
         select (Volume: volume * Millilitre, Map: OilMap.Crowned(length * Foot, volume * Millilitre, fullTo * Foot, fraction / 20.0, full / 10.0, (full + wide) / 10.0, edge / 20.0)))
            .ToArbitrary(),
        made => Math.Abs(made.Map.Volume / made.Volume - 1) < 1e-12);

    [Fact]
    public void The_volume_is_the_integral_over_the_lane()
    {
        // By counting films, board by board and inch by inch, on a lane that stops at the edges.
        const double w = 41.5 * Inch;
        double sum = 0;
        const int across = 415, down = 2880;
        for (var i = 0; i < across; i++)
        {
            for (var k = 0; k < down; k++)
            {
                sum += crowned.FilmAt(-w / 2 + (i + 0.5) * w / across, (k + 0.5) * 60 * Foot / down);
            }
        }
        Assert.Equal(25 * Millilitre, sum * w / across * 60 * Foot / down, 25 * Millilitre * 1e-5);
    }

    [Theory]
    [InlineData(20, 4, 1)]
    [InlineData(13, 0, 1)]
    [InlineData(27, 8, 1)]
    [InlineData(1, 4, 0.125)]
    [InlineData(39, 4, 0.125)]
    [InlineData(7, 4, 0.5625)]          // half-way from 1/8 to 1
    [InlineData(33, 4, 0.5625)]
    [InlineData(20, 24, 0.625)]         // half-way from 8 to 40 ft: between 1 and 1/4
    [InlineData(7, 24, 0.5625 * 0.625)]
    [InlineData(20, 40, 0)]
    [InlineData(20, 55, 0)]
    public void A_crowned_map_has_the_described_shape(double board, double feet, double fraction) =>
        Assert.Equal(fraction * crowned.FilmOnBoard(0, 20), crowned.FilmOnBoard(feet * Foot, board), 1e-12 * crowned.FilmOnBoard(0, 20));

    [Fact]
    public void The_film_ends_smoothly_and_only_over_the_last_foot()
    {
        Assert.Equal(40 * Foot, crowned.Length);
        Assert.True(crowned.FilmOnBoard(38.9 * Foot, 20) > 0.25 * crowned.FilmOnBoard(0, 20));
        Assert.InRange(crowned.FilmOnBoard(39.5 * Foot, 20), 0.05 * crowned.FilmOnBoard(0, 20), 0.25 * crowned.FilmOnBoard(0, 20));
        const double h = 1e-6;
        Assert.True(crowned.FilmOnBoard(40 * Foot - h, 20) < 1e-9 * crowned.FilmOnBoard(0, 20));
    }

    [Fact]
    public void A_crowned_map_is_its_own_mirror_image()
    {
        for (var x = 0.0; x < 0.55; x += 0.013)
        {
            Assert.Equal(crowned.FilmAt(x, 7.7), crowned.FilmAt(-x, 7.7), 1e-14 * crowned.FilmAt(0, 0));
        }
    }

    [Fact]
    public void Its_ratio_is_that_of_the_means_of_the_boards()
    {
        // Boards 3 to 7 of a straight fall from 1 at board 13 to 1/8 at board 1: the mean is that of board 5.
        Assert.Equal(1 / (0.125 + 0.875 * 4 / 12), crowned.Ratio(20 * Foot), 1e-12);
        Assert.Equal(1, OilMap.Even(40 * Foot, 10 * Micrometre).Ratio(20 * Foot), 1e-12);
    }

    [Fact]
    public void An_even_map_is_even()
    {
        var even = OilMap.Even(40 * Foot, 10 * Micrometre);
        Assert.Equal(10 * Micrometre, even.FilmAt(0.4, 11.8), 1e-20);
        Assert.Equal(10 * Micrometre, even.FilmAt(0.6, -1), 1e-20);
        Assert.Equal(0, even.FilmAt(0, 40 * Foot));
        // 39 ft of full film and half of the last foot.
        Assert.Equal(41.5 * Inch * 39.5 * Foot * 10 * Micrometre, even.Volume, 1e-15);
    }

    [Fact]
    public void The_tapered_film_of_the_specification_holds_its_88_mL()
    {
        // Worked out by hand: 60 units to 8 ft, then linear to 5 at 40 ft, the same on every board, is 88 mL (without a run-out).
        var tapered = OilMap.Tapered(60 * OilUnit, 8 * Foot, 5 * OilUnit, 40 * Foot, runout: 0.01);
        Assert.Equal(88 * Millilitre, tapered.Volume, 0.5 * Millilitre);
        Assert.Equal(32.5 * OilUnit, tapered.FilmAt(0.2, 24 * Foot), 1e-3 * OilUnit);
    }

    [Fact]
    public void A_linear_map_is_the_plane_everywhere_but_never_below_zero()
    {
        var plane = OilMap.Linear(10e-6, 3e-6, -0.5e-6);
        Assert.Equal(10e-6 + 0.9e-6 - 2e-6, plane.FilmAt(0.3, 4), 1e-20);
        Assert.Equal(0, plane.FilmAt(0, 30));
        Assert.Equal(double.PositiveInfinity, plane.Map.EndOf(plane.Map.RowOf(5)));
    }

    [Fact]
    public void A_table_counts_boards_from_the_right()
    {
        var table = OilMap.FromTable([0, 5, 10, 12], [1, 20, 39], new[,] { { 1e-6, 2e-6, 3e-6 }, { 1e-6, 2e-6, 3e-6 }, { 0, 0, 0 }, { 0, 0, 0 } });
        Assert.Equal(1e-6, table.FilmAt(0.52, 2), 1e-18);
        Assert.Equal(3e-6, table.FilmAt(-0.52, 2), 1e-18);
        Assert.Equal(10, table.Length);
        Assert.Equal(2e-6, table.FilmOnBoard(0, 20), 1e-18);
    }

    [Theory]
    [InlineData("for feet write 40 * Foot", 40, 25e-6)]
    [InlineData("for millilitres write 25 * Millilitre", 12.2, 25)]
    public void The_likely_slip_of_units_is_named(string slip, double length, double volume) =>
        Assert.Contains(slip, Assert.Throws<ArgumentOutOfRangeException>(() => OilMap.Crowned(length, volume)).Message);

    [Fact]
    public void Nonsense_is_refused_with_the_place_of_it()
    {
        Assert.Contains("for micrometres write 10 * Micrometre", Assert.Throws<ArgumentOutOfRangeException>(() => OilMap.Even(12, 10)).Message);
        Assert.Contains("films[1, 0] = -1E-06 m is out of", Assert.Throws<ArgumentOutOfRangeException>(
            () => OilMap.FromTable([0, 1], [1, 2], new[,] { { 0, 0 }, { -1e-6, 0 } })).Message);
        Assert.Contains("stations[2] = 1 is not greater than stations[1] = 1", Assert.Throws<ArgumentException>(
            () => OilMap.FromTable([0, 1, 1], [1, 2], new double[3, 2])).Message);
        Assert.Contains("2 stations and 3 places", Assert.Throws<ArgumentException>(() => OilMap.FromTable([0, 1], [1, 2, 3], new double[2, 2])).Message);
        Assert.Contains("fullTo = 12 m is out of [0, 11.6952] m", Assert.Throws<ArgumentOutOfRangeException>(() => OilMap.Tapered(1e-5, 12, 0, 12)).Message);
        Assert.Contains("boards count from the right", Assert.Throws<ArgumentException>(() => OilMap.Crowned(12, 25e-6, fullFrom: 27, fullUpTo: 13)).Message);
    }

    [Fact]
    public void It_describes_itself()
    {
        Assert.Equal("dry", OilMap.Dry.ToString());
        Assert.StartsWith("crowned: 25.0 mL to 40.0 ft, ", crowned.ToString());
    }
}
