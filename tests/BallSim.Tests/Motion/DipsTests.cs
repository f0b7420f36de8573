using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;
using Xunit.Abstractions;
using static BallSim.Units;

namespace BallSim.Tests.Motion;

/// <summary>
/// The dips of the fresh cover, left out of the stages of long steps and made whole at the end of each: against the law as it is in short steps, which needs none of that.
/// </summary>
public class DipsTests(ITestOutputHelper output)
{
    private static readonly Ball Ball = Ball.FromSpecification(
        weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, diameter: 8.55 * Inch,
        centreOfMass: new Vector3D(0.20, 0.15, -0.25) * Millimetre)
        .LayOut(new Layout(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch));

    private static readonly Lane Oiled = Lane.Regulation with { Oil = OilMap.Crowned(42 * Foot, 25 * Millilitre) };

    private static readonly Release[] Releases = [.. from speed in new[] { 7.4, 8.0, 8.6 } from spin in new[] { 25.0, 32.0, 40.0 } from rotation in new[] { 15.0, 40.0, 60.0 } from tilt in new[] { 5.0, 15.0 }
        select new Release { Speed = speed, SpinRate = spin, AxisRotation = rotation * Degree, AxisTilt = tilt * Degree, Board = 17, LaunchAngle = (0.3 + rotation / 30) * Degree }];

    [Fact]
    public void Long_steps_over_dips_end_where_short_ones_do()
    {
        var exact = Ends(new() { Tolerance = 1e-8, MaxSteps = 1_000_000 });
        var errors = Ends(new() { Tolerance = 1e-4 }).Zip(exact, (a, b) => Math.Abs(a.X - b.X)).Order().ToArray();
        var never = Ends(new() { Tolerance = 1e-8, FreshCover = false, MaxSteps = 1_000_000 }).Zip(exact, (a, b) => Math.Abs(a.X - b.X)).Order().ToArray();
        output.WriteLine($"error at 1e-4 m: half below {errors[errors.Length / 2]:E1}, 9 of 10 below {errors[errors.Length * 9 / 10]:E1}, greatest {errors[^1]:E1} m; the fresh cover moves the end by {never[never.Length / 2]:E1} m in the median");
        Assert.InRange(errors[errors.Length / 2], 0, 1e-4);
        Assert.InRange(errors[errors.Length * 9 / 10], 0, 3e-4);
        // What is at stake is far more.
        Assert.True(never[never.Length / 2] > 1e-2);
    }

    // Ten times as near with the dips foreseen, in a quarter of the steps that following them takes.
    [Fact]
    public void Steps_that_foresee_the_dips_end_where_short_ones_do()
    {
        var exact = Ends(new() { Tolerance = 1e-9, MaxSteps = 1_000_000 });
        var (foreseen, followed, without) = (Ends(new() { Tolerance = 1e-6 }), Ends(new() { Tolerance = 7e-7 }), Ends(new() { Tolerance = 1e-6, FreshCover = false }));
        var errors = foreseen.Zip(exact, (a, b) => Math.Abs(a.X - b.X)).Order().ToArray();
        var steps = foreseen.Average(s => s.Steps);
        output.WriteLine($"error at 1e-6 m: half below {errors[errors.Length / 2]:E1}, 9 of 10 below {errors[errors.Length * 9 / 10]:E1}, greatest {errors[^1]:E1} m; {steps:F0} steps, {followed.Average(s => s.Steps):F0} following, {without.Average(s => s.Steps):F0} without fresh cover");
        Assert.InRange(errors[errors.Length / 2], 0, 2e-6);
        Assert.InRange(errors[errors.Length * 9 / 10], 0, 6e-6);
        Assert.True(steps < followed.Average(s => s.Steps) / 3);
        Assert.True(steps < 1.1 * without.Average(s => s.Steps));
    }

    // The oil is carried from end to end of a step with the mean of the fresh fraction: what is on the cover where the run ends, and all that was taken, rolling included.
    [Fact]
    public void Oil_carried_over_long_steps_is_that_of_short_ones()
    {
        Throw[] throws = [.. Releases.Select(r => new Throw(Ball, Oiled, r))];
        Outcome[] Taken(double tolerance) => Ensemble.Throw(throws, new() { Shot = new() { Tolerance = tolerance, MaxSteps = 1_000_000 } });
        double[] Covers(double tolerance) => [.. Releases.Select(r => Simulator.Throw(Ball, Oiled, r, new() { Tolerance = tolerance, MaxSteps = 1_000_000 }).End.CoverFilm)];
        var taken = Taken(1e-4).Zip(Taken(1e-7), (a, b) => Math.Abs(a.OilTakenUp / b.OilTakenUp - 1)).Order().ToArray();
        var exact = Covers(1e-7);
        var most = exact.Max();
        var covers = Covers(1e-4).Zip(exact, (a, b) => Math.Abs(a - b) / most).Order().ToArray();
        output.WriteLine($"oil taken: half off by less than {taken[taken.Length / 2]:P2}, at most {taken[^1]:P2}; film on the cover at the end, of the greatest: {covers[covers.Length / 2]:P2}, {covers[^1]:P2}");
        Assert.InRange(taken[taken.Length / 2], 0, 0.01);
        Assert.InRange(covers[covers.Length / 2], 0, 0.02);
        Assert.InRange(taken[^1], 0, 0.05);
        Assert.InRange(covers[^1], 0, 0.05);
    }

    [Fact]
    public void They_are_hardly_more_than_without_dips()
    {
        var (with, without) = (Ends(new() { Tolerance = 1e-4 }).Average(s => s.Steps), Ends(new() { Tolerance = 1e-4, FreshCover = false }).Average(s => s.Steps));
        output.WriteLine($"{with:F0} steps with dips, {without:F0} without");
        Assert.True(with < 1.4 * without);
    }

    // Steps of a tenth of a turn, against two thousand of the law as it is: of what leaving the dips out would cost, a twentieth at most may be left, in every component that they move.
    [Theory]
    [InlineData(0.55)]
    [InlineData(0.60)]
    [InlineData(1.00)]
    public void What_the_stages_miss_is_given_back(double time)
    {
        var options = new SimulatorOptions { Tolerance = 1e-9, MaxSteps = 1_000_000, MaxTime = time };
        var body = Simulator.BodyOf(Ball, Oiled, options);
        var surface = new FilmSurface<Real, MapOfReal>(Contact.Of(Ball, Oiled).Law<Real>(options.Friction), new(Oiled.Oil.Map));
        var run = new Run<Real, FilmSurface<Real, MapOfReal>, Nobody>(body, surface, Simulator.BoundsOf(Ball, Oiled, options), options.Tolerance, default);
        var start = Releases[10].StartOn(Oiled, Ball);
        run.Go(start.X, start.Y, start.VelocityX, start.VelocityY, start.Orientation.Normalised.Spatial, start.AngularVelocity.Spatial, start.Loft);
        Assert.Equal(Phase.Slide, run.Phase);

        var exact = After(run, body, 2000, dips: false, mends: false);
        var without = After(run, body, 2000, dips: true, mends: false);
        var mended = After(run, body, 4, dips: true, mends: true);
        foreach (var of in new Func<State<Real>, double>[] { s => s.VelocityX, s => s.VelocityY, s => s.MomentumX, s => s.MomentumY, s => s.CoverFilm, s => s.FrictionWork })
        {
            var (left, cost) = (Math.Abs(of(mended) - of(exact)), Math.Abs(of(without) - of(exact)));
            output.WriteLine($"{left:E1} of {cost:E1}");
            Assert.True(left < 0.05 * cost);
        }
    }

    private static State<Real> After(Run<Real, FilmSurface<Real, MapOfReal>, Nobody> run, Body<Real> body, int steps, bool dips, bool mends)
    {
        body.Effects = dips ? body.Effects | Effects.Dips : body.Effects & ~Effects.Dips;
        var slide = new Slide<Real, FilmSurface<Real, MapOfReal>> { Body = body, Surface = run.slide.Surface, Start = run.Orientation };
        slide.Surface.Roam();
        // Nearly half a turn: most of a dip is in it.
        return After(slide, run.Last, 0.08, steps, mends);
    }

    /// <summary>The state after equal steps of sliding over a length, with the dips made whole or without.</summary>
    internal static State<Real> After(Slide<Real, FilmSurface<Real, MapOfReal>> slide, State<Real> from, double length, int steps, bool mends)
    {
        Real h = length / steps;
        var step = new Step<State<Real>> { Start = from };
        slide.Rates(step.Start, out step.K1);
        for (var i = 0; i < steps; i++)
        {
            if (mends)
            {
                slide.Take(ref step, h, out _);
            }
            else
            {
                RungeKutta5<Slide<Real, FilmSurface<Real, MapOfReal>>, State<Real>, Real>.Take(ref slide, ref step, h, out _);
            }
            (step.Start, step.K1) = (step.End, step.K7);
        }
        return step.End;
    }

    private static (double X, int Steps)[] Ends(SimulatorOptions options) => Array.ConvertAll(Releases, r =>
    {
        var shot = Simulator.Throw(Ball, Oiled, r, options);
        return (shot.End.X, shot.Steps);
    });

    private readonly struct Nobody : IRecorder<Real>
    {
        public void Took(Phase phase, in Step<State<Real>> step, Real h, Quat<Real> start)
        {
            // The end alone is asked for.
        }

        public void Changed(Phase from, Phase to, in State<Real> at, Quat<Real> start)
        {
            // As above.
        }
    }
}
