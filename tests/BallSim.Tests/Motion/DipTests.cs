using System.Runtime.CompilerServices;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Shots;
using BallSim.Spatial;
using static BallSim.Units;

namespace BallSim.Tests.Motion;

/// <summary>What a dip of the fresh cover does at an instant, number by number: each is a derivative of the rates by the coefficient of friction, and is held to a difference of them; and how slip comes to its end, and how oil is carried, to what is said of them.</summary>
public class DipTests
{
    private static readonly Ball Ball = Ball.FromSpecification(
        weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, diameter: 8.55 * Inch,
        centreOfMass: new Vector3D(0.20, 0.15, -0.25) * Millimetre)
        .LayOut(new Layout(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch));

    private static readonly Lane Oiled = Lane.Regulation with { Oil = OilMap.Crowned(42 * Foot, 25 * Millilitre) };

    private static (Slide<Real, FilmSurface<Real, MapOfReal>> Slide, State<Real> State) Sliding(bool byDistance, double tolerance = 1e-4)
    {
        var options = new SimulatorOptions { Tolerance = tolerance };
        var surface = new FilmSurface<Real, MapOfReal>(Contact.Of(Ball, Oiled).Law<Real>(options.Friction), new(Oiled.Oil.Map));
        var body = Simulator.BodyOf(Ball, Oiled, options).At(options.Tolerance);
        var slide = new Slide<Real, FilmSurface<Real, MapOfReal>> { Body = body, Surface = surface, Start = Rotation.About(new(0.3, -0.7, 0.5), 1.3).Normalised.Spatial, ByDistance = byDistance };
        slide.Surface.Roam();
        return (slide, new State<Real> { X = 0.1, Y = 6, VelocityX = 0.3, VelocityY = 7.5, Momentum = new(-0.5, -0.7, 0.2), CoverFilm = 2e-6 });
    }

    [Fact]
    public void What_is_summed_along_the_way_is_asked_for_by_no_rate()
    {
        static double[] Numbers(in State<Real> of)
        {
            var numbers = new double[Unsafe.SizeOf<State<Real>>() / sizeof(double)];
            for (var i = 0; i < numbers.Length; i++)
            {
                numbers[i] = Unsafe.Add(ref Unsafe.As<State<Real>, double>(ref Unsafe.AsRef(in of)), i);
            }
            return numbers;
        }
        static State<Real> With(State<Real> of, int number, double value)
        {
            Unsafe.Add(ref Unsafe.As<State<Real>, double>(ref of), number) = value;
            return of;
        }
        var (slide, y) = Sliding(true, 1e-9);
        Assert.True(slide.Body.HasCoverOil && !slide.Body.HasDips);
        var roll = new Roll<Real, FilmSurface<Real, MapOfReal>> { Body = slide.Body, Surface = slide.Surface, Start = slide.Start, ByDistance = true };
        var control = new Control<Real>(1e-9, slide.Body);
        double[] Of(State<Real> at)
        {
            slide.Rates(at, out var slides);
            roll.Rates(at, out var rolls);
            return [.. Numbers(slides), .. Numbers(rolls), (double)control.Norm(at)];
        }
        var seen = Of(y);
        var all = Numbers(y).Length;
        Assert.InRange(State<Real>.Leading, 1, all - 1);
        for (var i = State<Real>.Leading; i < all; i++)
        {
            Assert.Equal(seen, Of(With(y, i, 1e3)));
        }
        // The last of the leading ones, the film on the cover, is.
        Assert.NotEqual(seen, Of(With(y, State<Real>.Leading - 1, 3e-6)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_dip_acts_by_what_the_rates_change_with_the_coefficient(bool byDistance)
    {
        var (slide, y) = Sliding(byDistance);
        Assert.True(slide.Body.HasDips);
        slide.Rates(y, out _);
        var dip = slide.Dip;

        var c = default(SlideContact<Real>);
        c.At(slide.Body, slide.Start, y);
        double s = c.s, scale = byDistance ? 1 / (double)c.vy : 1;
        Assert.InRange(s, 3, 10);
        double[] At(double μ)
        {
            c.Push(slide.Body, μ);
            return [c.ax, c.ay, c.Mx, c.My, c.Mz, c.FrictionPower];
        }
        double film = slide.Surface.Value(y.X, y.Y), fresh = slide.Surface.Friction(film, s);
        var (less, more) = (At(fresh - 1e-4), At(fresh + 1e-4));
        double[] found = [dip.PushX, dip.PushY, dip.TurnX, dip.TurnY, dip.TurnZ, dip.Work];
        double[] size = [2 * StandardGravity, 2 * StandardGravity, 1, 1, 1, 70 * s];
        for (var i = 0; i < found.Length; i++)
        {
            // The dip's part in the normal force is taken to first order in the offset.
            Assert.Equal(scale * (more[i] - less[i]) / 2e-4, found[i], 1e-3 * scale * size[i]);
        }
        Assert.Equal(-scale * s * Ball.Mass * StandardGravity, found[5], 0.05 * scale * s * 70);

        Assert.Equal(film, (double)dip.Film, 1e-15);
        Assert.Equal(fresh, (double)dip.WhenFresh, 1e-12);
        Assert.Equal(0, (double)dip.Lost, 1e-12);
        Assert.Equal(s, (double)dip.Slip, 1e-12);
        Assert.Equal(scale, (double)dip.Scale, 1e-12);
        // A strip as wide as the contact, at the speed of the cover against the centre.
        Assert.Equal(scale * 2 * slide.Body.ContactRadius * double.Hypot(c.vx - c.sx, c.vy - c.sy), (double)dip.Strip, 1e-12);
        // The lost friction as a polynomial of what is not fresh, through three values of the law.
        foreach (var x in (double[])[0.15, 0.5, 1])
        {
            double lost = slide.Surface.Friction(film + x * y.CoverFilm, s) - fresh;
            Assert.Equal(lost, x * (dip.Curve1 + x * (dip.Curve2 + x * dip.Curve3)), 1e-12);
            Assert.True(lost < -1e-4);
        }
        c.Push(slide.Body, fresh);
        Assert.Equal((double)c.Shift(slide.Body), (double)dip.Shift, 1e-12);
    }

    [Fact]
    public void Slip_comes_to_its_end_as_it_was_last_seen()
    {
        var (slide, _) = Sliding(false);
        var control = new Control<Real>(1e-6, slide.Body);
        Fade<Real> Seen(double slip, double fall, double pull = 10, double turn = 20, double pivot = 0)
        {
            slide.Body.PivotRadius = pivot;
            slide.Seen = new() { Slip = slip, Fall = fall, Pull = pull, ω = new(0, 0, turn) };
            slide.Fading(control, out var fade);
            return fade;
        }
        // At the default tolerance below 3e-5 m/s, less where it fades so slowly that more than half a second for each m/s would be left: 3e-5 of half the rate.
        foreach (var (slip, fall, ends) in ((double, double, bool)[])[(2.9e-5, 5, true), (3.1e-5, 5, false), (2.9e-5, 1, false), (1.4e-5, 1, true), (1.6e-5, 1, false), (1e-6, -1, false), (1e-6, 0, false), (9e-13, -1, true), (1.1e-12, -1, false)])
        {
            Assert.Equal(ends, Seen(slip, fall).Ends > 0.0);
            Assert.False(Seen(slip, fall).Creeps > 0.0);
        }
        // The largest step goes to nine tenths of the end, and where there is much slip, less by the eighth root of 5e-6 m/s over it.
        Assert.Equal(0.9 * 1e-6 / 5, (double)Seen(1e-6, 5).Cap, 1e-15);
        Assert.Equal(0.9 * Math.Pow(5e-6 / 0.2, 1.0 / 8) * 0.2 / 5, (double)Seen(0.2, 5).Cap, 1e-12);
        Assert.Equal(double.PositiveInfinity, (double)Seen(0.2, -5).Cap);
        // 2.8 time constants of the direction, s over grip times (1/m + R²/I), the least moment's; coarse.
        var compliance = 1 / Ball.Mass + Ball.Radius * Ball.Radius / Ball.Inertia.Principal.LeastMoment;
        Assert.Equal((double)Pace<Real>.Coarse(2.8 * 0.2 / (7 * compliance)), (double)Seen(0.2, 5, pull: 7).Stable, 1e-12);
        // Above 5 cm/s not further than nine tenths of the way on which the friction alone would bring the slip to its end, however slowly it falls now; below, and where it grows, that is no matter.
        foreach (var (slip, fall, capped) in ((double, double, bool)[])[(0.2, 0.5, true), (0.051, 0.1, true), (0.049, 0.1, false), (0.2, -0.5, false)])
        {
            Assert.Equal(capped, (double)Seen(slip, fall).Cap <= 0.9 * slip / (10 * compliance) * (1 + 1e-12));
        }
        Assert.Equal(0.9 * 0.2 / (10 * compliance), (double)Seen(0.2, 0.5).Cap, 1e-12);
        // Pivoting takes the grip below 8 r ω/3π; where that is under a millimetre per second it counts as rolling, else below a millimetre.
        var creep = 8 * 2e-5 * 20 / (3 * Math.PI);
        foreach (var turn in (double[])[20, -20])
        {
            Assert.True(Seen(0.99 * creep, 5, turn: turn, pivot: 2e-5).Creeps > 0.0);
            Assert.False(Seen(1.01 * creep, 5, turn: turn, pivot: 2e-5).Creeps > 0.0);
            Assert.True(Seen(0.99e-3, 5, turn: turn, pivot: 1e-2).Creeps > 0.0);
            Assert.False(Seen(1.01e-3, 5, turn: turn, pivot: 1e-2).Creeps > 0.0);
        }
    }

    [Fact]
    public void What_a_tolerance_makes_of_slip_and_first_step_is_what_is_said()
    {
        Control<Real> At(double tolerance) => new(tolerance, new Body<Real> { Radius = 0.11, Moments = new(0.025, 0.03, 0.028) });
        // At the default: drift below 3e-5 m/s, 0.6 ms past the limit, a first step of 5 ms; then in proportion, by its cube root, by its fifth root, within bounds.
        foreach (var scale in (double[])[1, 8, 1e-3])
        {
            var control = At(1e-6 * scale);
            Assert.Equal(3e-5 * scale, (double)control.StickSlip, 1e-12);
            Assert.Equal(5e-6 * scale, (double)control.SureSlip, 1e-12);
            Assert.Equal(6e-4 * Math.Cbrt(scale), (double)control.SlipStart, 1e-12);
            Assert.Equal(5e-3 * Math.Pow(scale, 0.2), (double)control.FirstStep, 1e-12);
            Assert.Equal(1.2 * Math.Pow(scale, 0.25), (double)control.TurnThroughDips, 1e-12);
        }
        Assert.Equal((1e-2, 2e-3), ((double)At(1e-2).StickSlip, (double)At(1e-2).SlipStart));
        Assert.Equal((3e-12, 2.784953e-6), ((double)At(1e-13).StickSlip, Math.Round(At(1e-13).SlipStart, 12)));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.4)]
    [InlineData(1.0)]
    public void Oil_is_carried_to_its_balance_as_the_equation_has_it(double bare)
    {
        // dh/du = turns (taken(h) - h) - k t h over a step of so many turns and seconds, and the strip takes taken(h) - bare h; with taken straight between a clean cover and what was held. Exactly: an exponential.
        var (slide, y) = Sliding(false);
        var body = slide.Body;
        body.Absorption = 0.5;
        const double film = 8e-6, strip = 3e-3;
        foreach (var (turns, time) in ((double, double)[])[(0.05, 0.01), (0.3, 0.06), (0.3, 0.4)])
        {
            foreach (var held in (double[])[3e-6, 5e-7])
            {
                var (start, end) = (y with { CoverFilm = held, Revolutions = 2, Time = 1, OilTaken = 7e-9 }, y with { Revolutions = 2 + turns, Time = 1 + time });
                CoverOil<Real>.Carry(body, ref slide.Surface, film, bare, strip, start, ref end);
                double clean = body.PickUp * slide.Surface.FilmInContact(film), taken = body.PickUp * slide.Surface.FilmInContact(film + bare * held);
                var again = (taken - clean) / held;
                var rate = turns * (1 - again) + body.Absorption * time;
                var balance = turns * clean / rate;
                var after = balance + (held - balance) * Math.Exp(-rate);
                var mean = balance + (held - balance) * (1 - Math.Exp(-rate)) / rate;
                Assert.Equal(after, (double)end.CoverFilm, 1e-4 * Math.Abs(after - held));
                var lost = strip * (clean + again * mean - bare * mean);
                Assert.Equal(7e-9 + lost, (double)end.OilTaken, 1e-4 * Math.Abs(lost) + 1e-3 * strip * Math.Abs(after - held));
            }
        }
    }

    [Fact]
    public void Inside_a_step_of_rolling_the_oil_goes_in_a_line()
    {
        var (slide, _) = Sliding(false);
        var roll = new Roll<Real, FilmSurface<Real, MapOfReal>> { Body = slide.Body, Surface = slide.Surface, Start = slide.Start };
        Assert.True(roll.Body.HasDips);
        Step<State<Real>> step = default;
        step.Start = new() { X = 0.1, Y = 9, Momentum = new(-5, 0.6, 0.2), CoverFilm = 3e-6, OilTaken = 1e-9 };
        roll.Rates(step.Start, out step.K1);
        roll.GripAt(step.Start, out var from);
        // A rate that the step before left there, as it does, is none of this one's.
        step.K1.CoverFilm = 1.0;
        Real h = 0.03;
        roll.Take(ref step, h, out var error);
        roll.Arrive(ref step, h, from, out _);
        Assert.Equal(0, (double)error.CoverFilm);
        double film = step.End.CoverFilm - step.Start.CoverFilm, taken = step.End.OilTaken - step.Start.OilTaken;
        Assert.InRange(Math.Abs(film), 1e-8, 3e-6);
        Assert.NotEqual(0, taken);
        foreach (var θ in (double[])[0.0, 0.25, 0.5, 0.9, 1.0])
        {
            var there = Dense<State<Real>, Real>.Between(step, h, θ);
            Assert.Equal((double)step.Start.CoverFilm + θ * film, (double)there.CoverFilm, 1e-14 * Math.Abs(film) + 1e-20);
            Assert.Equal((double)step.Start.OilTaken + θ * taken, (double)there.OilTaken, 1e-14 * Math.Abs(taken) + 1e-22);
        }
    }

    // Nearly half a turn in six steps with the dips left out and given back, against short ones of the law as it is, and against short ones that leave them out: of what that would cost some hundredths at most are left, in anything.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_a_step_misses_is_given_back_in_all_that_it_moves(bool byDistance)
    {
        var (_, y) = Sliding(byDistance);
        var exact = After(byDistance, y, 1500, dips: false, mends: false);
        var without = After(byDistance, y, 1500, dips: true, mends: false);
        var mended = After(byDistance, y, 6, dips: true, mends: true);
        foreach (var (name, of, part) in new (string, Func<State<Real>, double>, double)[]
        {
            ("vx", s => s.VelocityX, 0.02), ("vy", s => s.VelocityY, 0.02), ("Lx", s => s.MomentumX, 0.02), ("Ly", s => s.MomentumY, 0.02), ("Lz", s => s.MomentumZ, 0.1), ("work", s => s.FrictionWork, 0.02),
            ("film", s => s.CoverFilm, 0.02), ("oil", s => s.OilTaken, 0.02), ("x", s => s.X, 0.02), (byDistance ? "t" : "y", s => byDistance ? s.Time : s.Y, 0.02), ("θx", s => s.TurnX, 0.02), ("θy", s => s.TurnY, 0.02), ("θz", s => s.TurnZ, 0.04),
        })
        {
            var (left, cost) = (Math.Abs(of(mended) - of(exact)), Math.Abs(of(without) - of(exact)));
            Assert.True(left < part * cost, $"{name}: {left:E1} of {cost:E1}");
        }
    }

    // The same in shorter steps with the dips foreseen: some ten thousandths.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_foreseen_and_given_back_leaves_next_to_nothing(bool byDistance)
    {
        var (_, y) = Sliding(byDistance);
        var exact = After(byDistance, y, 6000, dips: false, mends: false);
        var without = After(byDistance, y, 1500, dips: true, mends: false);
        var mended = After(byDistance, y, 20, dips: true, mends: true, tolerance: 1e-6);
        foreach (var (name, of, part) in new (string, Func<State<Real>, double>, double)[]
        {
            ("vx", s => s.VelocityX, 4e-4), ("vy", s => s.VelocityY, 4e-4), ("Lx", s => s.MomentumX, 4e-4), ("Ly", s => s.MomentumY, 4e-4), ("Lz", s => s.MomentumZ, 1e-2), ("work", s => s.FrictionWork, 4e-4),
            ("film", s => s.CoverFilm, 4e-4), ("oil", s => s.OilTaken, 4e-4), ("x", s => s.X, 4e-4), (byDistance ? "t" : "y", s => byDistance ? s.Time : s.Y, 4e-4), ("θx", s => s.TurnX, 4e-4), ("θy", s => s.TurnY, 4e-4), ("θz", s => s.TurnZ, 4e-4),
        })
        {
            var (left, cost) = (Math.Abs(of(mended) - of(exact)), Math.Abs(of(without) - of(exact)));
            Assert.True(left < part * cost, $"{name}: {left:E1} of {cost:E1}");
        }
    }

    private static State<Real> After(bool byDistance, State<Real> from, int steps, bool dips, bool mends, double tolerance = 1e-4)
    {
        var (slide, _) = Sliding(byDistance, dips ? tolerance : 1e-7);
        Assert.Equal(dips, slide.Body.HasDips);
        Assert.Equal(tolerance == 1e-6, slide.Body.HasFineDips);
        return DipsTests.After(slide, from, byDistance ? 0.7 : 0.09, steps, mends);
    }
}
