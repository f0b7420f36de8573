using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Units;

namespace BallSim.Tests.Shots;

public class AimTests
{
    private static readonly Lane Ice = Lane.Regulation with { GivenFriction = FrictionMap.Constant(0) };
    private static readonly Lane House = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };
    private static readonly Release Usual = new()
    {
        Board = 29, LaunchAngle = 4 * Degree, Speed = 18.5 * MilesPerHour, SpinRate = 380 * Rpm, AxisRotation = 55 * Degree, AxisTilt = 13 * Degree,
    };

    private static Ball Drilled(Hand hand) => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch)
        .LayOut(new Layout(4 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch, hand));

    /// <summary>
    /// Plane geometry: on ice the ball goes straight, and touches the head pin in the pocket where its centre is at (pocket, y), R + r from
    /// the pin.
    /// </summary>
    private static double StraightAngle(Hand hand, double board)
    {
        var touch = 8.55 / 2 * Inch + 4.766 / 2 * Inch;
        var h = hand == Hand.Right ? 1 : -1;
        var pocket = h * 2.5 * 41.5 / 39 * Inch;
        var start = 41.5 * Inch / 2 - (board - 0.5) * 41.5 / 39 * Inch;
        var y = 60 * Foot - Math.Sqrt(touch * touch - pocket * pocket);
        return h * Math.Atan2(pocket - start, y);
    }

    [Property(MaxTest = 12)]
    public Property On_ice_the_aim_is_plane_geometry() => Prop.ForAll(
        (from board in Gen.Choose(30, 380) from hand in Gen.Elements(Hand.Right, Hand.Left) from guess in Gen.Choose(-10, 80) select (Board: board / 10.0, Hand: hand, Guess: guess / 10.0))
            .ToArbitrary(),
        c =>
        {
            var aimed = Aim.AtPocket(Drilled(c.Hand), Ice, Usual with { Board = c.Board, LaunchAngle = c.Guess * Degree }, lowest: -8 * Degree);
            // 0.1 mm at 18 m.
            return aimed.IsFound && Math.Abs(aimed.Release.LaunchAngle - StraightAngle(c.Hand, c.Board)) < 1e-5
                && Math.Abs(aimed.Shot!.Entry.Offset) <= 1e-4 && aimed.Reason == "";
        });

    [Fact]
    public void A_hooking_ball_enters_at_the_pocket_and_everything_else_of_the_release_stays()
    {
        var aimed = Aim.AtPocket(Drilled(Hand.Right), House, Usual);
        Assert.True(aimed.IsFound);
        Assert.InRange(aimed.Shot!.Entry.Offset, -1e-4, 1e-4);
        Assert.Equal(Usual, aimed.Release with { LaunchAngle = Usual.LaunchAngle });
        Assert.InRange(aimed.Throws, 1, 30);
        var again = Simulator.Throw(Drilled(Hand.Right), House, aimed.Release);
        Assert.Equal(aimed.Shot.Entry, again.Entry);
    }

    // The other hand on the mirrored board is the mirror image: the map is the same on both sides, and so is the search.
    [Fact]
    public void Left_and_right_aim_alike()
    {
        var right = Aim.AtPocket(Drilled(Hand.Right), House, Usual);
        var left = Aim.AtPocket(Drilled(Hand.Left), House, Usual with { Board = 40 - Usual.Board });
        Assert.Equal(right.Release.LaunchAngle, left.Release.LaunchAngle, 1e-5);
        Assert.Equal(right.Shot!.Entry.Angle, left.Shot!.Entry.Angle, 1e-4);
    }

    // Dry outside and oiled in the middle, a ball sent farther out comes back harder: more than one launch angle reaches the pocket. A scan
    // that knows nothing of the search finds them all, and the search must take the one nearest its start.
    [Fact]
    public void Of_several_solutions_the_nearest_is_taken()
    {
        var ball = Drilled(Hand.Right);
        double[,] mu = { { 0.03, 0.03, 0.03, 0.03 }, { 0.03, 0.03, 0.25, 0.25 } };
        var lane = Lane.Regulation with { GivenFriction = FrictionMap.FromTable([6, 7], [-0.5, 0.2, 0.3, 0.5], mu) };
        double[] grid = [.. Enumerable.Range(0, 91).Select(i => (-1 + i * 0.1) * Degree)];
        double[] offsets = [.. grid.Select(a => Offset(ball, lane, Usual with { LaunchAngle = a }))];
        double[] crossings = [.. Enumerable.Range(1, 90).Where(i => offsets[i - 1] * offsets[i] < 0).Select(i => (grid[i - 1] + grid[i]) / 2)];
        Assert.True(crossings.Length >= 2, $"{crossings.Length} crossings");
        foreach (var start in new[] { -1, 0.5, 2, 3.5, 5, 6.5, 8 })
        {
            var aimed = Aim.AtPocket(ball, lane, Usual with { LaunchAngle = start * Degree });
            var nearest = crossings.Min(c => Math.Abs(c - start * Degree));
            Assert.Equal(nearest, Math.Abs(aimed.Release.LaunchAngle - start * Degree), 0.051 * Degree);
        }
    }

    [Fact]
    public void Where_every_ball_is_lost_the_reason_says_so()
    {
        var steep = Lane.Regulation with { GivenFriction = FrictionMap.Constant(0.3) };
        var aimed = Aim.AtPocket(Drilled(Hand.Right), steep, Usual with { Board = 38, SpinRate = 600 * Rpm, AxisRotation = 80 * Degree, Speed = 12 * MilesPerHour }, highest: 2 * Degree);
        Assert.False(aimed.IsFound);
        Assert.Null(aimed.Shot);
        Assert.StartsWith("from board 38, launched at -1 to 2 deg, no ball reaches the pins (the last one dropped into the left gutter at ", aimed.Reason);
        Assert.Equal(aimed.Reason, aimed.ToString());
    }

    [Fact]
    public void Out_of_reach_is_told_with_the_nearest_try()
    {
        var aimed = Aim.AtPocket(Drilled(Hand.Right), Ice, Usual with { Board = 5, LaunchAngle = 0.2 * Degree }, lowest: 0, highest: 0.5 * Degree);
        Assert.False(aimed.IsFound);
        // Straight ahead from board 5 on ice: 17.5 - 5 boards to the right, launched at the least angle allowed.
        Assert.Equal("from board 5, launched at 0 to 0.5 deg, no ball reaches the pocket: the nearest enters 12.5 boards to its right, at 0.0 deg", aimed.Reason);
    }

    [Fact]
    public void Nonsense_is_refused_and_a_search_can_be_stopped()
    {
        var ball = Drilled(Hand.Right);
        Assert.Contains("for degrees write 15 * Degree", Assert.Throws<ArgumentOutOfRangeException>(() => Aim.AtPocket(ball, House, Usual, highest: 15)).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => Aim.AtPocket(ball, House, Usual, lowest: 2 * Degree, highest: 1 * Degree));
        Assert.Throws<ArgumentOutOfRangeException>(() => Aim.AtPocket(ball, House, Usual, tolerance: 0));
        Assert.Contains("no pins", Assert.Throws<ArgumentException>(() => Aim.AtPocket(ball, Lane.Unbounded(OilMap.Dry), Usual)).Message);
        using var stopped = new CancellationTokenSource();
        stopped.Cancel();
        Assert.Throws<OperationCanceledException>(() => Aim.AtPocket(ball, House, Usual, cancellation: stopped.Token));
    }

    private static double Offset(Ball ball, Lane lane, Release release)
    {
        var shot = Simulator.Throw(ball, lane, release);
        return shot.ReachedPins ? shot.Entry.Offset : double.NaN;
    }
}
