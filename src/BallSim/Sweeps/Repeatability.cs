using System.Globalization;
using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using MathNet.Numerics.Distributions;

namespace BallSim.Sweeps;

/// <summary>What becomes of one line when the bowler's releases scatter about it: where and how the ball enters, and how often in the pocket.</summary>
/// <remarks>The throws are independent draws from a normal distribution with the scatter's deviations and correlations; a real bowler's outliers are more frequent (assumed).</remarks>
public sealed record Repeatability
{
    private Repeatability(Outcome?[] outcomes, RepeatabilityOptions options)
    {
        Outcomes = outcomes;
        Options = options;
        EntryBoard = Read(Metric.EntryBoard);
        EntryAngle = Read(Metric.EntryAngle);
        InPocket = new(outcomes.Count(o => o is { } thrown && options.Window.Holds(thrown)), outcomes.Length, options.Confidence);
        AtPins = new(outcomes.Count(o => o is { ReachedPins: true }), outcomes.Length, options.Confidence);
    }

    /// <summary>What was asked.</summary>
    public RepeatabilityOptions Options { get; }

    /// <summary>Every throw's outcome; null for a draw that is no release, such as a board off the lane. It counts as a miss.</summary>
    public IReadOnlyList<Outcome?> Outcomes { get; }

    /// <summary>Entry board of the throws that reached the pins.</summary>
    public Distribution EntryBoard { get; }

    /// <summary>Entry angle of the throws that reached the pins, degrees.</summary>
    public Distribution EntryAngle { get; }

    /// <summary>How many hit the window, of all throws.</summary>
    public Share InPocket { get; }

    /// <summary>How many reached the pins, of all throws.</summary>
    public Share AtPins { get; }

    /// <summary>Throws a line many times.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="release">The release aimed at.</param>
    /// <param name="scatter">The bowler's scatter.</param>
    /// <param name="options">How often, and what counts as the pocket; null for the default.</param>
    /// <param name="cancellation">Stops between two chunks.</param>
    public static Repeatability Of(Ball ball, Lane lane, Release release, Scatter scatter, RepeatabilityOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(lane);
        ArgumentNullException.ThrowIfNull(release);
        ArgumentNullException.ThrowIfNull(scatter);
        options ??= new();
        release.StartOn(lane, ball);
        return new(Thrown([new(ball, lane, release)], scatter, options, cancellation), options);
    }

    /// <summary>The distribution of another metric.</summary>
    public Distribution Read(Metric metric)
    {
        ArgumentNullException.ThrowIfNull(metric);
        return Distribution.Of(Outcomes.Select(o => o is { } thrown ? metric.Value(thrown) : double.NaN));
    }

    /// <summary>Entry and pocket in the units of the trade.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Outcomes.Count} throws: entry board {EntryBoard}, entry angle {EntryAngle}°, in the pocket {InPocket}");

    /// <summary>Scattered throws about several lines, one after another; each line meets the same deviates, so that lines can be told apart by less than the scatter.</summary>
    internal static Outcome?[] Thrown(Throw[] lines, Scatter scatter, RepeatabilityOptions options, CancellationToken cancellation)
    {
        var throws = new Throw[lines.Length * options.Throws];
        var failures = new string?[throws.Length];
        for (var i = 0; i < throws.Length; i++)
        {
            var (line, row) = (lines[i / options.Throws], i % options.Throws);
            (throws[i], failures[i]) = Sweep.Built(_ => line with { Release = scatter.Of(line.Release, Deviates(options.Seed, row)) }, []);
        }
        return Sweep.Thrown(throws, failures, options.Ensemble, cancellation);
    }

    private static double[] Deviates(int seed, int row)
    {
        var z = new double[ScatterCorrelations.Count];
        for (var k = 0; k < z.Length; k++)
        {
            z[k] = Normal.InvCDF(0, 1, CounterRandom.Uniform(seed, row, k));
        }
        return z;
    }
}
