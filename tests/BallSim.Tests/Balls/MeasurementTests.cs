using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Tests.Balls;

public class MeasurementTests
{
    private const double Stiffness = 0.8;
    private const double Cradle = 0.004;

    private static readonly Ball Made = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch, centreOfMass: new(6e-4, 3e-4, -2e-4));

    private static readonly InertiaTensor True = Made.Inertia.Turned(Rotation.About(new(1, 2, 3), 0.4));

    // Along the axes and between them.
    private static readonly Vector3D[] Axes =
    [
        new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), new(1, 1, 0), new(1, -1, 0), new(1, 0, 1), new(1, 0, -1), new(0, 1, 1), new(0, 1, -1),
    ];

    // The pendulum by its own law: T = 2π √((I + I₀)/κ), I about the centre of the ball with the share of the offset (Steiner).
    private static double Period(InertiaTensor about, Vector3D axis) => 2 * Math.PI * Math.Sqrt((about.About(axis) + Cradle) / Stiffness);

    private static InertiaTensor AboutCentre => True + InertiaTensor.OfPoint(Made.Mass, Made.CentreOfMass);

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static double[] Entries(InertiaTensor t) => [t.Xx, t.Yy, t.Zz, t.Xy, t.Xz, t.Yz];

    [Theory]
    [InlineData(6)]
    [InlineData(9)]
    public void Exact_periods_give_the_tensor(int count)
    {
        // Three along the axes and three between them are enough.
        var axes = count == 6 ? [Axes[0], Axes[1], Axes[2], Axes[3], Axes[5], Axes[7]] : Axes;
        var fit = MeasuredInertia.FromPeriods([.. axes.Select(n => new PendulumReading(n, Period(AboutCentre, n)))], Stiffness, 1e-3, Cradle, Made.Mass, Made.CentreOfMass);
        Assert.All(Entries(fit.Inertia).Zip(Entries(True)), e => Assert.Equal(e.Second, e.First, 1e-15));
        Assert.Equal(count - 6, fit.DegreesOfFreedom);
        Assert.InRange(fit.Condition, 1, 10);
        Assert.Equal(0, fit.ChiSquare, 1e-15);
        Assert.StartsWith("0.0", fit.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_true_tensor_lies_within_its_interval_at_the_nominal_rate()
    {
        // 600 simulated measurements with 0.1 % noise on nine periods each (fixed seed). Of 600 a share of 0.95 varies by 0.0089: three of that either way.
        const int sets = 600;
        var random = new Random(11);
        var within = new int[7];
        var chi = 0.0;
        for (var k = 0; k < sets; k++)
        {
            var fit = MeasuredInertia.FromPeriods([.. Axes.Select(n => new PendulumReading(n, Period(AboutCentre, n) * (1 + 1e-3 * Normal(random))))],
                Stiffness, 1e-3, Cradle, Made.Mass, Made.CentreOfMass);
            var (got, error, truth) = (Entries(fit.Inertia), Entries(fit.StandardErrors), Entries(True));
            for (var i = 0; i < 6; i++)
            {
                within[i] += Math.Abs(got[i] - truth[i]) <= 1.96 * error[i] ? 1 : 0;
            }
            var axis = new Vector3D(0.3, -0.7, 0.5);
            within[6] += Math.Abs(fit.Inertia.About(axis) - True.About(axis)) <= fit.Uncertainty(axis) ? 1 : 0;
            chi += fit.ChiSquare;
        }
        Assert.All(within, count => Assert.InRange(count, (int)((0.95 - 3 * 0.0089) * sets), (int)((0.95 + 3 * 0.0089) * sets)));
        // Chi square has the mean 3 of its three degrees of freedom; the mean of 600 varies by 0.1.
        Assert.InRange(chi / sets, 2.7, 3.3);
    }

    [Fact]
    public void Bad_sets_of_axes_are_refused()
    {
        MeasuredInertia Fit(params Vector3D[] axes) =>
            MeasuredInertia.FromPeriods([.. axes.Select(n => new PendulumReading(n, Period(AboutCentre, n)))], Stiffness, 1e-3);
        SolidTests.Refused(() => Fit(Axes[..5]), "six entries; 5 readings");
        SolidTests.Refused(() => Fit(Axes[0], Axes[1], Axes[2], Axes[0], Axes[1], Axes[2]), "without bound");
        // All in one plane but one; nearly all along one axis.
        SolidTests.Refused(() => Fit([.. Enumerable.Range(0, 8).Select(i => new Vector3D(Math.Cos(0.4 * i), Math.Sin(0.4 * i), 0)), Axes[2]]), "cannot tell the six entries apart");
        SolidTests.Refused(() => Fit([.. Axes.Select(a => new Vector3D(1, 0, 0) + 0.1 * a)]), "magnify errors");
        SolidTests.Refused(() => MeasuredInertia.FromPeriods([.. Axes.Select(a => new PendulumReading(a, 1))], Stiffness, 1e-3, centreOfMass: new(1e-3, 0, 0)), "give mass too");
        SolidTests.Refused(() => new PendulumReading(Vector3D.Zero, 1), "axis");
    }

    [Fact]
    public void The_centre_of_mass_comes_from_balance_readings()
    {
        // Statics: W d·n = s L, here with L = 3.36 in and five readings that are a little off, whose errors the interval covers.
        Vector3D[] directions = [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), new(-1, 0.2, 0), new(1, 1, 1)];
        double Reading(Vector3D n) => Made.Mass * Made.CentreOfMass.Dot(n.Unit) / (3.36 * Inch);
        var exact = MeasuredCentre.FromBalance([.. directions.Select(n => new BalanceReading(n, Reading(n)))], Made.Mass);
        Assert.True((exact.CentreOfMass - Made.CentreOfMass).Length < 1e-17);
        var random = new Random(5);
        var within = 0;
        for (var k = 0; k < 600; k++)
        {
            var rough = MeasuredCentre.FromBalance([.. directions.Select(n => new BalanceReading(n, Reading(n) + Ounce / 16 * Normal(random)))], Made.Mass);
            within += Math.Abs(rough.CentreOfMass.Y - Made.CentreOfMass.Y) <= 1.96 * rough.StandardErrors.Y ? 1 : 0;
        }
        Assert.InRange(within, 554, 586);
        SolidTests.Refused(() => MeasuredCentre.FromBalance([.. directions[..2].Select(n => new BalanceReading(n, 0))], Made.Mass), "three components; 2 readings");
        SolidTests.Refused(() => MeasuredCentre.FromBalance([new(new(1, 0, 0), 0), new(new(0, 1, 0), 0), new(new(1, 1, 0.001), 0)], Made.Mass), "too near one plane");
    }

    [Fact]
    public void Marks_are_held_to_the_tolerances()
    {
        // USBC release, 2012: pin within 1 in of the low-RG axis, mark within 1.5 in of the high-RG axis.
        var ball = Made with { CentreOfMass = Vector3D.Zero };
        MarkCheck Off(double inches, Vector3D about) => MarkCheck.Of(ball, ball.Inertia.Turned(Rotation.About(about, inches * Inch / ball.Radius)));
        var pin = Off(0.9, Vector3D.UnitZ);
        Assert.Equal(0.9 * Inch, pin.PinToLowAxis, 1e-12);
        Assert.Equal(0.9 * Inch, pin.MassBiasToHighAxis!.Value, 1e-12);
        Assert.True(pin.PinIsWithin && pin.MassBiasIsWithin!.Value);
        Assert.False(Off(1.1, Vector3D.UnitZ).PinIsWithin);
        Assert.True(Off(1.4, Vector3D.UnitX).MassBiasIsWithin);
        Assert.False(Off(-1.6, Vector3D.UnitX).MassBiasIsWithin);
        Assert.Contains("pin 1.10 in from its axis (beyond 1 in)", Off(1.1, Vector3D.UnitZ).ToString());
        Assert.Equal(30 * Degree, MarkCheck.SettledFromMark(ball, new(0, -Math.Cos(30 * Degree), 0.5)), 1e-14);
        var plain = ball with { Marks = new() };
        Assert.Null(MarkCheck.Of(plain, plain.Inertia).MassBiasIsWithin);
        SolidTests.Refused(() => MarkCheck.SettledFromMark(plain, Vector3D.UnitY), "no mass-bias mark");
    }
}
