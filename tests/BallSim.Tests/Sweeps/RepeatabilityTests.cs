using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Sweeps;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Statistics;
using Xunit;
using static BallSim.Units;

namespace BallSim.Tests.Sweeps;

/// <summary>What scatter does, against what is known in closed form.</summary>
public class RepeatabilityTests
{
    private static readonly double[,] Correlated = With((0, 3, 0.6), (1, 2, -0.7), (4, 5, 0.4));

    private static double[,] With(params (int I, int J, double R)[] pairs)
    {
        var m = new double[6, 6];
        for (var i = 0; i < 6; i++)
        {
            m[i, i] = 1;
        }
        foreach (var (i, j, r) in pairs)
        {
            m[i, j] = m[j, i] = r;
        }
        return m;
    }

    [Fact]
    public void Scattered_releases_have_the_deviations_and_correlations_asked_for()
    {
        var scatter = new Scatter { Correlations = new(Correlated) };
        var options = new RepeatabilityOptions { Throws = 20_000 };
        var releases = Enumerable.Range(0, options.Throws).Select(i => scatter.Of(SweepTests.Line,
            [.. Enumerable.Range(0, 6).Select(k => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, CounterRandom.Uniform(7, i, k)))])).ToArray();
        double[][] columns = [[.. releases.Select(r => r.Speed)], [.. releases.Select(r => r.LaunchAngle)], [.. releases.Select(r => r.Board)], [.. releases.Select(r => r.SpinRate)],
            [.. releases.Select(r => r.AxisRotation)], [.. releases.Select(r => r.AxisTilt)]];
        double[] wanted = [scatter.Speed, scatter.LaunchAngle, scatter.Board, scatter.SpinRate, scatter.AxisRotation, scatter.AxisTilt];
        for (var i = 0; i < 6; i++)
        {
            // Five standard errors: of a deviation 1/√2n of it, of a correlation at most 1/√n.
            Assert.Equal(wanted[i], columns[i].StandardDeviation(), 5 * wanted[i] / Math.Sqrt(2.0 * options.Throws));
            for (var j = 0; j < i; j++)
            {
                Assert.Equal(Correlated[i, j], Correlation.Pearson(columns[i], columns[j]), 5 / Math.Sqrt(options.Throws));
            }
        }
    }

    [Fact]
    public void A_matrix_that_no_numbers_can_have_is_refused()
    {
        Assert.Contains("eigenvalue", Assert.Throws<ArgumentException>(() => new ScatterCorrelations(With((0, 1, 0.9), (1, 2, 0.9), (0, 2, -0.9)))).Message, StringComparison.Ordinal);
        Assert.Contains("6 by 6", Assert.Throws<ArgumentException>(() => new ScatterCorrelations(new double[5, 6])).Message, StringComparison.Ordinal);
        var skew = With();
        skew[0, 1] = 0.5;
        Assert.Contains("must be equal", Assert.Throws<ArgumentException>(() => new ScatterCorrelations(skew)).Message, StringComparison.Ordinal);
        Assert.Equal(new ScatterCorrelations(Correlated), new ScatterCorrelations(Correlated));
        Assert.NotEqual(new ScatterCorrelations(Correlated), new ScatterCorrelations(With()));
    }

    // A scatter so small that the shot answers in a straight line: then the variance of the entry is gᵀ Σ g with the gradient g by finite differences of Simulator, which is no part of the sampling.
    [Fact]
    public void The_spread_of_the_entry_is_that_of_the_linearised_map()
    {
        var scatter = new Scatter { Speed = 0.004, LaunchAngle = 0.01 * Degree, Board = 0.1, SpinRate = 0.05, AxisRotation = 0.1 * Degree, AxisTilt = 0.05 * Degree, Correlations = new(Correlated) };
        var options = new SimulatorOptions { Tolerance = 1e-8 };
        Func<double, Release>[] moves =
        [
            h => SweepTests.Line with { Speed = SweepTests.Line.Speed + h * scatter.Speed },
            h => SweepTests.Line with { LaunchAngle = SweepTests.Line.LaunchAngle + h * scatter.LaunchAngle },
            h => SweepTests.Line with { Board = SweepTests.Line.Board + h * scatter.Board },
            h => SweepTests.Line with { SpinRate = SweepTests.Line.SpinRate + h * scatter.SpinRate },
            h => SweepTests.Line with { AxisRotation = SweepTests.Line.AxisRotation + h * scatter.AxisRotation },
            h => SweepTests.Line with { AxisTilt = SweepTests.Line.AxisTilt + h * scatter.AxisTilt },
        ];
        double EntryBoard(Release r) => Simulator.Throw(SweepTests.Drilled, SweepTests.House, r, options).Entry.Board;
        var gradient = Vector<double>.Build.DenseOfEnumerable(moves.Select(m => (EntryBoard(m(1)) - EntryBoard(m(-1))) / 2));
        var expected = Math.Sqrt(gradient * Matrix<double>.Build.DenseOfArray(Correlated) * gradient);

        const int throws = 1500;
        var found = Repeatability.Of(SweepTests.Drilled, SweepTests.House, SweepTests.Line, scatter, new() { Throws = throws, Ensemble = new() { Shot = new() { Tolerance = 1e-6 } } });
        // Four standard errors of a deviation; and what the correlations do must be more than that, or the test would not see them.
        var error = 4 / Math.Sqrt(2.0 * throws);
        Assert.InRange(found.EntryBoard.Deviation / expected, 1 - error, 1 + error);
        Assert.True(Math.Abs(gradient.L2Norm() / expected - 1) > 2 * error, $"{gradient.L2Norm() / expected}");
        Assert.Equal(EntryBoard(SweepTests.Line), found.EntryBoard.Mean, 4 * expected / Math.Sqrt(throws));
    }

    // Wilson 1927: the interval covers at its nominal rate on the average over the shares.
    [Fact]
    public void The_interval_of_a_share_covers_at_its_nominal_rate()
    {
        const int replications = 4000, count = 80;
        foreach (var confidence in new[] { 0.8, 0.95 })
        {
            var covered = 0;
            for (var r = 0; r < replications; r++)
            {
                var truth = 0.05 + 0.9 * CounterRandom.Uniform(11, r, 0);
                var hits = Enumerable.Range(0, count).Count(k => CounterRandom.Uniform(11, r, 1, k) < truth);
                var share = new Share(hits, count, confidence);
                covered += truth >= share.Low && truth <= share.High ? 1 : 0;
            }
            // Four standard errors of a share of 4000.
            Assert.Equal(confidence, covered / (double)replications, 4 * Math.Sqrt(confidence * (1 - confidence) / replications));
        }
    }

    // The interval of the pocket share of forty throws, fifty times over, against the share that 2500 others have.
    [Fact]
    public void The_interval_of_throws_covers_the_share_of_very_many()
    {
        var window = new PocketWindow { LeastAngle = 3 * Degree, GreatestAngle = 7 * Degree };
        var thrown = Repeatability.Of(SweepTests.Drilled, SweepTests.House, SweepTests.Line, new() { LaunchAngle = 0.2 * Degree }, new() { Throws = 4500, Window = window });
        var hits = thrown.Outcomes.Select(o => o is { } outcome && window.Holds(outcome)).ToArray();
        Assert.Equal(hits.Count(h => h), thrown.InPocket.Hits);
        var truth = hits[2000..].Count(h => h) / 2500.0;
        Assert.InRange(truth, 0.05, 0.95);
        var covered = hits[..2000].Chunk(40).Select(forty => new Share(forty.Count(h => h), 40, 0.9)).Count(share => truth >= share.Low && truth <= share.High);
        // Nine tenths of fifty: three standard errors are six.
        Assert.InRange(covered, 39, 50);
    }

    [Fact]
    public void A_share_knows_its_ends()
    {
        // Wilson's interval worked by hand for 8 of 10 at 95 % (z = 1.959964): 0.4902 to 0.9433.
        var share = new Share(8, 10);
        Assert.Equal(0.4902, share.Low, 5e-5);
        Assert.Equal(0.9433, share.High, 5e-5);
        Assert.Equal(0, new Share(0, 10).Low);
        Assert.Equal(1, new Share(10, 10).High);
        Assert.Equal("80.0 % (49.0 to 94.3 %)", share.ToString());
    }

    [Fact]
    public void The_room_to_miss_is_that_of_a_known_window()
    {
        // A slanted band |board + 2 angle in degrees - 0.3| < 0.8: edges at -0.5 and 1.1 boards, half of that in degrees, and its area inside the search in closed form: width 1.6 along the boards at
        // every angle of ± 2 degrees, as long as it lies within ± 6 boards, which it does.
        var room = MissRoom.Of(errors => [.. errors.Select(e => Math.Abs(e.Board + 2 * e.Angle / Degree - 0.3) < 0.8)]);
        Assert.Equal(0.5, room.BoardsDown, 1e-4);
        Assert.Equal(1.1, room.BoardsUp, 1e-4);
        Assert.Equal(0.25 * Degree, room.AngleDown, 1e-6);
        Assert.Equal(0.55 * Degree, room.AngleUp, 1e-6);
        Assert.Equal(1.6 * 4 * Degree, room.Together, 0.02 * 1.6 * 4 * Degree);
        Assert.True(double.IsNaN(MissRoom.Of(errors => new bool[errors.Count]).BoardsUp));
    }

    [Fact]
    public void The_room_of_a_line_ends_where_the_throw_misses()
    {
        var window = new PocketWindow { LeastAngle = 3 * Degree, GreatestAngle = 7 * Degree };
        // At the coarse default the error of the path, 0.1 mm, is four thousandths of a board: more than what is asked here.
        var options = new EnsembleOptions { Shot = new() { Tolerance = 1e-6 } };
        var room = MissRoom.Of(SweepTests.Drilled, SweepTests.House, SweepTests.Line, window, options);
        Assert.InRange(room.BoardsUp, 0.01, 5);
        bool Hits(double boards) => window.Holds(Ensemble.Throw([new(SweepTests.Drilled, SweepTests.House, SweepTests.Line with { Board = SweepTests.Line.Board + boards })], options)[0]);
        Assert.True(Hits(room.BoardsUp - 0.001));
        Assert.False(Hits(room.BoardsUp + 0.001));
        Assert.True(Hits(-room.BoardsDown + 0.001));
        Assert.False(Hits(-room.BoardsDown - 0.001));
    }
}
