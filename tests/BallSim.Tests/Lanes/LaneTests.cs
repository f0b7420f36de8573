using BallSim.Lanes;
using static BallSim.Units;

namespace BallSim.Tests.Lanes;

public class LaneTests
{
    private static readonly Lane lane = Lane.Regulation;

    [Fact]
    public void The_regulation_lane_is_that_of_the_rules()
    {
        // USBC: 41.5 in, 60 ft, 39 boards of 1.0641 in.
        Assert.Equal(1.0541, lane.Width, 1e-15);
        Assert.Equal(18.288, lane.Length, 1e-14);
        Assert.Equal(1.0641, lane.BoardWidth / Inch, 5e-5);
        Assert.True(lane is { HasEdges: true, HasPins: true, Oil.Volume: 0 });
    }

    [Fact]
    public void Boards_count_from_the_right_and_board_20_is_the_middle()
    {
        Assert.Equal(20, lane.BoardAt(0));
        Assert.Equal(0, lane.PlaceOf(20), 1e-16);
        Assert.Equal(0.5, lane.BoardAt(lane.Width / 2), 1e-13);
        Assert.Equal(17.5, lane.BoardAt(lane.Pocket(Hand.Right)), 1e-13);
        Assert.Equal(22.5, lane.BoardAt(lane.Pocket(Hand.Left)), 1e-13);
        Assert.Equal(7.25, lane.BoardAt(lane.PlaceOf(7.25)), 1e-13);
        // 2.5 boards = 6.76 cm (USBC study).
        Assert.Equal(0.0676, lane.Pocket(Hand.Right), 5e-5);
    }

    [Fact]
    public void Films_on_boards_lie_where_the_lane_has_them() =>
        Assert.Equal(OilMap.Linear(1e-5, 1e-5, 0).FilmAt(lane.PlaceOf(9), 3), OilMap.Linear(1e-5, 1e-5, 0).FilmOnBoard(3, 9), 1e-20);

    [Fact]
    public void A_lane_that_ends_before_the_pins_is_refused()
    {
        var message = Assert.Throws<ArgumentOutOfRangeException>(() => lane with { Length = 15 }).Message;
        Assert.Contains("Length = 15 m ends the lane before the head pin, which stands 18.288 m (60 ft) from the foul line", message);
        Assert.Contains("for feet write 60 * Foot", Assert.Throws<ArgumentOutOfRangeException>(() => lane with { Length = 60 }).Message);
        Assert.Equal(18.28, (lane with { Length = 18.28 }).Length);
        Assert.Equal(20, (lane with { Length = 20 }).Length);
    }

    [Fact]
    public void Other_nonsense_is_refused()
    {
        Assert.Contains("for inches write 41.5 * Inch", Assert.Throws<ArgumentOutOfRangeException>(() => lane with { Width = 41.5 }).Message);
        Assert.Contains("OilViscosity = -0.03 Pa s is out of [0.001, 1] Pa s", Assert.Throws<ArgumentOutOfRangeException>(() => lane with { OilViscosity = -0.03 }).Message);
        Assert.Contains("for micrometres write 0.2 * Micrometre", Assert.Throws<ArgumentOutOfRangeException>(() => lane with { Roughness = 0.2 }).Message);
        Assert.Contains("must be below zero", Assert.Throws<ArgumentException>(() => lane with { Gravity = new(0, 0, 9.8) }).Message);
        Assert.Contains("Gravity has a component that is not a number", Assert.Throws<ArgumentOutOfRangeException>(() => lane with { Gravity = new(double.NaN, 0, -9.8) }).Message);
        Assert.Contains("Temperature is NaN", Assert.Throws<ArgumentOutOfRangeException>(() => lane with { Temperature = double.NaN }).Message);
        Assert.Contains("Length is NaN", Assert.Throws<ArgumentOutOfRangeException>(() => lane with { Length = double.NaN }).Message);
        Assert.Equal("Oil", Assert.Throws<ArgumentNullException>(() => lane with { Oil = null! }).ParamName);
        Assert.Equal("friction", Assert.Throws<ArgumentNullException>(() => Lane.Unbounded((FrictionMap)null!)).ParamName);
        Assert.Contains("crossSlope = 0.5 is out of", Assert.Throws<ArgumentOutOfRangeException>(() => Topography.Tilted(0.5)).Message);
    }

    [Fact]
    public void Oil_thins_as_it_warms()
    {
        // eta(T) = eta_22 exp(-0.045 (T - 22)), the rate assumed.
        Assert.Equal(0.030, lane.Viscosity, 1e-17);
        Assert.Equal(0.030 * Math.Exp(-0.18), (lane with { Temperature = 26 }).Viscosity, 1e-16);
    }

    [Fact]
    public void An_unbounded_lane_has_neither_edges_nor_pins()
    {
        Assert.True(Lane.Unbounded(FrictionMap.Constant(0.1)) is { HasEdges: false, HasPins: false, GivenFriction: not null });
        Assert.True(Lane.Unbounded(OilMap.Even(12, 1e-5)) is { HasEdges: false, HasPins: false, GivenFriction: null });
    }

    [Fact]
    public void A_given_friction_is_zoned_smooth_or_tabulated()
    {
        // The zones of a teaching page after Frohlich, Am. J. Phys. 72 (2004) 1170 (second hand): 0.04 to 12.19 m, then 0.20.
        var zones = FrictionMap.Zones((0, 0.04), (12.19, 0.20));
        Assert.Equal(0.04, zones.At(0.3, -1));
        Assert.Equal(0.04, zones.At(0.3, 12.189));
        Assert.Equal(0.20, zones.At(0.3, 12.19));
        Assert.Equal(0.20, zones.At(0.3, 50));
        Assert.Equal(12.19, zones.Map.EndOf(zones.Map.RowOf(3)));
        var smooth = FrictionMap.Smoothstep(0.04, 0.20, 10, 12);
        Assert.Equal(0.04, smooth.At(0, 10), 1e-16);
        Assert.Equal(0.12, smooth.At(0, 11), 1e-15);
        Assert.Equal(0.04 + 0.16 * 0.15625, smooth.At(0, 10.5), 1e-15);
        Assert.Equal(0.20, smooth.At(0, 12), 1e-15);
        Assert.Equal(0.20, smooth.At(0, 40), 1e-15);
        Assert.Equal(0.15, FrictionMap.FromTable([0, 10], [-0.5, 0.5], new[,] { { 0.1, 0.2 }, { 0.1, 0.2 } }).At(0, 4), 1e-15);
        Assert.Contains("zones[1].From = 3 m does not lie beyond the zone before it (4 m)",
            Assert.Throws<ArgumentException>(() => FrictionMap.Zones((4, 0.1), (3, 0.2))).Message);
        Assert.Contains("mu = -0.1 is out of [0, 2]", Assert.Throws<ArgumentOutOfRangeException>(() => FrictionMap.Constant(-0.1)).Message);
    }
}
