using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;
using static BallSim.Units;

namespace BallSim.Tests.Motion;

/// <summary>What a run tells of an instant: film, force, oil and limit of grip are of one piece with the path.</summary>
public class InstantsOfARunTests
{
    private static readonly Ball Offset = Ball.FromSpecification(
        weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, centreOfMass: new Vector3D(0.4, 0.3, -0.5) * Millimetre);

    [Fact]
    public void The_film_that_a_point_shows_is_that_of_the_lane_under_it()
    {
        var lane = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };
        var start = new InitialState { X = -0.1, VelocityX = -0.25, VelocityY = 8, AngularVelocity = new(-22, -18, 8), Loft = 1 };
        var shot = Simulator.Throw(Offset, lane, start);
        Assert.Equal(0, shot.At(0.1).Film);
        Assert.Equal(0, shot.At(0.1).Friction);
        for (var i = 3; i < 20; i++)
        {
            var p = shot.At(shot.Duration * i / 20);
            Assert.NotEqual(ShotPhase.Loft, p.Phase);
            Assert.Equal(lane.Oil.FilmAt(p.X, p.Y), p.Film, 1e-12);
        }
        Assert.True(shot.At(shot.Duration / 2).Film > 1e-6);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_a_point_shows_of_contact_and_oil_is_of_one_piece(bool fresh)
    {
        var lane = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };
        var release = new Release { Board = 22, Speed = 7.6, SpinRate = 32, AxisRotation = 50 * Degree, AxisTilt = 12 * Degree, LaunchAngle = 2 * Degree, AxisInBall = new(0.6, 0.64, 0.48) };
        var options = new SimulatorOptions { FreshCover = fresh, Tolerance = 1e-7 };
        var shot = Simulator.Throw(Offset, lane, release, options);
        var taken = 0.0;
        const int parts = 1000;
        for (var i = 0; i < parts; i++)
        {
            var p = shot.At(shot.Duration * (i + 0.5) / parts);
            taken += p.OilUptake * shot.Duration / parts;
            if (!fresh)
            {
                Assert.Equal(0, p.FreshCover);
            }
            if (p.Phase == ShotPhase.Sliding)
            {
                // μ N against the slip.
                Assert.Equal(-p.Friction * p.NormalForce * p.SlipX / p.SlipSpeed, p.ContactForce.X, 1e-9 * p.NormalForce);
                Assert.Equal(-p.Friction * p.NormalForce * p.SlipY / p.SlipSpeed, p.ContactForce.Y, 1e-9 * p.NormalForce);
            }
            else
            {
                Assert.True(double.Hypot(p.ContactForce.X, p.ContactForce.Y) < p.Friction * p.NormalForce);
            }
        }
        Assert.NotNull(shot.StartOfRoll);
        // The oil that the points show leaving the lane is what the run has summed up along its way.
        var summed = Ensemble.Throw([new(Offset, lane, release)], new() { Shot = options })[0].OilTakenUp;
        Assert.Equal(1, taken / summed, 5e-3);
        Assert.Equal(fresh, shot.At(shot.Duration / 3).FreshCover > 0.1);
    }

    [Fact]
    public void The_limit_of_grip_is_the_friction_of_the_slip_that_would_begin()
    {
        // A ball that rolls over oil with oil on its cover, and the same an instant after it began to slip against the force that held it.
        var lane = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };
        var options = new SimulatorOptions { Tolerance = 1e-7 };
        var surface = new FilmSurface<Real, MapOfReal>(Contact.Of(Offset, lane).Law<Real>(options.Friction), new(lane.Oil.Map));
        var body = Simulator.BodyOf(Offset, lane, options);
        var reversed = 0;
        foreach (var turn in (double[])[0.2, 1.3, 2.9, 4.4])
        {
            var q = Rotation.About(new(0.3, -0.7, 0.5), turn).Normalised.Spatial;
            var y = new State<Real> { X = 0.1, Y = 9, Momentum = new(-5, 0.6, 0.2), CoverFilm = 3e-6 };
            var roll = new Roll<Real, FilmSurface<Real, MapOfReal>> { Body = body, Surface = surface, Start = q };
            roll.Surface.Roam();
            roll.Contact(y, out var held, out var cover);
            double ex = -held.fx / held.Demand, ey = -held.fy / held.Demand;

            var slide = new Slide<Real, FilmSurface<Real, MapOfReal>> { Body = body, Surface = surface, Start = q };
            slide.Surface.Roam();
            var L = held.I_L * held.ω;
            State<Real> Slipping(double ex, double ey) => y with { Momentum = L, VelocityX = held.vx + held.ωrx + 1e-9 * ex, VelocityY = held.vy + held.ωry + 1e-9 * ey };
            var c = default(SlideContact<Real>);
            var z = Slipping(ex, ey);
            c.At(body, q, z);
            (c.ex, c.ey) = (ex, ey);
            slide.Push(ref c, z, 0.0, out var slips);
            Assert.Equal((double)slips.Friction, (double)cover.Friction, 1e-9);
            roll.GripAt(y, out var grip);
            Assert.Equal((double)(slips.Friction * held.N), (double)grip.Limit, 1e-7);
            Assert.Equal((double)held.Demand - (double)grip.Limit, (double)grip.Excess, 1e-12);
            // Slip the other way would meet other friction.
            c = default;
            z = Slipping(-ex, -ey);
            c.At(body, q, z);
            (c.ex, c.ey) = (-ex, -ey);
            slide.Push(ref c, z, 0.0, out var other);
            reversed += Math.Abs((double)(other.Friction - slips.Friction)) > 1e-6 ? 1 : 0;
        }
        Assert.True(reversed > 0);
    }

    [Fact]
    public void The_excess_over_the_limit_is_at_most_what_the_least_friction_leaves_at_the_stages_of_a_step()
    {
        var lane = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };
        var options = new SimulatorOptions { Tolerance = 1e-7 };
        var surface = new FilmSurface<Real, MapOfReal>(Contact.Of(Offset, lane).Law<Real>(options.Friction), new(lane.Oil.Map));
        var roll = new Roll<Real, FilmSurface<Real, MapOfReal>> { Body = Simulator.BodyOf(Offset, lane, options), Surface = surface };
        roll.Surface.Roam();
        var above = 0;
        foreach (var turn in (double[])[0.2, 1.3, 2.9, 4.4])
        {
            roll.Start = Rotation.About(new(0.3, -0.7, 0.5), turn).Normalised.Spatial;
            foreach (var y in (double[])[0.5, 9, 18])
            {
                foreach (var held in (double[])[0, 1e-7, 3e-6, 2e-5])
                {
                    var at = new State<Real> { X = 0.1, Y = y, Momentum = new(-5, 0.6, 0.2), CoverFilm = held };
                    // A step so short that its stages are where its dense output is.
                    Real h = 1e-7;
                    var step = new Step<State<Real>> { Start = at };
                    roll.Rates(at, out step.K1);
                    roll.Take(ref step, h, out _);
                    var swing = roll.Swing;
                    foreach (var (place, most) in new[] { (RungeKutta5.Place3, (double)swing.Third), (RungeKutta5.Place4, (double)swing.Fourth), (RungeKutta5.Place5, (double)swing.Fifth) })
                    {
                        roll.Look(Dense<State<Real>, Real>.Between(step, h, place), out var g);
                        double excess = g.Excess;
                        // A clean cover leaves nothing open; an oiled one is fresh in part.
                        Assert.InRange(excess, held == 0 ? most - 1e-5 : double.NegativeInfinity, most + 1e-9);
                        above += most > excess + 1e-3 ? 1 : 0;
                    }
                }
            }
        }
        Assert.True(above > 30);
    }

    [Fact]
    public void A_sum_of_slopes_is_the_sum_of_each_number()
    {
        // What the methods of integration ask of a state, of one, two and three terms.
        SpinState<Real> Of(double a) => new() { Momentum = new(a, 2 * a, 3 * a), Rotor = new(4 * a, 5 * a, 6 * a), Turn = new(7 * a, 8 * a, 9 * a) };
        static double[] All(SpinState<Real> s) => [s.Momentum.X, s.Momentum.Y, s.Momentum.Z, s.Rotor.X, s.Rotor.Y, s.Rotor.Z, s.Turn.X, s.Turn.Y, s.Turn.Z];
        var (one, two, three) = (Of(1), Of(1), Of(1));
        one.Add(2, Of(10));
        two.Add(2, Of(10), 3, Of(100));
        three.Add(2, Of(10), 3, Of(100), 4, Of(1000));
        Assert.Equal([.. Enumerable.Range(1, 9).Select(i => 21.0 * i)], All(one));
        Assert.Equal([.. Enumerable.Range(1, 9).Select(i => 321.0 * i)], All(two));
        Assert.Equal([.. Enumerable.Range(1, 9).Select(i => 4321.0 * i)], All(three));
    }
}
