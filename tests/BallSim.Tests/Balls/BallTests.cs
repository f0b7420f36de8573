using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Tests.Balls;

public class BallTests
{
    private static Ball Asymmetric => Ball.FromSpecification(
        weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch);

    // A uniform sphere: 2/5 m R² about its centre (any textbook of mechanics).
    private static Ball Uniform(double mass, double radius) => new() { Mass = mass, Radius = radius, Inertia = Even(0.4 * mass * radius * radius) };

    private static InertiaTensor Even(double moment) => new(moment, moment, moment);

    [Fact]
    public void A_specification_comes_back_from_the_body_it_made()
    {
        var ball = Asymmetric;
        Assert.Equal(2.48 * Inch, ball.LowRg, 1e-15);
        Assert.Equal(2.53 * Inch, ball.HighRg, 1e-15);
        Assert.Equal(2.515 * Inch, ball.IntermediateRg, 1e-15);
        Assert.Equal(0.050 * Inch, ball.Differential, 1e-15);
        Assert.Equal(0.015 * Inch, ball.IntermediateDifferential, 1e-15);
        Assert.Equal(Vector3D.UnitY, ball.PreferredAxis);
        Assert.Equal(Vector3D.UnitY, ball.Marks.MassBias);
        Assert.Equal(2.515 * Inch, ball.RgAbout(new(0, 0, 3)), 1e-15);
    }

    [Fact]
    public void A_symmetric_ball_has_no_mass_bias_mark()
    {
        var ball = Ball.FromSpecification(weight: 14 * Pound, lowRg: 2.5 * Inch, differential: 0.04 * Inch);
        Assert.Null(ball.Marks.MassBias);
        Assert.Equal(ball.Inertia.Yy, ball.Inertia.Zz);
        Assert.Equal(0, ball.IntermediateDifferential);
    }

    [Fact]
    public void Three_ounces_on_sixteen_pounds_are_one_millimetre()
    {
        // Statics of the balance, W e = s L with the assumed lever of 3.36 in: 1.0001 mm, rounded.
        var ball = Ball.FromSpecification(weight: 16 * Pound, lowRg: 2.5 * Inch, differential: 0.04 * Inch, pinToCg: 3 * Inch, topWeight: 3 * Ounce);
        Assert.Equal(1e-3, ball.CentreOfMass.Length, 1e-6);
        Assert.Equal(3 * Inch, ball.Radius * Vector3D.UnitX.AngleTo(ball.CentreOfMass), 1e-14);
        Assert.True(ball.CentreOfMass is { X: > 0, Y: > 0, Z: 0 });
    }

    [Fact]
    public void Moment_of_inertia_in_the_units_of_a_patent_gives_its_radius_of_gyration()
    {
        // US reissue patent RE34614 (1994): 0.318 in oz s² per pound is an RG of 2.770 in; the ounce there is one of force.
        var mass = 1 * Pound;
        var moment = 0.318 * Inch * Ounce * StandardGravity;
        var ball = new Ball { Mass = mass, Radius = 4.25 * Inch, Inertia = Even(moment) };
        Assert.Equal(2.770, ball.LowRg / Inch, 1e-3);
    }

    [Theory]
    [InlineData(7, 0.11)]
    [InlineData(5, 4 * Inch)]
    public void Textbook_spheres_are_bodies(double mass, double radius)
    {
        var ball = Uniform(mass, radius);
        Assert.Equal(Math.Sqrt(0.4) * radius, ball.HighRg, 1e-15);
        Assert.Equal(0, ball.Differential);
    }

    [Fact]
    public void A_study_body_far_from_a_bowling_ball_is_taken()
    {
        var ball = new Ball { Mass = 6.8, Radius = 0.109, Inertia = new(0.012, 0.02, 0.029), CentreOfMass = new(0, 0, 0.012) };
        Assert.Equal(Vector3D.UnitZ, ball.PreferredAxis);
    }

    [Fact]
    public void With_checks_again()
    {
        Assert.Equal(5e-4, (Asymmetric with { CentreOfMass = new(5e-4, 0, 0) }).CentreOfMass.Length);
        Assert.Same(Finish.Polished, (Asymmetric with { Finish = Finish.Polished }).Finish);
        Refused(() => Asymmetric with { CentreOfMass = new(0.2, 0, 0) }, "outside the ball");
        Refused(() => Asymmetric with { Mass = double.NaN }, "NaN");
        Refused(() => Asymmetric with { Inertia = new(0.01, 0.01, 0.021) }, "triangle");
        Refused(() => Asymmetric with { Mass = 1 }, "mass outside the ball");
    }

    [Fact]
    public void A_hollow_shell_is_the_last_possible_body()
    {
        // A thin shell: 2/3 m R² (any textbook of mechanics); no sphere of that mass and radius has more.
        var (m, r) = (6.0, 0.108);
        var shell = new Ball { Mass = m, Radius = r, Inertia = Even(2.0 / 3 * m * r * r) };
        Assert.Equal(Math.Sqrt(2.0 / 3) * r, shell.LowRg, 1e-15);
        Refused(() => shell with { Inertia = Even(2.0001 / 3 * m * r * r) }, "mass outside the ball");
        Refused(() => shell with { CentreOfMass = new(0, 1e-4, 0) }, "mass outside the ball");
    }

    [Fact]
    public void Impossible_tensors_are_refused()
    {
        Refused(() => new Ball { Mass = 7, Radius = 0.11, Inertia = new(0.03, 0.03, 0.03, 0.04) }, "positive definite");
        _ = Uniform(0.1, 0.02);
        Refused(() => Uniform(0.1, 0.0199), "out of [0.02, 1]");
        Refused(() => new Ball { Mass = 7, Radius = 0.11, Inertia = default }, "positive definite");
        Refused(() => new Ball { Mass = 7, Radius = 0.11, Inertia = new(0.03, 0.03, double.NaN) }, "not a number");
        // Moments that pass one by one and fail as a tensor: principal moments 0.01, 0.02 and 0.04.
        Refused(() => new Ball { Mass = 7, Radius = 0.11, Inertia = new(0.03, 0.03, 0.01, Xy: 0.01) }, "triangle");
    }

    [Fact]
    public void The_order_in_an_initializer_does_not_matter()
    {
        var a = new Ball { CentreOfMass = new(1e-3, 0, 0), Inertia = Even(0.03), Radius = 0.11, Mass = 7 };
        Assert.Equal(new Ball { Mass = 7, Radius = 0.11, Inertia = Even(0.03), CentreOfMass = new(1e-3, 0, 0) }, a);
        Refused(() => new Ball { CentreOfMass = new(0.2, 0, 0), Inertia = Even(0.03), Radius = 0.11, Mass = 7 }, "outside the ball");
    }

    [Fact]
    public void Likely_slips_are_named()
    {
        Refused(() => Ball.FromSpecification(15, 2.48 * Inch, 0.05 * Inch), "for pounds write 15 * Pound");
        Refused(() => Ball.FromSpecification(15 * Pound, 2.48, 0.05 * Inch), "for inches write 2.48 * Inch");
        Refused(() => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05), "for inches write 0.05 * Inch");
        Refused(() => Ball.FromSpecification(17 * Pound, 2.48 * Inch, 0.05 * Inch), "weight = 7.71107 kg is out of [2.26796, 7.28016] kg");
        Refused(() => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.06 * Inch), "larger than differential");
        Refused(() => Ball.FromSpecification(15 * Pound, double.NaN, 0.05 * Inch), "lowRg is NaN");
        Refused(() => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, pinToCg: 3 * Inch, topWeight: 3), "for ounces write 3 * Ounce");
        Refused(() => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, topWeight: 3 * Ounce), "give pinToCg");
        Refused(() => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, pinToCg: 3 * Inch), "give topWeight");
        Refused(() => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, centreOfMass: Vector3D.Zero, topWeight: 3 * Ounce), "leave out");
    }

    [Fact]
    public void Text_is_in_the_units_of_the_trade() => Assert.Equal(
        "15.00 lb, diameter 8.550 in, RG 2.480 in, differential 0.050 in, intermediate 0.015 in, centre of mass off by 0.00 mm, " +
        "reactive cover, polished, Ra 0.10 µm, undrilled", (Asymmetric with { Finish = Finish.Polished }).ToString());

    private static void Refused(Func<object> build, string part) => Assert.Contains(part, Assert.ThrowsAny<ArgumentException>(build).Message);
}
