using BallSim.Friction;
using BallSim.Shots;
using MathNet.Numerics.Distributions;

namespace BallSim.Fitting;

/// <summary>
/// Does the ball do what it was designed to do? For every tracked shot the design is thrown with the release as fitted and the friction that the design counted on, and held against the fitted path; so a bowler's scatter is not taken for the
/// ball's.
/// </summary>
/// <remarks>
/// <para>The rule. For each metric the interval of the mean difference is mean ± t √(s²/n + u²): s the standard deviation from shot to shot, n the shots, u the standard error from what all shots have in common, t Student's for n - 1 degrees of
/// freedom at 1 - 0.05/m, m the number of metrics (Bonferroni), so that all intervals together hold in 95 %. Wholly within the tolerance: as designed. Wholly outside it: differs. Otherwise, and from fewer than two shots: cannot tell. The ball
/// differs if any metric does; it is as designed if every metric is; otherwise one cannot tell.</para>
/// <para>A metric takes both shots to the pins. Where one of a pair does not come to the pins, metrics are those of the other pairs, and these may be the ones that differ least: then the ball is not as designed, and one cannot tell unless a
/// metric differs, or, from two pairs on, not one of the designed shots comes to the pins that the measured ones reach, or the other way round: then it differs in where its shots end.</para>
/// <para>A number that the fit could not determine adds nothing to u: read <see cref="FitResult.Unseparated"/> first. The friction that the design counted on is taken as exact: what is not known of it belongs into the tolerances.</para>
/// </remarks>
public sealed record Verdict
{
    private const double Confidence = 0.95;

    // Slopes of the metrics by the shared numbers, over so many standard errors to either side.
    private const double Reach = 0.3;

    private readonly bool endsDiffer;

    private Verdict(IReadOnlyList<MetricVerdict> metrics, IReadOnlyList<ShotEnds> missed, bool endsDiffer) => (Metrics, Missed, this.endsDiffer) = (metrics, missed, endsDiffer);

    /// <summary>Metric by metric; those that no two shots have are told as cannot tell.</summary>
    public IReadOnlyList<MetricVerdict> Metrics { get; }

    /// <summary>Shots that did not come to the pins, as designed or as measured or both: metrics are without them.</summary>
    public IReadOnlyList<ShotEnds> Missed { get; }

    /// <summary>Of the ball as a whole.</summary>
    public Finding Finding => endsDiffer || Metrics.Any(m => m.Finding == Finding.Differs) ? Finding.Differs
        : Metrics.All(m => m.Finding == Finding.AsDesigned) && !Missed.Any(m => m.EndsOtherwise) ? Finding.AsDesigned : Finding.CannotTell;

    /// <summary>The finding as a sentence.</summary>
    public string Sentence
    {
        get
        {
            string[] Found(Finding finding) => [.. Metrics.Where(m => m.Finding == finding).Select(m => FitText.Of(m.Metric).Name)];
            var open = Found(Finding.CannotTell);
            return Finding switch
            {
                Finding.AsDesigned => "as designed",
                Finding.Differs => $"differs in {string.Join(", ", [.. endsDiffer ? (string[])["where its shots end"] : [], .. Found(Finding.Differs)])}",
                _ => "cannot tell from these shots: " + (open.Length > 0 ? $"{string.Join(", ", open)} left open" : "some end otherwise than designed, and the others alone are no fair sample"),
            };
        }
    }

    /// <summary>What became of the shots that did not come to the pins, as sentences without the last stop; empty where all came.</summary>
    public string MissedSentence
    {
        get
        {
            string Told(IEnumerable<ShotEnds> shots, string words, Func<ShotEnds, StopReason> reason)
            {
                ShotEnds[] all = [.. shots];
                return all.Length == 0 ? "" : $"{(all.Length == 1 ? "shot" : "shots")} {string.Join(", ", all.Select(s => $"{s.ShotId} ({reason(s)})"))} {words}";
            }
            return string.Join("; ", ((string[])
            [
                Told(Missed.Where(m => m.EndsOtherwise && m.IsMeasuredAtPins), "came to the pins, and would not have as designed", m => m.Designed),
                Told(Missed.Where(m => m.EndsOtherwise && !m.IsMeasuredAtPins), "did not come to the pins, and would have as designed", m => m.Measured),
                Told(Missed.Where(m => !m.EndsOtherwise), "came to the pins neither way", m => m.Designed),
            ]).Where(t => t.Length > 0));
        }
    }

    /// <summary>Holds fitted shots against a design.</summary>
    /// <param name="fit">The fit of the tracked shots.</param>
    /// <param name="design">The shots as designed, in the same order: ball and lane as they were meant to be; the releases are taken from the fit.</param>
    /// <param name="options">How the design was computed, the friction it counted on among it.</param>
    /// <param name="tolerances">What counts as the same; null: <see cref="MetricTolerance.Usual"/>.</param>
    /// <exception cref="ArgumentException">Fit and design have different numbers of shots, or a tolerance is not above zero.</exception>
    public static Verdict Of(FitResult fit, IReadOnlyList<FitShot> design, SimulatorOptions options, IReadOnlyList<MetricTolerance>? tolerances = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(options);
        tolerances ??= MetricTolerance.Usual;
        Check.That(fit.Shots.Count == design.Count, $"the fit has {fit.Shots.Count} shots and the design {design.Count}", nameof(design));
        Check.That(tolerances.Count > 0 && tolerances.All(t => t.Tolerance > 0), "tolerances are above zero, and there is one at least", nameof(tolerances));
        Shot[] measured = [.. fit.Shots.Select(s => s.Throw())];
        Shot[] designed = [.. design.Zip(fit.Shots, (d, f) => Simulator.Throw(d.Ball, d.Lane, f.Release, options))];
        var moved = Moved(fit);
        var t = design.Count > 1 ? StudentT.InvCDF(0, 1, design.Count - 1, 1 - (1 - Confidence) / 2 / tolerances.Count) : double.PositiveInfinity;
        ShotEnds[] ends = [.. measured.Zip(designed, fit.Shots).Select(s => new ShotEnds(s.Third.Track.Id, s.Second.StopReason, s.First.StopReason))];
        ShotEnds[] missed = [.. ends.Where(e => !e.IsDesignedAtPins || !e.IsMeasuredAtPins)];
        // All of two or more, and all to the same side.
        var endsDiffer = ends.Length > 1 && missed.Length == ends.Length && missed.All(e => e.EndsOtherwise && e.IsMeasuredAtPins == missed[0].IsMeasuredAtPins);
        return new([.. tolerances.Select(tolerance => Judged(fit, tolerance, measured, designed, moved, t))], missed, endsDiffer);
    }

    /// <summary>The finding, and what became of shots that did not come to the pins.</summary>
    public override string ToString() => Sentence + (Missed.Count > 0 ? "; " + MissedSentence : "");

    private static MetricVerdict Judged(FitResult fit, MetricTolerance tolerance, Shot[] measured, Shot[] designed, (int Parameter, double Step, Shot[] Up, Shot[] Down)[] moved, double t)
    {
        double Of(Shot shot) => MetricTolerance.Of(tolerance.Metric, shot);
        int[] both = [.. Enumerable.Range(0, measured.Length).Where(i => double.IsFinite(Of(measured[i])) && double.IsFinite(Of(designed[i])))];
        double[] differences = [.. both.Select(i => Of(measured[i]) - Of(designed[i]))];
        var mean = both.Length > 0 ? differences.Average() : double.NaN;
        var scatter = both.Length > 1 ? Math.Sqrt(differences.Sum(d => (d - mean) * (d - mean)) / (both.Length - 1)) : double.NaN;
        double[] slopes = [.. moved.Select(m => both.Select(i => (Of(m.Up[i]) - Of(m.Down[i])) / (2 * m.Step)).Where(double.IsFinite).DefaultIfEmpty(0).Average())];
        double common = 0;
        for (var i = 0; i < moved.Length; i++)
        {
            for (var j = 0; j < moved.Length; j++)
            {
                common += slopes[i] * fit.Covariance(moved[i].Parameter, moved[j].Parameter) * slopes[j];
            }
        }
        var half = both.Length > 1 ? t * Math.Sqrt(scatter * scatter / both.Length + common) : double.PositiveInfinity;
        return new()
        {
            Metric = tolerance.Metric,
            Designed = both.Length > 0 ? both.Average(i => Of(designed[i])) : double.NaN,
            Measured = both.Length > 0 ? both.Average(i => Of(measured[i])) : double.NaN,
            Low = double.IsNaN(mean) ? double.NegativeInfinity : mean - half,
            High = double.IsNaN(mean) ? double.PositiveInfinity : mean + half,
            ShotToShot = scatter,
            FromFit = Math.Sqrt(Math.Max(0, common)),
            Tolerance = tolerance.Tolerance,
            Shots = both.Length,
        };
    }

    // All shots with one shared number moved to either side, the releases held.
    private static (int Parameter, double Step, Shot[] Up, Shot[] Down)[] Moved(FitResult fit)
    {
        List<(int, double, Shot[], Shot[])> moved = [];
        for (var i = 0; i < fit.SharedCount; i++)
        {
            var e = fit.Estimates[i];
            if (!e.IsDetermined || !(e.StandardError > 0))
            {
                continue;
            }
            var (low, high) = ParameterFacts.Range(e.Parameter);
            var step = Math.Min(Reach * e.StandardError, 0.5 * Math.Min(e.Value - low, high - e.Value));
            if (step > 0)
            {
                moved.Add((i, step, [.. fit.Shots.Select(s => With(s, e.Parameter, e.Value + step).Throw())], [.. fit.Shots.Select(s => With(s, e.Parameter, e.Value - step).Throw())]));
            }
        }
        return [.. moved];
    }

    private static FittedShot With(FittedShot s, FitParameter parameter, double value)
    {
        var shot = new FitShot(s.Track, s.Ball, s.Lane, s.Release);
        var values = ParameterFacts.Before(shot, s.Options);
        values[(int)parameter] = value;
        return FittedShot.Of(shot, s.Options, values);
    }
}
