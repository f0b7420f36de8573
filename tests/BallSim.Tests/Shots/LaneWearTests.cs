using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Shots;

public class LaneWearTests
{
    private const double Microlitre = 1e-9;

    private static readonly Release Usual = new()
    {
        Board = 29, LaunchAngle = 4 * Degree, Speed = 18.5 * MilesPerHour, SpinRate = 380 * Rpm, AxisRotation = 55 * Degree, AxisTilt = 13 * Degree,
    };

    private static Ball Drilled { get; } = (Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch) with { Cover = Cover.Reactive })
        .LayOut(new Layout(4 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch));

    private static LaneWear Thrown(OilMap oil, Ball ball, Release release, SimulatorOptions? options = null) =>
        LaneWear.Of(Simulator.Throw(ball, Lane.Regulation with { Oil = oil }, release, options), OilCells.Of(oil));

    [Fact]
    public void A_fresh_ball_takes_about_sixty_microlitres_on_a_first_shot()
    {
        // Worked out by hand from the law of wear: about 60 µL on a heavy pattern (60 units of oil to 8 ft, 5 at 40 ft, 88 mL); a factor of two, since the law's constants are assumed.
        var heavy = OilMap.Tapered(60 * OilUnit, 8 * Foot, 5 * OilUnit, 40 * Foot);
        var release = Usual with { Board = 20, LaunchAngle = 2 * Degree, Speed = 8, SpinRate = 350 * Rpm, AxisRotation = 45 * Degree };
        Assert.InRange(Thrown(heavy, Drilled, release).Loss / Microlitre, 30, 120);
        // Tight, so that a change shows.
        Assert.Equal(57.2, Thrown(heavy, Drilled, release).Loss / Microlitre, 0.1);
        Assert.Equal(28.9, Thrown(OilMap.Crowned(40 * Foot, 25 * Millilitre), Drilled, Usual).Loss / Microlitre, 0.1);
    }

    [Fact]
    public void On_a_thin_even_film_a_ball_that_never_flares_fills_its_one_ring_in_closed_form()
    {
        // h ≪ h_ff, φ = 0, k_abs = 0: dh_B/dn = φ_s (h + h_B) - h_B over the turns n, so h_B = h φ_s/(1 - φ_s) (1 - exp(-(1 - φ_s) n)), on a ring of area 2 r_c · 2πR for a ball that rolls straight.
        const double film = 1e-9, speed = 7, share = 0.3;
        var ball = Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0) with { Cover = Cover.Plastic };
        var lane = Lane.Regulation with { Oil = OilMap.Linear(film, 0, 0) };
        var start = new InitialState { X = 0.1, VelocityY = speed, AngularVelocity = new(-speed / ball.Radius, 0, 0), Orientation = Rotation.Identity };
        var options = new SimulatorOptions { FreshCover = false, AirDrag = false, Tolerance = 1e-9, Friction = new() { PickUp = share } };
        var shot = Simulator.Throw(ball, lane, start, options);
        var wear = LaneWear.Of(shot, OilCells.Of(lane.Oil));
        var turns = shot.End.Y / (2 * Math.PI * ball.Radius);
        var ring = 2 * Contact.Of(ball, lane).ContactRadius * 2 * Math.PI * ball.Radius;
        var expected = ring * film * share / (1 - share) * (1 - Math.Exp(-(1 - share) * turns));
        Assert.Equal(expected, wear.Loss, 1e-6 * expected);
        Assert.Equal(expected, wear.OnCover, 1e-6 * expected);
        Assert.True(wear is { Absorbed: 0, OnOldRings: 0 });
        Assert.Equal(0, wear.LaidDown, 1e-7 * expected);
        // Taken on the boards that the ball rolls over, most of it in the first turn, and nowhere else.
        var column = (int)((lane.Width / 2 - 0.1) / wear.Before.CellWidth);
        Assert.Equal(wear.Loss, Enumerable.Range(0, 120).Sum(row => wear.Before.VolumeIn(row, column) - wear.After.VolumeIn(row, column)), 1e-9 * wear.Loss);
        Assert.True(wear.Before.FilmIn(0, column) - wear.After.FilmIn(0, column) > 10 * (wear.Before.FilmIn(20, column) - wear.After.FilmIn(20, column)));
    }

    [Fact]
    public void Oil_is_carried_down_onto_dry_boards()
    {
        var wear = Thrown(OilMap.Even(30 * Foot, 5e-6), Drilled, Usual);
        Assert.True(wear.LaidDown > 0);
        Assert.Equal(0, wear.Before.VolumeBetween(32 * Foot, 60 * Foot, 0.5, 39.5));
        Assert.Equal(wear.LaidDown, wear.After.VolumeBetween(30 * Foot, 60 * Foot, 0.5, 39.5), 0.1 * wear.LaidDown);
    }

    [Fact]
    public void Where_no_oil_is_none_is_taken()
    {
        Assert.True(Thrown(OilMap.Dry, Drilled, Usual) is { TakenUp: 0, LaidDown: 0, CoverGain: 0, Withheld: 0 });
        Assert.True(Thrown(OilMap.Crowned(40 * Foot, 25 * Millilitre), Drilled, Usual, new() { CoverOil = false }) is { Loss: 0, CoverGain: 0 });
        var given = Simulator.Throw(Drilled, Lane.Regulation with { GivenFriction = FrictionMap.Constant(0.05), Oil = OilMap.Even(12, 1e-5) }, Usual);
        Assert.True(LaneWear.Of(given, OilCells.Of(OilMap.Even(12, 1e-5))) is { Loss: 0, CoverGain: 0 });
        // In the air nothing is taken: the first foot keeps its oil under a loft of two.
        var lofted = Thrown(OilMap.Even(12, 1e-5), Drilled, Usual with { Loft = 2 * Foot });
        Assert.Equal(lofted.Before.VolumeBetween(0, 2 * Foot, 0.5, 39.5), lofted.After.VolumeBetween(0, 2 * Foot, 0.5, 39.5));
        Assert.True(lofted.Loss > 0);
    }

    [Fact]
    public void A_strip_over_the_seam_of_two_cells_takes_from_both_by_its_width()
    {
        // A ball that goes straight along the seam between boards 14 and 15, but for a millimetre.
        var lane = Lane.Regulation with { Oil = OilMap.Linear(5e-6, 0, 0) };
        var ball = Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0) with { Cover = Cover.Reactive };
        var radius = Contact.Of(ball, lane).ContactRadius;
        var start = new InitialState { X = lane.PlaceOf(14.5) + 0.5 * radius, VelocityY = 7, AngularVelocity = new(-7 / ball.Radius, 0, 0), Orientation = Rotation.Identity };
        var wear = LaneWear.Of(Simulator.Throw(ball, lane, start), OilCells.Of(lane.Oil));
        double Lost(int board) => Enumerable.Range(0, 120).Sum(row => wear.Before.VolumeIn(row, board - 1) - wear.After.VolumeIn(row, board - 1));
        Assert.Equal(0.75 * wear.Loss, Lost(14), 1e-9 * wear.Loss);
        Assert.Equal(0.25 * wear.Loss, Lost(15), 1e-9 * wear.Loss);
    }

    [Fact]
    public void A_worn_lane_hooks_earlier()
    {
        // Common practice, no source: as the oil in the line goes, the ball hooks sooner and enters farther across.
        var fresh = OilCells.Of(OilMap.Crowned(40 * Foot, 25 * Millilitre));
        var first = Simulator.Throw(Drilled, Lane.Regulation with { Oil = fresh.Oil }, Usual);
        var worn = fresh;
        for (var i = 0; i < 10; i++)
        {
            worn = LaneWear.Of(Simulator.Throw(Drilled, Lane.Regulation with { Oil = worn.Oil }, Usual), worn).After;
        }
        var last = Simulator.Throw(Drilled, Lane.Regulation with { Oil = worn.Oil }, Usual);
        Assert.True(last.Breakpoint.Distance < first.Breakpoint.Distance - 1 * Foot, $"breakpoint {first.Breakpoint}, then {last.Breakpoint}");
        Assert.True(last.Entry.Board > first.Entry.Board + 1, $"entry {first.Entry}, then {last.Entry}");
    }

    [Fact]
    public void Finer_cells_tell_nearly_the_same()
    {
        double Entry(int perBoard, int rows)
        {
            var cells = OilCells.Of(OilMap.Crowned(40 * Foot, 25 * Millilitre), perBoard, rows);
            return Simulator.Throw(Drilled, Lane.Regulation with { Oil = cells.Oil }, Usual).Entry.X;
        }
        // Hundredths of a board between cells of a board and of a quarter of one, and a film that was never cut.
        var whole = Simulator.Throw(Drilled, Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) }, Usual).Entry.X;
        Assert.Equal(Entry(4, 240), Entry(1, 120), 0.5 * Millimetre);
        Assert.Equal(whole, Entry(1, 120), 0.5 * Millimetre);
    }
}
