using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;
using Xunit.Abstractions;
using static BallSim.Units;

namespace BallSim.Tests.Shots;

public class OilTakenTests(ITestOutputHelper output)
{
    private static readonly Lane Oiled = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };

    private static Ball Of(Cover cover) => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.045 * Inch, cover: cover);

    private static readonly Release Usual = new()
    {
        Speed = 18 * MilesPerHour,
        SpinRate = 350 * Rpm,
        AxisRotation = 45 * Degree,
        AxisTilt = 13 * Degree,
        LaunchAngle = 2 * Degree,
        Board = 25,
        Loft = 0.3,
        AxisInBall = new(1, 0.6, 0.8),
    };

    /// <summary>
    /// The books: what the lane loses is what the film on the track gains, what it leaves on rings that are not met again, and what soaks in. With the rate of h_B taken from the film itself, by differences, not from
    /// the contact: 2 r_c v_b [(2π/|ω|)(dh_B/dt + k h_B) + φ h_B].
    /// </summary>
    [Fact]
    public void What_the_lane_loses_is_on_the_cover_on_old_rings_or_soaked_in()
    {
        foreach (var cover in (Cover[])[Cover.Plastic, Cover.Urethane, Cover.Reactive])
        {
            var ball = Of(cover);
            var shot = Simulator.Throw(ball, Oiled, Usual, new() { Tolerance = 1e-8 });
            var strip = 2 * Contact.Of(ball, Oiled).ContactRadius;
            const int Count = 4_000;
            double books = 0;
            var before = shot.AtDistance(0.3);
            var step = (shot.Duration - before.Time) / Count;
            for (var i = 1; i <= Count; i++)
            {
                var p = shot.At(Math.Min(before.Time + step, shot.Duration));
                var (film, fresh) = ((p.CoverFilm + before.CoverFilm) / 2, (p.FreshCover + before.FreshCover) / 2);
                var through = Math.Sqrt(Math.Pow(p.VelocityX - p.SlipX, 2) + Math.Pow(p.VelocityY - p.SlipY, 2));
                books += strip * through * (2 * Math.PI / p.SpinRate * (p.CoverFilm - before.CoverFilm + ball.Cover.Absorption * film * step) + fresh * film * step);
                before = p;
            }
            output.WriteLine($"{cover.Name}: {shot.OilTakenUp / Microlitre:F2} uL, by the books {books / Microlitre:F2} uL");
            Assert.Equal(books, shot.OilTakenUp, 0.003 * books);
            Assert.True(shot.OilTakenUp > 0);
        }
    }

    [Fact]
    public void Nothing_is_taken_in_the_air_from_a_dry_lane_or_from_one_of_given_friction()
    {
        Assert.Equal(0, Simulator.Throw(Of(Cover.Reactive), Lane.Regulation, Usual).OilTakenUp);
        Assert.Equal(0, Simulator.Throw(Of(Cover.Reactive), Lane.Regulation with { GivenFriction = FrictionMap.Constant(0.05) }, Usual).OilTakenUp);
        Assert.Equal(0, Simulator.Throw(Of(Cover.Reactive), Oiled, Usual).Start.OilUptake);
    }

    [Fact]
    public void Without_oil_on_the_cover_every_turn_takes_as_a_wiped_ball_does()
    {
        var shot = Simulator.Throw(Of(Cover.Plastic), Oiled, Usual, new() { CoverOil = false });
        var p = shot.AtDistance(5);
        var contact = Contact.Of(shot.Ball, Oiled);
        double inContact = contact.Law<Real>(new()).FilmInContact(p.Film);
        var through = Math.Sqrt(Math.Pow(p.VelocityX - p.SlipX, 2) + Math.Pow(p.VelocityY - p.SlipY, 2));
        Assert.Equal(2 * contact.ContactRadius * through * 0.5 * inContact, p.OilUptake, 1e-9 * p.OilUptake);
        Assert.True(shot.OilTakenUp > Simulator.Throw(Of(Cover.Plastic), Oiled, Usual).OilTakenUp);
    }
}
