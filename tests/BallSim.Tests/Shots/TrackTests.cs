using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using Xunit.Abstractions;
using static BallSim.Units;

namespace BallSim.Tests.Shots;

/// <summary>The track where it is known in closed form: on ice, where the ball turns as a free body, and for balls that do not flare.</summary>
public class TrackTests(ITestOutputHelper output)
{
    private const double Radius = 8.55 / 2 * Inch;

    private static readonly Release Usual = new()
    {
        Speed = 18 * MilesPerHour,
        SpinRate = 350 * Rpm,
        AxisRotation = 45 * Degree,
        AxisTilt = 12 * Degree,
        Board = 20,
        AxisInBall = new(1, 0, 1),
    };

    private static readonly Lane Ice = Lane.Regulation with { GivenFriction = FrictionMap.Constant(0) };

    private static Ball Symmetric(double differential) => Ball.FromSpecification(15 * Pound, 2.48 * Inch, differential * Inch);

    // On ice the rolling axis of a ball is none: the ball spins as in space.
    private static Track OnIce(Ball ball, Release release) => Simulator.Throw(ball, Ice, release, new() { AirDrag = false, Tolerance = 1e-8 }).Track;

    [Fact]
    public void Without_a_differential_the_track_is_one_circle_of_the_tilt()
    {
        var track = OnIce(Symmetric(0), Usual);
        Assert.True(track.Rings.Count > 10);
        Assert.Equal(0, track.Flare, 1e-9);
        Assert.Empty(track.Crossings);
        foreach (var ring in track.Rings.Where(r => r.IsWhole))
        {
            Assert.Equal(97, ring.Points.Count);
            Assert.Equal(90 - 12, ring.RadiusAngle / Degree, 1e-6);
            Assert.Equal(0, ring.Axis.AngleTo(new Vector3D(1, 0, 1)), 1e-6);
            Assert.Equal(0, ring.Points[0].AngleTo(ring.Points[^1]), 1e-7);
            Assert.InRange(ring.Spacing ?? 0, 0, 1e-7);
            Assert.InRange(ring.AxisMigration, 0, 1e-8);
        }
    }

    /// <summary>
    /// A free symmetric body: its axis goes round the pin at the rate ω (1 - (RGx/RGy)²) cos(angle to the pin) (Landau and Lifshitz, Mechanics, § 33: regular precession). The arc that it covers in a revolution, at
    /// 45° from the pin, RGx 2.48 in and 27 in round: 0.22, 0.32, 0.43, 0.53, 0.63 in for a differential of 0.02 to 0.06 in (computed from the formula).
    /// </summary>
    [Theory]
    [InlineData(0.02, 0.22)]
    [InlineData(0.03, 0.32)]
    [InlineData(0.04, 0.43)]
    [InlineData(0.05, 0.53)]
    [InlineData(0.06, 0.63)]
    public void On_ice_the_axis_goes_round_the_pin_as_a_free_body_does(double differential, double inchesPerTurn)
    {
        var track = OnIce(Symmetric(differential), Usual with { AxisTilt = 0 });
        var perTurn = 2 * Math.PI * (1 - Math.Pow(2.48 / (2.48 + differential), 2)) * Math.Cos(45 * Degree);
        Assert.Equal(inchesPerTurn, perTurn * Math.Sin(45 * Degree) * 27 / (2 * Math.PI), 0.0055);
        for (var n = 0; n < track.Rings.Count(r => r.IsWhole); n++)
        {
            var chord = 2 * Math.Asin(Math.Sin(45 * Degree) * Math.Sin((n + 1) * perTurn / 2));
            Assert.Equal(Radius * chord, track.Rings[n].AxisMigration, 1e-6);
            Assert.Equal(chord, track.AxisPath[0].AngleTo(track.AxisPath[n + 1]), 1e-5);
            Assert.Equal(45, track.AxisPath[n].AngleTo(Vector3D.UnitX) / Degree, 1e-3);
        }
        // Without tilt in space the rings are great circles about the axis, nearly: neighbours lie apart by what their axes do.
        var step = 2 * Math.Asin(Math.Sin(45 * Degree) * Math.Sin(perTurn / 2)) * Radius;
        Assert.All(track.Rings.Skip(1).Where(r => r.IsWhole), r => Assert.Equal(step, r.Spacing!.Value, 0.05 * step));
        var last = track.Rings.Last(r => r.IsWhole);
        output.WriteLine($"{differential}: spacing {track.Rings[3].Spacing / Inch:F3} in, step {step / Inch:F3} in, {track}; {string.Join("; ", track.Crossings)}");
        Assert.Equal(Radius * track.Rings[0].Axis.AngleTo(last.Axis), track.Flare, 0.1 * track.Flare);
    }

    [Fact]
    public void The_bow_tie_lies_on_the_first_and_the_last_ring()
    {
        var track = OnIce(Symmetric(0.05), Usual);
        Assert.Equal(2, track.Crossings.Count);
        TrackRing[] ends = [track.Rings[0], track.Rings.Last(r => r.IsWhole)];
        foreach (var (crossing, ring) in from c in track.Crossings from r in ends select (c, r))
        {
            Assert.Equal(1, crossing.Direction.Length, 1e-12);
            // The circle that fits a ring leaves it by half of what it moves in a turn at most.
            var toPoints = Radius * ring.Points.Min(p => p.AngleTo(crossing.Direction));
            Assert.InRange(toPoints, 0, 0.5 * track.Rings[1].Spacing!.Value + Radius * Math.PI / 96);
            Assert.InRange(Radius * Math.Abs(crossing.Direction.AngleTo(-ring.Axis) - ring.RadiusAngle), 0, crossing.Miss + 1e-9);
        }
    }

    [Fact]
    public void A_ball_without_differential_draws_a_ring_beside_the_other_as_its_tilt_changes()
    {
        var lane = Lane.Regulation with { GivenFriction = FrictionMap.Constant(0.12) };
        var shot = Simulator.Throw(Symmetric(0), lane, Usual with { Board = 25 });
        var whole = shot.Track.Rings.Where(r => r.IsWhole).ToArray();
        output.WriteLine($"{shot.Track}; radius {whole[0].RadiusAngle / Degree:F1} to {whole[^1].RadiusAngle / Degree:F1} deg");
        Assert.Equal(Radius * Math.Abs(whole[^1].RadiusAngle - whole[0].RadiusAngle), shot.Track.Flare, shot.Track.FlarePerRevolution);
        Assert.All(whole, r => Assert.InRange(r.Axis.AngleTo(whole[0].Axis), 0, 1 * Degree));
    }

    [Fact]
    public void It_begins_where_the_ball_lands_and_ends_with_the_shot()
    {
        var shot = Simulator.Throw(Symmetric(0.04), Lane.Regulation, Usual with { Loft = 0.8, Board = 30 });
        Assert.Equal(0.8, shot.Track.Rings[0].StartDistance, 1e-6);
        Assert.Equal(shot.End.Y, shot.Track.Rings[^1].EndDistance, 1e-12);
        Assert.False(shot.Track.Rings[^1].IsWhole);
        Assert.Equal(shot.Track.Rings.Count + 1, shot.Track.AxisPath.Count);
        var turns = shot.End.Revolutions - shot.AtDistance(0.8).Revolutions;
        Assert.Equal((int)Math.Ceiling(turns), shot.Track.Rings.Count);
        Assert.All(shot.Track.Rings.Zip(shot.Track.Rings.Skip(1)), p => Assert.Equal(p.First.Points[^1], p.Second.Points[0]));
        // A ball that does not spin does not draw rings.
        Assert.InRange(Simulator.Throw(Symmetric(0.04), Ice, Usual with { SpinRate = 0 }).Track.Rings.Count, 0, 1);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(0.8)]
    [InlineData(2)]
    public void The_clearance_of_a_hole_is_that_of_its_edge(double inches)
    {
        // One circle, and a hole in the direction of the centre whose middle lies so many inches beside it: plane trigonometry in the ball.
        var track = OnIce(Symmetric(0), Usual);
        var pole = -new Vector3D(1, 0, 1).Unit;
        var place = Math.Cos(78 * Degree + inches * Inch / Radius) * pole + Math.Sin(78 * Degree + inches * Inch / Radius) * Vector3D.UnitY;
        var hole = new Hole("hole", place, place, 1 * Inch, 2 * Inch);
        var edge = Radius * Math.Asin(0.5 * Inch / Radius);
        var clearance = track.Against([hole])[0];
        output.WriteLine(clearance.ToString());
        Assert.Equal(Math.Max(inches * Inch - edge, -edge), clearance.Clearance, inches == 0 ? 0.2 * Millimetre : 0.05 * Millimetre);
        Assert.Equal(clearance.Clearance < track.ContactRadius, clearance.IsTouched);
        var warnings = track.Warnings([hole]);
        Assert.Equal(inches < 0.6 ? 1 : 0, warnings.Count);
        Assert.All(warnings, w => Assert.Contains("the hole \"hole\"", w));
        Assert.All(warnings, w => Assert.Matches(@"on revolution 1, \d\.\d ft from the foul line", w));
    }

    [Fact]
    public void A_leaning_hole_is_cleared_by_its_true_edge()
    {
        var track = OnIce(Symmetric(0), Usual);
        var pole = -new Vector3D(1, 0, 1).Unit;
        var place = Math.Cos(78 * Degree + 1 * Inch / Radius) * pole + Math.Sin(78 * Degree + 1 * Inch / Radius) * Vector3D.UnitY;
        var hole = new Hole("hole", place, (place + 0.25 * pole).Unit, 1 * Inch, 2 * Inch);
        // Independently: the least distance from the circle among a fine net of directions over the mouth.
        var least = double.PositiveInfinity;
        var side = pole.Cross(place).Unit;
        for (var i = -400; i <= 400; i++)
        {
            for (var j = -400; j <= 400; j++)
            {
                var u = (place + 0.2 / 400 * (i * side + j * place.Cross(side))).Unit;
                var from = Radius * (u - place);
                if ((from - from.Dot(hole.Axis) * hole.Axis).Length <= hole.Diameter / 2)
                {
                    least = Math.Min(least, Radius * (u.AngleTo(pole) - 78 * Degree));
                }
            }
        }
        Assert.Equal(least, track.Against([hole])[0].Clearance, 0.1 * Millimetre);
    }

    [Fact]
    public void A_drilled_ball_whose_axis_lies_amiss_rolls_over_its_thumb_hole_and_says_where()
    {
        var ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch);
        var sheet = DrillSheet.Of(ball, new Layout(4 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch));
        var lane = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };
        var fine = Simulator.Throw(sheet.Ball, lane, Usual with { Board = 26, LaunchAngle = 2 * Degree, AxisInBall = null });
        output.WriteLine(string.Join("\n", fine.Track.Against(sheet.Holes).GroupBy(c => c.Hole.Name).Select(g => g.MinBy(c => c.Clearance).ToString())));
        Assert.Empty(fine.Track.Warnings(sheet.Holes));
        // A quarter turn from the thumb, and no tilt: the first ring runs through it.
        var amiss = Simulator.Throw(sheet.Ball, lane, Usual with { AxisTilt = 0, Board = 26, AxisInBall = sheet.Ball.Marks.GripRight });
        var warning = Assert.Single(amiss.Track.Warnings(sheet.Holes), w => w.Contains("\"thumb\""));
        output.WriteLine(warning);
        Assert.Contains("runs over the edge of the hole \"thumb\"", warning);
        Assert.Contains("change the layout", warning);
    }
}
