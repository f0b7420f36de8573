using BallSim.Balls;
using BallSim.Drilling;
using static BallSim.Units;

namespace BallSim.Tests.Balls;

public class ResurfacingTests
{
    private static readonly Ball Typical = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 3 * Ounce);

    [Fact]
    public void A_uniform_sphere_stays_a_uniform_sphere()
    {
        // 2/5 m R², any textbook of mechanics: ground at its own density, a uniform sphere is a smaller uniform sphere.
        const double Density = 1250;
        Ball Uniform(double radius)
        {
            var mass = 4 * Math.PI / 3 * Density * Math.Pow(radius, 3);
            var moment = 0.4 * mass * radius * radius;
            return new() { Mass = mass, Radius = radius, Inertia = new(moment, moment, moment) };
        }
        var ground = Uniform(0.1086).Ground(0.1 * Inch, Density);
        var expected = Uniform(0.1086 - 0.1 * Inch / (2 * Math.PI));
        Assert.Equal(expected.Radius, ground.Radius, 1e-15);
        Assert.Equal(expected.Mass, ground.Mass, 1e-13);
        Assert.Equal(expected.Inertia.Xx, ground.Inertia.Xx, 1e-15);
    }

    [Fact]
    public void The_shell_agrees_with_counted_grains()
    {
        // Outside the closed form: a shell of many grains taken off one by one, at fixed places on a spiral, layer by layer.
        var ball = Typical;
        var ground = ball.Ground(0.2 * Inch, 1180);
        const int Layers = 8, PerLayer = 4000;
        var (mass, moment) = (0.0, 0.0);
        for (var l = 0; l < Layers; l++)
        {
            var step = (ball.Radius - ground.Radius) / Layers;
            var r = ground.Radius + (l + 0.5) * step;
            var grain = 1180 * 4 * Math.PI * r * r * step / PerLayer;
            for (var i = 0; i < PerLayer; i++)
            {
                var z = r * (1 - (2 * i + 1.0) / PerLayer);
                var turn = i * Math.PI * (3 - Math.Sqrt(5));
                mass += grain;
                // About x: y² + z².
                moment += grain * (z * z + (r * r - z * z) * Math.Pow(Math.Sin(turn), 2));
            }
        }
        double AboutCentre(Ball b) => b.Inertia.Xx + b.Mass * (b.CentreOfMass.Y * b.CentreOfMass.Y + b.CentreOfMass.Z * b.CentreOfMass.Z);
        Assert.Equal(mass, ball.Mass - ground.Mass, 1e-4 * mass);
        Assert.Equal(moment, AboutCentre(ball) - AboutCentre(ground), 1e-4 * moment);
    }

    [Fact]
    public void About_the_centre_of_the_ball_the_shell_takes_the_same_from_every_axis_and_no_product()
    {
        // A shell is a difference of two spheres about the centre: 8π/15 ρ (R⁵ - r⁵) about any axis, any textbook of mechanics.
        var ball = Typical with { CentreOfMass = new(4e-4, -7e-4, 6e-4) };
        var ground = ball.Ground(0.2 * Inch, 1180);
        static InertiaTensor About(Ball b) => new MassProperties(b.Mass, b.CentreOfMass, b.Inertia).InertiaAbout(Vector3D.Zero);
        var taken = About(ball) - About(ground);
        var shell = 8 * Math.PI / 15 * 1180 * (Math.Pow(ball.Radius, 5) - Math.Pow(ground.Radius, 5));
        Assert.All((double[])[taken.Xx, taken.Yy, taken.Zz], i => Assert.Equal(shell, i, 1e-12 * shell));
        Assert.All((double[])[taken.Xy, taken.Xz, taken.Yz], i => Assert.Equal(0, i, 1e-12 * shell));
    }

    [Fact]
    public void First_moment_and_marks_stay_and_two_grinds_are_one()
    {
        var ground = Typical.Ground(0.1 * Inch);
        Assert.True((Typical.Mass * Typical.CentreOfMass - ground.Mass * ground.CentreOfMass).Length < 1e-16);
        Assert.Same(Typical.Marks, ground.Marks);
        Assert.True(ground.Mass < Typical.Mass && ground.LowRg < Typical.LowRg);
        var twice = Typical.Ground(0.05 * Inch).Ground(0.05 * Inch);
        Assert.Equal(ground.Mass, twice.Mass, 1e-14);
        Assert.Equal(ground.Inertia.Yy, twice.Inertia.Yy, 1e-16);
        Assert.Equal(Typical.Inertia.Zz, Typical.Ground(0).Inertia.Zz, 1e-17);
    }

    [Fact]
    public void The_rules_follow_the_grind()
    {
        // 26.75 in around: 0.04 in may go, 0.1 in may not.
        var ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, diameter: 26.75 * Inch / Math.PI);
        Assert.DoesNotContain(RulesCheck.Of(ball.Ground(0.04 * Inch)).Failures, l => l.What == "circumference");
        Assert.Contains(RulesCheck.Of(ball.Ground(0.1 * Inch)).Failures, l => l.What == "circumference");
    }

    [Fact]
    public void Impossible_amounts_are_refused()
    {
        Refused(() => Typical.Ground(0.31 * Inch), "offCircumference");
        Refused(() => Typical.Ground(-0.1 * Inch), "offCircumference");
        Refused(() => Typical.Ground(0.1), "for inches write 0.1 * Inch");
        Refused(() => Typical.Ground(0.1 * Inch, 1.2), "coverDensity");
        Refused(() => new Ball { Mass = 0.01, Radius = 0.108, Inertia = new(4e-5, 4e-5, 4e-5) }.Ground(0.1 * Inch), "nothing would be left");
    }

    private static void Refused(Func<object> build, string part) => Assert.Contains(part, Assert.ThrowsAny<ArgumentException>(build).Message);
}
