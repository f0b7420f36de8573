using BallSim.Balls;
using BallSim.Benchmarks;
using BallSim.Fitting;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Benchmarks.SyntheticTracks;
using static BallSim.Units;

namespace BallSim.Tests.Fitting;

/// <summary>Tracks with a known truth, fitted. The long studies are the benchmark <c>-- coverage</c>.</summary>
public class TrackFitTests
{
    private static readonly FitParameter[] Law = [FitParameter.Dry, FitParameter.Floor, FitParameter.FilmScale];

    private static double True(FitParameter p) => p switch { FitParameter.Dry => Truth.Dry, FitParameter.Floor => Truth.Floor, _ => Truth.FilmScale };

    [Fact]
    public void Friction_is_found_within_its_errors()
    {
        var fit = TrackFit.Of(Make(4, 30, 0.005, 0.004, 0), Options(0.005, 0.004));
        Assert.True(fit.IsConverged, fit.Reason);
        Assert.Empty(fit.Unseparated);
        Assert.Equal(4 * 60 + 4 * 6 - 3 - 4 * 6, fit.DegreesOfFreedom, 1e-9);
        Assert.InRange(fit.ReducedChiSquare, 0.75, 1.25);
        Assert.InRange(fit.Probability, 0.001, 0.999);
        // The time of a fit is evaluations, and the machine.
        Assert.InRange(fit.Evaluations, 3, 20);
        foreach (var p in Law)
        {
            Assert.InRange(Math.Abs(fit[p].Value - True(p)), 0, 3.5 * fit[p].StandardError);
            Assert.InRange(fit[p].StandardError, 1e-4 * True(p), 0.5 * True(p));
        }
        Assert.All(fit.ResidualsByDistance, band => Assert.InRange(band.RootMeanSquare, 0.4, 1.7));
    }

    [Fact]
    public void Intervals_of_fifty_fits_hold_the_truth_about_as_often_as_they_say()
    {
        // One shot and few stations, coarse: 50 x 3 intervals of 95 %; the binomial's own band from 50 independent ones is wide.
        var held = 0;
        var pull = new double[3];
        for (var k = 0; k < 50; k++)
        {
            var fit = TrackFit.Of(Make(1, 16, 0.005, 0.004, 1 + k), Options(0.005, 0.004) with { Simulator = Start with { Tolerance = 1e-4, Friction = Truth } });
            for (var i = 0; i < 3; i++)
            {
                held += Math.Abs(fit[Law[i]].Value - True(Law[i])) <= 1.96 * fit[Law[i]].StandardError ? 1 : 0;
                pull[i] += (fit[Law[i]].Value - True(Law[i])) / fit[Law[i]].StandardError / 50;
            }
        }
        Assert.InRange(held, 130, 150);
        // A mean of 50 pulls scatters by 0.14.
        Assert.All(pull, p => Assert.InRange(p, -0.6, 0.6));
    }

    [Fact]
    public void Streams_of_replications_are_independent()
    {
        // Mean over 1000 replications of each of the first 200 draws: 5 standard deviations are one in a million each.
        var sums = new double[200];
        for (var k = 0; k < 1000; k++)
        {
            var normal = Normals(k);
            for (var j = 0; j < sums.Length; j++)
            {
                sums[j] += normal();
            }
        }
        Assert.All(sums, s => Assert.InRange(s / Math.Sqrt(1000), -5, 5));
    }

    private const double Far = 18, Fast = 8, Jitter = 0.05;

    // Without friction t = y/v: the bending of a single number that is known in closed form.
    private static Estimate SpeedFromTimes(int count, Prior? prior)
    {
        var ball = new Ball { Mass = 7, Radius = 0.1085, Inertia = new(0.033, 0.033, 0.033) };
        var lane = Lane.Unbounded(FrictionMap.Zones((0, 0)));
        FitShot[] shots = [.. Enumerable.Range(0, count).Select(i => new FitShot(TrackedShot.Of($"{i}", [new() { Distance = Far, Time = Far / Fast }]), ball, lane, new() { Speed = 7.5, SpinRate = 30, AxisInBall = Vector3D.UnitX }))];
        return TrackFit.Of(shots, new()
        {
            Parameters = [new(FitParameter.Speed, prior) { IsPerShot = false }],
            Noise = new() { Time = Jitter },
            Loss = RobustLoss.LeastSquares,
            Simulator = new() { AirDrag = false },
            Precision = 1e-6,
        })[FitParameter.Speed];
    }

    /// <summary>The speed found from times with noise σ is too high by v σ²/t² on average; with n shots of one speed, by an n-th of that.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void What_the_bending_of_the_model_does_to_a_speed_is_taken_off(int count)
    {
        var e = SpeedFromTimes(count, prior: null);
        var relative = Jitter * Fast / Far;
        Assert.Equal(Fast * relative / Math.Sqrt(count), e.StandardError, 1e-6);
        // The differences reach over a standard error: an error of the square of what is relative.
        Assert.Equal(Fast * relative * relative / count, e.Bias, 2 * relative * relative * e.Bias);
        Assert.Equal(Fast, e.Value + e.Bias, 1e-6);
    }

    /// <summary>
    /// A speed that scatters about its prior's middle as the prior says, and a time with noise: the mean error of the least misfit, over all draws, is what is taken off. Each draw comes with all four signs of its two numbers, so that what is linear
    /// in them cancels.
    /// </summary>
    [Fact]
    public void With_a_prior_it_is_the_bias_over_truths_that_scatter_with_it()
    {
        var scatter = Fast * Jitter * Fast / Far;
        double Least(double time)
        {
            // Newton's method on the misfit, whose second derivative is positive near its minimum.
            var v = Fast;
            for (var i = 0; i < 12; i++)
            {
                double off = (Far / v - time) / (Jitter * Jitter), slope = -Far / (v * v);
                v -= (off * slope + (v - Fast) / (scatter * scatter)) / (slope * slope / (Jitter * Jitter) + 2 * off * Far / (v * v * v) + 1 / (scatter * scatter));
            }
            return v;
        }
        var normal = Normals(0);
        var (mean, square) = (0.0, 0.0);
        const int Draws = 20_000;
        for (var k = 0; k < Draws; k++)
        {
            double z = scatter * normal(), noise = Jitter * normal(), error = 0;
            foreach (var (a, b) in ((int, int)[])[(1, 1), (1, -1), (-1, 1), (-1, -1)])
            {
                error += 0.25 * (Least(Far / (Fast + a * z) + b * noise) - Fast - a * z);
            }
            mean += error / Draws;
            square += error * error / Draws;
        }
        var e = SpeedFromTimes(1, new(scatter, Fast));
        Assert.True(Math.Abs(e.Bias - mean) <= 4 * Math.Sqrt(square / Draws) + 4 * scatter * scatter / (Fast * Fast) * Math.Abs(mean), $"{e.Bias}; over draws {mean} ± {Math.Sqrt(square / Draws)}");
        // With the prior as wide as the time's own error: -3/4 v σ²/t², of the other sign than without it.
        Assert.Equal(-0.75 * scatter * scatter / Fast, e.Bias, 0.01 * Math.Abs(e.Bias));
    }

    [Fact]
    public void Without_the_correction_the_values_are_those_of_the_least_misfit()
    {
        var shots = Make(2, 16, 0.005, 0.004, 0);
        var (with, without) = (TrackFit.Of(shots, Options(0.005, 0.004)), TrackFit.Of(shots, Options(0.005, 0.004) with { CorrectBias = false }));
        Assert.All(without.Estimates, e => Assert.Equal(0, e.Bias));
        Assert.Contains(with.Estimates, e => e.Bias != 0);
        Assert.All(with.Estimates.Zip(without.Estimates), e => Assert.Equal(e.Second.Value, e.First.Value + e.First.Bias, 1e-12 * Math.Abs(e.Second.Value) + 1e-15));
        Assert.Equal(without.ChiSquare, with.ChiSquare);
        Assert.Equal(with[FitParameter.Dry].Value, with.Shots[0].Options.Friction.Dry);
    }

    [Fact]
    public void A_plain_throw_shows_what_the_throw_with_derivatives_shows()
    {
        TrackedPoint Seen(double? distance, double time) => new() { Distance = distance, Time = time, X = 0.1, Speed = 7, Heading = 0.01, SpinRate = 35, AxisRotation = 1, AxisTilt = 0.2 };
        foreach (var track in (TrackedShot[])[TrackedShot.Of("by place", [Seen(1, 0.1), Seen(9, 1.1), Seen(18, 2.3)]), TrackedShot.Of("by time", [Seen(null, 0.2), Seen(null, 1.3), Seen(null, 2.1)])])
        {
            FitShot[] shots = [new(track, Drilled, Oiled, Meant)];
            var blocks = new ShotBlocks(shots, [new(FitParameter.Dry), new(FitParameter.ClockOffset)], new(), Start);
            double[] shared = [0.2], local = [0.05];
            var rows = new BlockRows(blocks.RowCount(0), 1, 1);
            Assert.True(blocks.Evaluate(0, shared, local, rows), blocks.ToString());
            var seen = blocks.Observations[0];
            var plain = PlainPath.Of(shots[0], Start, blocks.ValuesAt(0, shared, local), seen)!;
            for (var k = 0; k < seen.Length; k++)
            {
                var dual = seen[k].Value + seen[k].Deviation * rows.Residuals[k];
                Assert.True(Math.Abs(seen[k].Off(plain[k], dual)) < 2e-4, $"{track.Id}, {seen[k].Quantity}: {plain[k]} and {dual}");
            }
            Assert.Null(PlainPath.Of(shots[0], Start, blocks.ValuesAt(0, shared, [-5]), seen.Select(o => o with { Point = o.Point with { Distance = o.Point.Distance + 5 } }).ToArray()));
        }
    }

    [Fact]
    public void A_finer_tolerance_leaves_the_errors_as_they_are()
    {
        var shots = Make(2, 16, 0.005, 0.004, 0);
        var (usual, fine) = (TrackFit.Of(shots, Options(0.005, 0.004)), TrackFit.Of(shots, Options(0.005, 0.004) with { Simulator = Start with { Tolerance = 1e-7 } }));
        Assert.All(Law, p => Assert.Equal(usual[p].StandardError, fine[p].StandardError, 1e-3 * usual[p].StandardError));
        Assert.Equal(1e-7, fine.Shots[0].Options.Tolerance);
    }

    [Fact]
    public void Outliers_move_the_estimates_by_less_than_a_standard_error()
    {
        var clean = TrackFit.Of(Make(3, 30, 0.005, 0.004, 0), Options(0.005, 0.004, RobustLoss.Cauchy));
        var random = new Random(SyntheticTracks.Seed + 1);
        FitShot[] moved =
        [
            .. Make(3, 30, 0.005, 0.004, 0).Select(s => s with
            {
                Track = TrackedShot.Of(s.Track.Id, s.Track.Points.Select((p, i) => i % 10 == 4 ? p with { X = p.X + (random.Next(2) == 0 ? -0.3 : 0.3) } : p)),
            }),
        ];
        var robust = TrackFit.Of(moved, Options(0.005, 0.004, RobustLoss.Cauchy));
        foreach (var p in Law)
        {
            Assert.InRange(Math.Abs(robust[p].Value - clean[p].Value), 0, clean[p].StandardError);
        }
        Assert.Equal(9, robust.Residuals.Count(r => r.Quantity == FitQuantity.Lateral && r.Weight < 0.05));
        Assert.Equal(9, robust.Notes.Count(n => n.Note.Issue == QualityIssue.Outlier));
    }

    // A hook bends, most of all where a track ends: that alone makes no outlier, and a point that is one is seen wherever it stands.
    [Theory]
    [InlineData(0.005)]
    [InlineData(0.015)]
    public void The_bend_of_a_track_makes_no_outlier(double noise)
    {
        var tracks = Enumerable.Range(0, 5).SelectMany(k => Make(18, 30, noise, 0.004, k)).Select(s => s.Track).ToArray();
        static IEnumerable<QualityNote> Outliers(TrackedShot track) => track.Notes.Where(n => n.Issue == QualityIssue.Outlier);
        Assert.Empty(tracks.SelectMany(Outliers));
        foreach (var at in new[] { 0, 1, 12, 28, 29 })
        {
            var moved = tracks.Select(t => TrackedShot.Of(t.Id, t.Points.Select((p, i) => i == at ? p with { X = p.X - 60 * noise, Line = 100 } : p))).ToArray();
            Assert.All(moved, t => Assert.Equal(100, Assert.Single(Outliers(t)).Line));
        }
    }

    [Fact]
    public void What_acts_through_one_number_is_not_told_apart()
    {
        var shots = Make(3, 20, 0.005, 0.004, 0);
        var fit = TrackFit.Of(shots, Options(0.005, 0.004) with { Parameters = [new(FitParameter.FilmScale), new(FitParameter.Pores), .. FitOptions.Release(Usual)], Simulator = Start with { Friction = Truth } });
        var pair = Assert.Single(fit.Unseparated, c => c.Others.Count == 1);
        Assert.Equal((FitParameter.FilmScale, FitParameter.Pores), (pair.Asked, pair.Others[0]));
        Assert.InRange(pair.Correlation, -1, -0.9999);
        Assert.False(fit[FitParameter.FilmScale].IsDetermined);
        Assert.False(fit[FitParameter.Pores].IsDetermined);
        Assert.Equal(double.PositiveInfinity, fit[FitParameter.Pores].StandardError);
    }

    [Fact]
    public void Viscosity_alone_only_stands_in_for_the_law_s_other_numbers()
    {
        var shots = Make(3, 20, 0.005, 0.004, 0);
        var fit = TrackFit.Of(shots, Options(0.005, 0.004) with { Parameters = [new(FitParameter.Viscosity), .. FitOptions.Release(Usual)], Simulator = Start with { Friction = Truth } });
        var one = Assert.Single(fit.Unseparated);
        Assert.Equal(FitParameter.Viscosity, one.Asked);
        Assert.Equal(Law, one.Others);
        Assert.InRange(one.Correlation, Separation.Limit, 1);
        Assert.False(fit[FitParameter.Viscosity].IsDetermined);
    }

    /// <summary>
    /// The lane simulation of a teaching page after C. Frohlich, Am. J. Phys. 72 (2004) 1170, second hand: 7 kg, R 10.85 cm, I 0.033 kg m², 8 m/s, 30 rad/s; friction 0.12, 0.08, 0.04 to 12.19 m and 0.20 from there; hooks 68, 55, 37 cm,
    /// slides 9, 13.7, 15 m. It names no axis rotation; 21.3 degrees, fitted beforehand to its slides and hooks, is given. The hooks are the data; friction comes out as 0.118, 0.078, 0.039, and the slides that go with it are 9.2, 12.9 and 15.3 m, the middle one 6 % short. Its impact angles are not used: with one axis rotation for all three they do not agree with its hooks
    /// (chi-square 24 on 2 degrees of freedom at their printed precision).
    /// </summary>
    [Fact]
    public void A_published_simulation_gives_back_its_friction()
    {
        var ball = new Ball { Mass = 7, Radius = 0.1085, Inertia = new(0.033, 0.033, 0.033) };
        (double Mu, double Hook)[] table = [(0.12, 0.68), (0.08, 0.55), (0.04, 0.37)];
        var shots = table.Select((row, i) =>
        {
            // Aimed so that it ends in the middle; the bowler's right is plus, and the hook goes to the left.
            var lane = Lane.Unbounded(FrictionMap.Zones((0, 0.10), (12.19, 0.20)));
            TrackedPoint[] points = [new() { Distance = 18.288, X = -row.Hook }];
            return new FitShot(TrackedShot.Of($"{i}", points), ball, lane, new() { Speed = 8, SpinRate = 30, AxisRotation = 21.3 * Degree, AxisInBall = Vector3D.UnitX, Board = 20 });
        }).ToArray();
        var fit = TrackFit.Of(shots, new()
        {
            Parameters = [new(FitParameter.Floor) { IsPerShot = true }],
            Loss = RobustLoss.LeastSquares,
            Simulator = new() { AirDrag = false, Tolerance = 1e-8, MaxTime = 10 },
        });
        Assert.True(fit.IsConverged, fit.Reason);
        for (var i = 0; i < table.Length; i++)
        {
            // Two decimals are printed.
            Assert.True(Math.Abs(fit[FitParameter.Floor, i].Value - table[i].Mu) <= 0.005, $"{table[i].Mu}: {fit[FitParameter.Floor, i]}");
        }
    }

    [Fact]
    public void A_fit_that_cannot_start_says_why()
    {
        var shot = Make(1, 10, 0.005, 0.004, 0)[0];
        var wide = shot with { Release = shot.Release with { Board = 3, LaunchAngle = 12 * Degree }, Track = TrackedShot.Of("1", shot.Track.Points.Where(p => p.Distance > 10)) };
        var e = Assert.Throws<ArgumentException>(() => TrackFit.Of([wide], new() { Parameters = [new(FitParameter.Dry)] }));
        Assert.Contains("Gutter", e.Message);
        Assert.Contains("cannot start", e.Message);
    }
}
