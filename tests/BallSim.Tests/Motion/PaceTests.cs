using BallSim.Integration;
using BallSim.Motion;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Tests.Motion;

/// <summary>The decisions that all drivers share, each against what it is said to decide. They choose steps and where to look closer, and a wrong one may cost no more than time, or an event in a thousand shots: so they are asked one by one.</summary>
public class PaceTests
{
    private static readonly double Sliver = Real.Sliver;

    private static Bounds<Real> Lane(double halfWidth = 0.53, double back = -1, double late = 10) => new() { HalfWidth = halfWidth, PinsAt = 18.3, TouchDistance = 0.17, BackAt = back, MaxTime = late };

    [Fact]
    public void A_step_turns_the_ball_by_so_much_at_most()
    {
        foreach (var ω in (Vec3<Real>[])[new(30, 0, 0), new(0, -40, 0), new(10, 20, -50)])
        {
            var size = Math.Sqrt(ω.Dot(ω));
            Assert.Equal(3.8 / size, (double)Pace<Real>.CapTurn(1.0, ω), 1e-10);
            Assert.Equal(2.5 / size, (double)Pace<Real>.CapTurn(1.0, ω, Pace<Real>.MaxTurnWhileRolling), 1e-10);
            Assert.Equal(0.1 / size, (double)Pace<Real>.CapTurn(0.1 / size, ω, 2.5), 1e-15);
        }
        Assert.Equal(5, (double)Pace<Real>.CapTurn(5.0, new(0, 0, 0), 2.5));
    }

    [Fact]
    public void A_step_down_the_lane_ends_on_the_line_or_leaves_two_equal_ones()
    {
        (double Length, bool AtEnd) Step(double dt, double left) => ((double)Pace<Real>.ByDistance(dt, 8.0, left, out var atEnd), atEnd > 0.0);
        // Far from the line as long as time allows; more than half way to it, half way; beyond it, to it; within a sliver of it, to it.
        Assert.Equal((0.8, false), Step(0.1, 5));
        Assert.Equal((0.8, false), Step(0.1, 1.7));
        Assert.Equal((0.5, false), Step(0.1, 1.0));
        Assert.Equal((0.7, true), Step(0.1, 0.7));
        Assert.Equal((0.8 + 0.5 * Sliver, true), Step(0.1, 0.8 + 0.5 * Sliver));
        Assert.Equal((0.4 + Sliver, false), Step(0.1, 2 * (0.4 + Sliver)));
    }

    [Fact]
    public void The_next_line_is_the_rows_end_the_pins_reach_or_the_pins()
    {
        // Of a ball that runs past the pin.
        double Next(double y, double row) => (double)Pace<Real>.NextLine(0.3, y, 0.0, row, Lane());
        Assert.Equal(12, Next(10, 12));
        Assert.Equal(18.3 - 0.17, Next(10, 30), 1e-14);
        Assert.Equal(18.3, Next(18.3 - 0.17, 30));
        Assert.Equal(18.3, Next(18.2, 30));
        Assert.Equal(18.25, Next(18.2, 18.25));
        // A row is entered a hair beyond its start if the step ended on its end, whatever the rounding; else where the ball is.
        Assert.Equal(12 + Pace<Real>.Hair, (double)Pace<Real>.EntersAt(12 - Sliver, 12), 1e-15);
        Assert.Equal(12 + Pace<Real>.Hair, (double)Pace<Real>.EntersAt(12.0, 12), 1e-15);
        Assert.Equal(11 + Pace<Real>.Hair, (double)Pace<Real>.EntersAt(11.0, 12), 1e-15);
        Assert.Equal(12 - Pace<Real>.Hair, (double)Pace<Real>.Within(11.0, 12), 1e-15);
        Assert.Equal(11 + Pace<Real>.Hair, (double)Pace<Real>.Within(11.0, double.PositiveInfinity), 1e-15);
    }

    [Theory]
    [InlineData(0.1, 0.0)]
    [InlineData(0.12, -0.08)]
    [InlineData(-0.13, 0.03)]
    [InlineData(-0.1, 0.5)]
    public void Before_the_pins_a_step_aims_where_a_straight_way_touches_the_head_pin(double x, double slope)
    {
        const double From = 18.3 - 0.17 + 1e-6;
        var at = (double)Pace<Real>.NextLine(x, From, slope, 30, Lane());
        Assert.InRange(at, From, 18.3);
        Assert.Equal(0.17, Math.Sqrt(Math.Pow(x + slope * (at - From), 2) + Math.Pow(at - 18.3, 2)), 1e-12);
        // Not beyond the row.
        Assert.Equal(18.1301, (double)Pace<Real>.NextLine(x, From, slope, 18.1301, Lane()));
    }

    [Theory]
    [InlineData(0.169, 0.0, 18.131)]
    [InlineData(0.2, 0.0, 18.131)]
    [InlineData(0.0, 0.0, 18.2)]
    public void A_pin_hardly_touched_or_touched_already_is_not_aimed_at(double x, double slope, double y) => Assert.Equal(18.3, (double)Pace<Real>.NextLine(x, y, slope, 30, Lane()));

    [Fact]
    public void The_end_of_slip_is_near_where_forty_metres_per_second_squared_would_reach_it()
    {
        Assert.True(Pace<Real>.MayStick(0.39, 0.01) > 0.0);
        Assert.False(Pace<Real>.MayStick(0.41, 0.01) > 0.0);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(0.3, 1)]
    [InlineData(0.01, 0.2)]
    [InlineData(2, 0.5)]
    [InlineData(0.05, 1e-3)]
    public void The_factor_of_a_step_is_its_rule_but_for_the_guess_of_its_powers(double norm, double before)
    {
        var exact = 0.75 * Math.Pow(norm + 1e-10, -1 / 6.0) * Math.Pow(before + 1e-4, 1 / 24.0);
        // Four per cent of the sixth root, and a quarter of that of the root of the error before.
        Assert.Equal(1, Pace<Real>.Factor(norm, before) / exact, 0.05);
        Assert.Equal(4, (double)Pace<Real>.Factor(0.0, 1.0));
        Assert.Equal(0.2, (double)Pace<Real>.Factor(1e9, 1e-4), 1e-12);
    }

    [Fact]
    public void The_next_step_is_near_and_coarse_so_that_a_last_bit_is_none()
    {
        double Coarse(double x) => (double)Pace<Real>.Coarse(x);
        for (var x = 1e-9; x < 10; x *= 1.0007)
        {
            var coarse = Coarse(x);
            Assert.InRange(coarse / x, 1 - 1.0 / 64, 1 + 1.0 / 256);
            // Seven binary digits.
            Assert.Equal(0, Math.ScaleB(coarse, 6 - Math.ILogB(coarse)) % 1);
            // It stays, also if rounding moved it a little, or four times as long: what a plan may grow by.
            foreach (var same in (double[])[coarse, coarse * (1 + 1e-6), coarse * (1 - 1e-6)])
            {
                Assert.Equal(coarse, Coarse(same));
                Assert.Equal(4 * coarse, Coarse(4 * same));
            }
        }
        Assert.Equal(double.PositiveInfinity, Coarse(double.PositiveInfinity));
        Assert.True(double.IsNaN(Coarse(double.NaN)));
        Assert.Equal(0.0, Coarse(0));
    }

    [Fact]
    public void A_rejected_step_shrinks_and_one_cut_short_says_nothing_against_the_plan()
    {
        (double Next, bool Rejected) Judged(double norm, double planned, double taken) => ((double)Pace<Real>.Next(norm, 1.0, planned, taken, out var rejected), rejected > 0.0);
        double Factor(double norm) => Pace<Real>.Factor(norm, 1.0);
        double Coarse(double x) => Pace<Real>.Coarse(x);
        Assert.Equal((Coarse(0.01 * Factor(0.001)), false), Judged(0.001, 0.01, 0.01));
        // A hundredth of the plan was taken, and well: the plan stands.
        Assert.Equal((Coarse(0.01), false), Judged(0.001, 0.01, 1e-4));
        // Taken, but nearly too long: shorter than it.
        Assert.True(Factor(0.9) < 1);
        Assert.Equal((Coarse(0.01 * Factor(0.9)), false), Judged(0.9, 0.02, 0.01));
        Assert.Equal((Coarse(0.01 * Factor(20)), true), Judged(20, 0.01, 0.01));
        var (next, rejected) = Judged(1.001, 0.01, 0.01);
        Assert.True(rejected && next <= 0.00804);
        Assert.False(Judged(1, 0.01, 0.01).Rejected);
    }

    [Theory]
    [InlineData(0.3, 10, 1, 1, 1, 1, false)] // on the lane
    [InlineData(0.54, 10, 1, 1, 1, 1, true)] // over the edge
    [InlineData(-0.54, 10, 1, 1, 1, 1, true)]
    [InlineData(0.5, 10, 1, 1, 1, 1, false)] // near it, going on
    [InlineData(0.5, 10, 1, 1, -1, 1, true)] // near it, turned round in the step
    [InlineData(-0.5, 10, 1, -1, 1, 1, true)]
    [InlineData(0.4, 10, 1, 1, -1, 1, false)] // turned round far from it
    [InlineData(0, 18.2, 1, 1, 1, 1, true)] // at the pin
    [InlineData(0, 18.12, 1, 1, 1, 1, false)] // before it can be touched
    [InlineData(0.25, 18.29, 1, 1, 1, 1, false)] // beside it, out of reach
    [InlineData(-0.21, 18.25, 1, 1, 1, 1, true)] // beside it, within five centimetres
    [InlineData(0.4, 18.3, 1, 1, 1, 1, true)] // past the pins
    [InlineData(0.4, 18.29, 1, 1, 1, 1, false)]
    [InlineData(0, -1.01, 1, 1, 1, 1, true)] // back over the foul line
    [InlineData(0, -0.99, 1, 1, 1, 1, false)]
    [InlineData(0, 5, 10.01, 1, 1, 1, true)] // too late
    [InlineData(0, 5, 9.99, 1, 1, 1, false)]
    public void A_step_may_end_the_run_where_an_end_is_near(double x, double y, double time, double first, double last, double scale, bool may)
    {
        var end = new State<Real> { X = x, Y = y, Time = time };
        Assert.Equal(may, Pace<Real>.MayEnd(end, scale * first, scale * last, Lane()) > 0.0);
        var step = new Step<State<Real>> { End = end, K1 = new() { X = first }, K7 = new() { X = last } };
        Assert.Equal(may, Pace<Real>.MayEnd(step, Lane()) > 0.0);
    }

    [Fact]
    public void The_norm_is_the_largest_share_of_what_each_number_may_be_wrong_by()
    {
        // As Control says: 0.35 of the tolerance at a micrometre, more at coarser ones by the power 0.15, in place and in metres per second; momentum by the radius over the least moment, turn by the radius, time by eight metres per second, a micrometre of film as a tenth of a metre.
        const double tolerance = 1e-4;
        var local = 0.35 * Math.Pow(100, 0.15) * tolerance;
        var body = new Body<Real> { Radius = 0.11, Moments = new(0.025, 0.03, 0.028) };
        var control = new Control<Real>(tolerance, body);
        double Norm(State<Real> e) => control.Norm(e);
        foreach (var sign in (double[])[1, -1])
        {
            var e = sign * 3 * local;
            foreach (var state in (State<Real>[])[
                new() { X = e }, new() { Y = e }, new() { VelocityX = e }, new() { VelocityY = e }, new() { Time = e / 8 }, new() { CoverFilm = e / 1e5 }, new() { TurnX = e / 0.11 }, new() { TurnY = e / 0.11 }, new() { TurnZ = e / 0.11 },
                new() { MomentumX = e * 0.025 / 0.11 }, new() { MomentumY = e * 0.025 / 0.11 }, new() { MomentumZ = e * 0.025 / 0.11 }])
            {
                Assert.Equal(3, Norm(state), 1e-12);
                Assert.Equal(3, Norm(state with { X = state.X == 0.0 ? 0.5 * local : state.X, Time = state.Time == 0.0 ? 0.1 * local : state.Time }), 1e-12);
            }
        }
        // No number is large, wherever it stands.
        foreach (var state in (State<Real>[])[
            new() { X = double.NaN }, new() { Y = double.NaN }, new() { VelocityX = double.NaN }, new() { VelocityY = double.NaN }, new() { MomentumX = double.NaN }, new() { MomentumY = double.NaN }, new() { MomentumZ = double.NaN },
            new() { X = double.PositiveInfinity }])
        {
            Assert.False(Norm(state) <= 1e10);
        }
        // With fresh cover that is not mended, a tenth of it.
        body.Effects = Effects.CoverOil | Effects.FreshCover;
        Assert.Equal(10, new Control<Real>(1e-6, body).Norm(new() { X = 0.35e-6 }), 1e-9);
        body.Effects |= Effects.Dips;
        Assert.Equal(1, (double)new Control<Real>(1e-6, body).Norm(new() { X = 0.35e-6 }), 1e-9);
        // Three times as much where what is foreseen is of another order anyway.
        body.Effects |= Effects.FineDips;
        Assert.Equal(1 / 3.0, (double)new Control<Real>(1e-6, body).Norm(new() { X = 0.35e-6 }), 1e-9);
    }

    [Fact]
    public void Dips_are_mended_where_there_are_any_and_foreseen_where_the_tolerance_asks_for_it()
    {
        Effects At(double tolerance, Effects effects) => Control<Real>.Mends(tolerance, new() { Effects = effects });
        const Effects Both = Effects.CoverOil | Effects.FreshCover;
        Assert.Equal(Effects.Dips, At(1e-4, Both));
        Assert.Equal(Effects.Dips, At(6e-6, Both));
        Assert.Equal(Effects.Dips | Effects.FineDips, At(4e-6, Both));
        Assert.Equal(Effects.Dips | Effects.FineDips, At(1e-6, Both));
        Assert.Equal(Effects.None, At(7e-7, Both));
        Assert.Equal(Effects.None, At(1e-4, Effects.CoverOil));
        Assert.Equal(Effects.None, At(1e-6, Effects.FreshCover));
        var body = new Body<Real> { Effects = Both | Effects.SmallMoments };
        Assert.Equal(body.Effects | Effects.Dips, body.At(1e-4).Effects);
        Assert.Equal(body.Effects | Effects.Dips | Effects.FineDips, body.At(1e-6).Effects);
        Assert.Equal(body.Effects, body.At(1e-7).Effects);
    }

    [Fact]
    public void The_stiff_method_asks_for_the_cube_root()
    {
        // 1831 (8 norm + 1e-10)^(-1/3) 1e-10/3 is 0.85 norm'^(-1/3), within [0.2, 3]; a rejected step shrinks by a fifth at least; the guess of the root is within 3.7 %; coarse.
        foreach (var norm in (double[])[0.01, 0.1, 0.5, 5])
        {
            var next = (double)Control<Real>.NextStiff(norm, 2.0, out var rejected);
            var exact = Math.Clamp(0.85 * Math.Pow(8 * norm, -1 / 3.0), 0.2, 3);
            Assert.Equal(8 * norm > 1, rejected > 0.0);
            Assert.Equal(1, next / 2 / (8 * norm > 1 ? Math.Min(exact, 0.8) : exact), 0.037);
        }
        Assert.Equal(6.0, (double)Control<Real>.NextStiff(0.0, 2.0, out _));
        Assert.Equal((double)Pace<Real>.Coarse(0.4), (double)Control<Real>.NextStiff(1e12, 2.0, out _));
    }

    [Fact]
    public void The_stiff_direction_of_slip_relaxes_at_the_rate_it_says()
    {
        // A change of the slip across itself turns the friction, which then works against that change: at little slip the derivative of the rates along that direction is -Rate, whatever else they depend on; here by a difference.
        var ball = BallSim.Balls.Ball.FromSpecification(
            15 * Units.Pound, 2.48 * Units.Inch, 0.050 * Units.Inch, 0.015 * Units.Inch, centreOfMass: new Vector3D(2.4, 1.0, -1.4) * Units.Millimetre);
        var lane = BallSim.Lanes.Lane.Regulation with { Oil = BallSim.Lanes.OilMap.Crowned(12, 25 * Units.Millilitre) };
        var options = new SimulatorOptions { CoverOil = false };
        var surface = new BallSim.Friction.FilmSurface<Real, BallSim.Friction.MapOfReal>(BallSim.Friction.Contact.Of(ball, lane).Law<Real>(options.Friction), new(lane.Oil.Map));
        foreach (var (direction, turn) in ((double, double)[])[(0.3, 0.2), (2.0, 1.3), (-1.1, 2.9)])
        {
            var q = Rotation.About(new(0.3, -0.7, 0.5), turn).Normalised.Spatial;
            var slide = new Slide<Real, BallSim.Friction.FilmSurface<Real, BallSim.Friction.MapOfReal>> { Body = Simulator.BodyOf(ball, lane, options), Surface = surface, Start = q };
            slide.Surface.Roam();
            var y = new State<Real> { Y = 14, VelocityX = 0.2, VelocityY = 7, Momentum = new(-1.2, -0.8, 0.3) };
            var c = default(SlideContact<Real>);
            c.At(slide.Body, q, y);
            const double slip = 1e-5;
            (y.VelocityX, y.VelocityY) = (y.VelocityX - c.sx + slip * Math.Cos(direction), y.VelocityY - c.sy + slip * Math.Sin(direction));
            c = default;
            c.At(slide.Body, q, y);
            Assert.Equal(slip, (double)c.s, 1e-12);
            slide.Linearise(y);
            double rate = slide.Rate;
            const double change = 1e-10;
            var (more, less) = (y, y);
            slide.AddAcross(ref more, change);
            slide.AddAcross(ref less, -change);
            // A unit along is a unit across.
            var unit = default(State<Real>);
            slide.AddAcross(ref unit, 1.0);
            Assert.Equal(1, (double)slide.Along(unit), 1e-12);
            slide.Rates(more, out var up);
            slide.Rates(less, out var down);
            var derivative = ((double)slide.Along(up) - (double)slide.Along(down)) / (2 * change);
            Assert.Equal(-1, derivative / rate, 1e-3);
        }
    }
}
