using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Plots.Tests;

public class BallPlotsTests
{
    private static Vector3D[] Places(Newtonsoft.Json.Linq.JToken trace)
    {
        var (x, y, z) = (ChartText.Numbers(trace, "x"), ChartText.Numbers(trace, "y"), ChartText.Numbers(trace, "z"));
        return [.. x.Select((_, i) => new Vector3D(x[i], y[i], z[i]))];
    }

    [Fact]
    public void Marks_stand_in_their_directions_just_over_the_ball()
    {
        var marks = Throws.Sheet().Ball.Marks;
        var chart = new ChartText(Throws.Sheet().Ball.BallView());
        foreach (var (name, direction) in new[] { ("pin", marks.Pin), ("mass-bias mark", marks.MassBias!.Value), ("positive axis point", marks.PositiveAxis!.Value) })
        {
            var place = Places(chart.Named(name).First()).Single();
            Assert.Equal(0, place.AngleTo(direction), 1e-9);
            Assert.InRange(place.Length, 1.001, 1.1);
        }
    }

    [Fact]
    public void Rings_lie_as_far_from_the_spin_axis_as_the_tilt_says()
    {
        // Tilt is the elevation of the axis over the lane, so that the place under the ball is 90 degrees and the tilt away from it.
        var shot = Throws.Drilled();
        var chart = new ChartText(shot.BallView());
        var rings = chart.Named("track, sliding").Concat(chart.Named("track, rolling")).ToArray();
        Assert.InRange(rings.Length, shot.End.Revolutions - 1, shot.End.Revolutions + 1);
        void Beside(Vector3D place, PathPoint at) => Assert.Equal(Math.PI / 2 + at.AxisTilt, place.AngleTo(at.SpinAxisInBall), 1e-6);
        var (first, last) = (Places(rings[0]), Places(rings[^1]));
        Beside(first[0], shot.Start);
        Beside(last[^1], shot.End);
        // The place under a turning ball runs over the cover against the turn: k' = -ω × k, all in the ball.
        var spin = shot.Start.Orientation.Inverse.Apply(shot.Start.AngularVelocity);
        Assert.InRange((first[1] - first[0]).AngleTo(-spin.Cross(first[0])), 0, 4 * Degree);
        var axis = Places(chart.Named("way of the spin axis").Single());
        Assert.Equal(0, axis[0].AngleTo(shot.Start.SpinAxisInBall), 1e-6);
        Assert.Equal(0, axis[^1].AngleTo(shot.End.SpinAxisInBall), 1e-6);
    }

    [Fact]
    public void A_ball_in_the_air_draws_nothing()
    {
        var shot = Throws.Drilled(loft: 4 * Foot);
        var landing = shot.PhaseChanges[0];
        var text = (string)new ChartText(shot.BallView()).Named("track, sliding").First()["text"]![0]!;
        Assert.Contains(FormattableString.Invariant($"{landing.Distance / Foot:F1} to "), text);
    }

    [Fact]
    public void Every_polhode_keeps_energy_over_momentum_squared()
    {
        // Whatever the rate of the spin: (u . I u)/(u . I² u) = 2E/L², constant along the way of the axis u.
        var ball = Throws.Sheet().Before;
        var chart = new ChartText(ball.PolhodeView());
        var curves = chart.Named("round the axis of least inertia").Concat(chart.Named("round the axis of greatest inertia")).Select(Places).ToArray();
        Assert.Equal(16, curves.Length);
        double Ratio(Vector3D u)
        {
            var momentum = ball.Inertia.Apply(u);
            return u.Dot(momentum) / momentum.Dot(momentum);
        }
        foreach (var curve in curves)
        {
            Assert.All(curve, u => Assert.Equal(1, Ratio(u.Unit) / Ratio(curve[0].Unit), 1e-9));
            Assert.Contains(curve, u => u.AngleTo(curve[0]) > 1 * Degree);
        }
        // The families part: different curves have different ratios.
        Assert.True(curves.Select(c => Math.Round(Ratio(c[0].Unit) / Ratio(curves[0][0].Unit), 6)).Distinct().Count() >= 8);
    }

    [Fact]
    public void One_spin_shows_its_own_polhode()
    {
        var spin = TorqueFreeSpin.Of(Throws.Sheet().Before, 300 * Rpm * new Vector3D(0.5, 0.4, 0.8).Unit);
        var curve = Places(new ChartText(spin.PolhodeView()).Named("polhode").Single());
        Assert.Equal(0, curve[0].AngleTo(new Vector3D(0.5, 0.4, 0.8)), 1e-6);
        Assert.Equal(0, curve[60].AngleTo(spin.AngularVelocityInBall(spin.Period!.Value / 4)), 1e-6);
    }

    [Fact]
    public void A_ball_with_three_equal_moments_has_no_polhode()
    {
        var round = Balls.Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0);
        Assert.Contains("three equal moments", Assert.Throws<ArgumentException>(() => round.PolhodeView()).Message);
    }

    [Fact]
    public void Migration_shows_the_angle_to_the_preferred_axis_over_time()
    {
        var ball = Throws.Sheet().Ball;
        var record = SpinTest.Run(ball, 600 * Rpm * ball.Marks.GripCentre!.Value, new SpinDissipation { SquareToMomentum = 0.05 }, 20);
        var chart = new ChartText(record.AxisMigration());
        var curve = chart.Named("angle to the preferred axis").Single();
        var (x, y) = (ChartText.Numbers(curve, "x"), ChartText.Numbers(curve, "y"));
        Assert.Equal(20, x[^1], 1e-9);
        for (var i = 0; i < x.Length; i += 37)
        {
            Assert.Equal(record.At(x[i]).AngleToPreferredAxis / Degree, y[i], 1e-9);
        }
        Assert.Equal(x.Length, Places(chart.Named("way of the spin axis").Single()).Length);
    }
}
