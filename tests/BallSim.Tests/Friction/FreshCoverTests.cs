using BallSim.Friction;
using BallSim.Spatial;
using BallSim.Tests.Integration;
using BallSim.Tests.Laws;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BallSim.Tests.Friction;

/// <summary>The fresh fraction against its definition written out in vectors, and against what geometry says of it.</summary>
public class FreshCoverTests
{
    private const double Radius = 0.1085, Contact = 0.008;

    private static double Fraction(Vector3D ω, Vector3D across, double radius = Radius, double contact = Contact) =>
        FreshCover<Real>.Fraction(FreshCover<Real>.Shift(ω.X, ω.Y, ω.Z, across.X, across.Y, across.Z, radius, contact));

    // From the definition: the part of the rate square to e, over |ω|; one turn; k = -n down to the lane.
    private static double Defined(Vector3D ω, Vector3D across, double radius, double contact)
    {
        var e = ω.Unit;
        var rate = (across - across.Dot(e) * e) / ω.Length;
        var k = -Vector3D.UnitZ;
        var δ = 2 * Math.PI * radius / ω.Length * rate.Dot(k) / Math.Max(e.Cross(k).Length, 0.05);
        var q = Math.Sqrt(Math.Pow(δ / (2 * contact), 2) + 0.05 * 0.05) - 0.05;
        return q / Math.Pow(1 + Math.Pow(q, 4), 0.25);
    }

    [Property(MaxTest = 300)]
    public Property It_is_what_its_definition_says() => Prop.ForAll(
        (from axis in Worlds.Direction from spin in Worlds.Between(1, 60) from towards in Worlds.Direction from size in Worlds.Between(0, 30) select (ω: spin * axis, across: size * towards)).ToArbitrary(),
        (from radius in Worlds.Between(0.05, 0.2) from contact in Worlds.Between(0.002, 0.02) select (radius, contact)).ToArbitrary(),
        (v, r) =>
        {
            var defined = Defined(v.ω, v.across, r.radius, r.contact);
            return Math.Abs(Fraction(v.ω, v.across, r.radius, r.contact) - defined) <= 1e-12 + 1e-9 * defined;
        });

    [Fact]
    public void A_ball_that_does_not_turn_meets_fresh_cover()
    {
        Assert.Equal(1, Fraction(Vector3D.Zero, Vector3D.UnitX), 1e-12);
        Assert.Equal(1, Fraction(new(0.9e-6, 0, 0), Vector3D.UnitX), 1e-12);
        Assert.NotEqual(1, Fraction(new(1e-5, 0, 0), Vector3D.Zero));
    }

    [Fact]
    public void An_axis_that_stays_runs_in_its_own_track()
    {
        Assert.Equal(0, Fraction(new(-30, 5, 4), Vector3D.Zero));
        // A rate along the axis only spins the ball up.
        Assert.Equal(0, Fraction(new(-30, 0, 12), 0.7 * new Vector3D(-30, 0, 12)), 1e-12);
    }

    [Fact]
    public void It_grows_with_the_way_of_the_axis_towards_one()
    {
        double At(double rate) => Fraction(new(-30, 0, 0), new(0, 0, rate));
        Assert.True(0 < At(5) && At(5) < At(10) && At(10) < At(20) && At(200) < 1);
        Assert.Equal(1, At(1e5), 1e-6);
        // One turn moves the ring by 2πR · rate/ω²: by two contact radii at this rate, and then half of it and more is fresh.
        Assert.InRange(At(2 * Contact * 900 / (2 * Math.PI * Radius)), 0.8, 0.84);
    }

    [Fact]
    public void A_ball_that_spins_like_a_top_is_bounded()
    {
        // |e × k| counts as 0.05 where it is less.
        double At(double tilt) => Fraction(30 * new Vector3D(Math.Sin(tilt), 0, Math.Cos(tilt)), new(0.1, 0, 0));
        Assert.Equal(Defined(30 * new Vector3D(Math.Sin(0.01), 0, Math.Cos(0.01)), new(0.1, 0, 0), Radius, Contact), At(0.01), 1e-12);
        Assert.True(At(0.01) < At(0.04));
    }

    [Fact]
    public void A_shift_of_any_size_meets_a_fraction_up_to_one()
    {
        Assert.Equal(1, (double)FreshCover<Real>.Fraction(1e12), 1e-15);
        // In floats the square of a square is not a number any more.
        Assert.Equal(1, Floats8.Lane(FreshCover<Floats8>.Fraction(1e12), 3), 1e-6);
        Assert.True(double.IsNaN((double)FreshCover<Real>.Fraction(double.NaN)));
    }

    [Fact]
    public void The_inverse_fourth_root_is_good_to_rounding()
    {
        double worst = 0, guess = 0, beside = 0, rough = 0;
        for (var n = 0; n <= 60000; n++)
        {
            var a = Math.Pow(10, n * 30.0 / 60000);
            double r = Elementary<Real>.InverseFourthRoot(a);
            // The error of the root by that of a r⁴, in numbers of twice the length.
            Twice t = r;
            worst = Math.Max(worst, Math.Abs((double)(a * (t * t * t * t) - 1.0)) / 4);
            guess = Math.Max(guess, Math.Abs((double)Real.InverseFourthRootGuess(a) * Math.Pow(a, 0.25) - 1));
            beside = Math.Max(beside, Math.Max(Math.Abs(Doubles8.Lane(Elementary<Doubles8>.InverseFourthRoot(a), 2) - r), Math.Abs(Doubles4.Lane(Elementary<Doubles4>.InverseFourthRoot(a), 2) - r)));
            rough = Math.Max(rough, Math.Max(Math.Abs(Floats16.Lane(Elementary<Floats16>.InverseFourthRoot(a), 2) / r - 1), Math.Abs(Floats8.Lane(Elementary<Floats8>.InverseFourthRoot(a), 2) / r - 1)));
        }
        Assert.InRange(worst, 0, 3e-16);
        Assert.InRange(guess, 0, 0.033);
        Assert.Equal(0, beside);
        Assert.InRange(rough, 0, 3e-7);
    }
}
