using BallSim.Lanes;
using static BallSim.Units;

namespace BallSim.Tests.Lanes;

public class TopographyTests
{
    private static readonly double[] Stations = [0, 2, 5, 9, 14, 18.288];
    private static readonly double[] Boards = [0.5, 5, 12, 20, 30, 39.5];

    private static double X(double board) => RegulationLane.PlaceOf(board);

    private static double[,] Of(Func<double, double, double> height)
    {
        var heights = new double[Stations.Length, Boards.Length];
        for (var k = 0; k < Stations.Length; k++)
        {
            for (var i = 0; i < Boards.Length; i++)
            {
                heights[k, i] = height(X(Boards[i]), Stations[k]);
            }
        }
        return heights;
    }

    [Fact]
    public void A_surface_quadratic_across_and_along_is_met_exactly()
    {
        double Height(double x, double y) => 1e-3 * (0.3 + x - 2 * x * x + 0.05 * y - 0.004 * y * y + 0.1 * x * y);
        var t = Topography.FromHeights(Stations, Boards, Of(Height));
        Assert.True(t.IsMeasured && !t.IsFlat);
        foreach (var (x, y) in new[] { (0.0, 3.0), (0.31, 7.7), (-0.5, 17.0), (0.12, 0.4) })
        {
            Assert.Equal(Height(x, y), t.HeightAt(x, y), 1e-15);
            Assert.Equal(1e-3 * (1 - 4 * x + 0.1 * y), t.SlopeAt(x, y).Across, 1e-14);
            Assert.Equal(1e-3 * (0.05 - 0.008 * y + 0.1 * x), t.SlopeAt(x, y).Along, 1e-14);
        }
    }

    [Fact]
    public void Slopes_are_the_heights_derivatives_and_outside_it_goes_on_straight()
    {
        var t = Topography.FromHeights(Stations, Boards, Of((x, y) => 1e-3 * Math.Sin(7 * x + 0.6 * y) * Math.Cos(0.4 * y)));
        const double d = 1e-5;
        foreach (var (x, y) in new[] { (0.013, 3.1), (0.31, 7.7), (-0.44, 17.01), (0.12, 0.4), (0.6, 19.0), (-0.7, 9.3), (0.01, -2.0) })
        {
            var (across, along) = t.SlopeAt(x, y);
            Assert.Equal((t.HeightAt(x + d, y) - t.HeightAt(x - d, y)) / (2 * d), across, 1e-8);
            Assert.Equal((t.HeightAt(x, y + d) - t.HeightAt(x, y - d)) / (2 * d), along, 1e-8);
        }
        Assert.Equal(t.SlopeAt(0.9, 9).Across, t.SlopeAt(0.6, 9).Across, 1e-14);
        Assert.Equal(t.SlopeAt(0.1, 25).Along, t.SlopeAt(0.1, 19).Along, 1e-14);
        // C1 over the seams.
        foreach (var y in Stations[1..^1])
        {
            Assert.Equal(t.SlopeAt(0.2, y - 1e-9).Along, t.SlopeAt(0.2, y + 1e-9).Along, 1e-10);
            Assert.Equal(t.SlopeAt(0.2, y - 1e-9).Across, t.SlopeAt(0.2, y + 1e-9).Across, 1e-10);
        }
    }

    [Fact]
    public void Measured_slopes_become_heights()
    {
        double Cross(double x) => 1e-3 * (0.4 + 2 * x);
        var cross = Of((x, _) => Cross(x));
        double[] along = [.. Stations.Select(y => 1e-3 * (0.1 - 0.02 * y))];
        var t = Topography.FromSlopes(Stations, Boards, cross, along);
        foreach (var (x, y) in new[] { (0.0, 3.0), (0.31, 7.7), (-0.5, 17.0) })
        {
            Assert.Equal(1e-3 * (0.4 * x + x * x + 0.1 * y - 0.01 * y * y), t.HeightAt(x, y), 1e-16);
            Assert.Equal(Cross(x), t.SlopeAt(x, y).Across, 1e-15);
        }
        var level = Topography.FromSlopes(Stations, [1, 18, 23, 39], new double[6, 4]);
        Assert.Equal((0, 0), level.SlopeAt(0.2, 5));
        // Board 20 between two of the table's: still the place that the heights are counted from.
        var between = Topography.FromSlopes([0, 18], [10, 25], new[,] { { 1e-3, 1e-3 }, { 1e-3, 1e-3 } });
        Assert.Equal(0, between.HeightAt(0, 9), 1e-18);
        Assert.Equal(1e-4, between.HeightAt(0.1, 9), 1e-17);
    }

    [Fact]
    public void The_check_measures_crown_depression_and_tilt_against_the_rules()
    {
        // USBC: each at most 0.040 in; the definitions are assumed.
        LaneCheckLine Line(Topography t, string what) => LaneCheck.Of(Lane.Regulation with { Topography = t }).Lines.Single(l => l.What == what);
        Topography Bowed(double inches) => Topography.FromHeights(Stations, Boards, Of((x, y) => inches * Inch * (1 - 4 * x * x / (RegulationLane.Width * RegulationLane.Width)) * y / 18.288));
        Assert.Equal(0.041 * Inch, Line(Bowed(0.041), "crown").Value, 1e-9);
        Assert.False(Line(Bowed(0.041), "crown").Passes);
        Assert.Equal(18.288, Line(Bowed(0.041), "crown").At!.Value, 1e-9);
        Assert.True(Line(Bowed(0.040), "crown").Passes);
        Assert.True(Line(Bowed(0.040), "depression") is { Passes: true, Value: < 1e-12 });
        Assert.Equal(0.03 * Inch, Line(Bowed(-0.03), "depression").Value, 1e-9);
        Assert.False(Line(Bowed(-0.0401), "depression").Passes);
        Assert.Equal(41.5e-3 * Inch, Line(Topography.Tilted(0.001), "cross tilt").Value, 1e-15);
        Assert.False(Line(Topography.Tilted(-0.001), "cross tilt").Passes);
        Assert.True(Line(Topography.Tilted(0.040 / 41.5), "cross tilt").Passes);
        Assert.Empty(LaneCheck.Of(Lane.Regulation).Failures);
        Assert.Equal(5, LaneCheck.Of(Lane.Regulation).Lines.Count);
        var wide = LaneCheck.Of(Lane.Regulation with { Width = 42.2 * Inch, Length = 18.5 });
        Assert.Equal(["foul line to head pin", "width"], wide.Failures.Select(l => l.What));
        Assert.Contains("width: 42.200 in, limit 41.000 to 42.000 in: FAIL (USBC, seen as quoted by another text)", wide.ToString());
        Assert.EndsWith(LaneCheck.Advice, wide.ToString());
    }

    [Fact]
    public void Nonsense_is_refused_with_the_likely_slip()
    {
        Assert.Contains("steeper than 0.05; is the unit right?",
            Assert.Throws<ArgumentException>(() => Topography.FromHeights([0, 18], [19, 21], new[,] { { 0.04, 0.0 }, { 0, 0 } })).Message);
        Assert.Contains("heights[0, 1] = 4 m is out of [-1, 1] m; for inches write 4 * Inch",
            Assert.Throws<ArgumentOutOfRangeException>(() => Topography.FromHeights([0, 18], [1, 39], new[,] { { 0.0, 4 }, { 0, 0 } })).Message);
        Assert.Contains("boards[1] = 40 boards is out of", Assert.Throws<ArgumentOutOfRangeException>(() => Topography.FromHeights([0, 18], [1, 40], new double[2, 2])).Message);
        Assert.Contains("heights has 3 rows", Assert.Throws<ArgumentException>(() => Topography.FromHeights([0, 18], [1, 39], new double[3, 2])).Message);
        Assert.Contains("board 20, from which heights are counted", Assert.Throws<ArgumentException>(() => Topography.FromSlopes([0, 18], [21, 39], new double[2, 2])).Message);
        Assert.Contains("lengthSlopes has 1 values; 2 stations", Assert.Throws<ArgumentException>(() => Topography.FromSlopes([0, 18], [1, 39], new double[2, 2], [0.001])).Message);
    }
}
