using System.Collections.Immutable;
using System.Globalization;
using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>
/// How deep to drill for a wanted static balance: the depths of a grip's holes within bounds that come nearest to it, with what is
/// missing and what could be reached.
/// </summary>
/// <remarks>
/// The imbalance is M d/L along the grip, and M d is what the undrilled ball has less a share of each hole that depends on the depth of
/// that hole alone. The share is integrated at nine depths and interpolated; the least squares within the bounds are solved for every
/// choice of depths that lie on a bound, and the best is taken. These depths are drilled, the balance asked for is corrected by what the
/// interpolation missed, and so four times; the balance reported is that of the drilled ball.
/// </remarks>
public sealed record BalanceDepths
{
    private const int Rounds = 4;

    private BalanceDepths()
    {
    }

    /// <summary>The ball drilled to these depths.</summary>
    public required DrillSheet Sheet { get; init; }

    /// <summary>The depths, m, in the order of <see cref="DrillSheet.Holes"/>.</summary>
    public required IReadOnlyList<double> Depths { get; init; }

    /// <summary>The static balance reached.</summary>
    public StaticBalance Balance => Sheet.Balance!.Value;

    /// <summary>Wanted less reached, kg; 0 for what was not asked for.</summary>
    public required StaticBalance Residual { get; init; }

    /// <summary>The least of each that some depths within the bounds reach, kg, each by itself.</summary>
    public required StaticBalance Least { get; init; }

    /// <summary>The greatest of each that some depths within the bounds reach, kg, each by itself.</summary>
    public required StaticBalance Greatest { get; init; }

    /// <summary>Depths for a wanted balance.</summary>
    /// <param name="ball">An undrilled ball.</param>
    /// <param name="layout">Where the grip goes.</param>
    /// <param name="grip">The grip; its depths do not count.</param>
    /// <param name="axisPoint">The bowler's positive axis point.</param>
    /// <param name="least">Least depth of each hole in the order thumb (unless thumbless), middle, ring finger, m; 0.25 to 4 in.</param>
    /// <param name="greatest">Greatest depth of each, m; at least <paramref name="least"/>, at most 4 in.</param>
    /// <param name="top">Wanted imbalance towards the grip centre, kg; null if any will do.</param>
    /// <param name="side">Wanted imbalance towards the side of the positive axis point, kg; null if any will do.</param>
    /// <param name="finger">Wanted imbalance towards the fingers, kg; null if any will do.</param>
    /// <param name="profile">Density of a ball known by its numbers; its mean density (assumed) unless given.</param>
    /// <exception cref="ArgumentException">Nothing is wanted, the bounds are out of range, or holes at the depths found cannot be
    /// drilled.</exception>
    public static BalanceDepths For(Ball ball, Layout layout, Grip grip, PositiveAxisPoint axisPoint, IReadOnlyList<double> least,
        IReadOnlyList<double> greatest, double? top = null, double? side = null, double? finger = null, DensityProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(least);
        ArgumentNullException.ThrowIfNull(greatest);
        double?[] wanted = [top, side, finger];
        foreach (var (value, name) in wanted.Zip((string[])["top", "side", "finger"]))
        {
            _ = value is { } v ? Check.Range(v, -16 * Ounce, 16 * Ounce, Quantity.Mass, name) : 0;
        }
        Check.That(wanted.Any(w => w is not null), "nothing is wanted; give top, side or finger", nameof(top));
        var laidOut = ball.LayOut(layout, grip, axisPoint);
        var holes = grip.Holes(laidOut);
        var count = holes.Count;
        Check.That(least.Count == count && greatest.Count == count,
            $"the grip has {count} holes; least names {least.Count} depths and greatest {greatest.Count}", nameof(least));
        for (var k = 0; k < count; k++)
        {
            Check.Range(least[k], 0.25 * Inch, 4 * Inch, Quantity.Length, $"least[{k}]");
            Check.Range(greatest[k], least[k], 4 * Inch, Quantity.Length, $"greatest[{k}]");
        }
        var shares = holes.Select((hole, k) => new HoleShare(laidOut, hole, least[k], greatest[k], profile)).ToArray();
        var start = StaticBalance.Of(laidOut);
        double[] undrilled = [start.Top, start.Side, start.Finger];

        DrillSheet Drilled(double[] depths) => DrillSheet.Of(laidOut, [.. holes.Select((h, k) => new Hole(h.Name, h.Entry, h.Axis, h.Diameter, depths[k]))], profile);
        // What the interpolated shares leave is aimed off by in the next round.
        var aim = (double?[])wanted.Clone();
        DrillSheet sheet;
        double[] best;
        var round = 0;
        do
        {
            best = BoxedLeastSquares.Of(shares, undrilled, aim, least, greatest);
            sheet = Drilled(best);
            double[] got = [sheet.Balance!.Value.Top, sheet.Balance.Value.Side, sheet.Balance.Value.Finger];
            var foreseen = Enumerable.Range(0, 3).Select(i => undrilled[i] - Enumerable.Range(0, count).Sum(k => shares[k].At(best[k], i))).ToArray();
            for (var i = 0; i < 3; i++)
            {
                aim[i] = wanted[i] + (foreseen[i] - got[i]);
            }
        }
        while (++round < Rounds);
        var reached = sheet.Balance!.Value;
        StaticBalance Extreme(Func<IEnumerable<double>, double> pick) => new(
            undrilled[0] - shares.Sum(s => pick(s.Range(0))), undrilled[1] - shares.Sum(s => pick(s.Range(1))), undrilled[2] - shares.Sum(s => pick(s.Range(2))));
        return new()
        {
            Sheet = sheet,
            Depths = best.ToImmutableArray(),
            Residual = new(top - reached.Top ?? 0, side - reached.Side ?? 0, finger - reached.Finger ?? 0),
            Least = Extreme(values => values.Max()),
            Greatest = Extreme(values => values.Min()),
        };
    }

    /// <summary>Depths, balance and what is missing, in the units of the trade.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{string.Join(", ", Sheet.Holes.Select(h => FormattableString.Invariant($"{h.Name} {h.Depth / Inch:F3} in")))}: {Balance}; missing top {Residual.Top / Ounce:F2}, " +
        $"side {Residual.Side / Ounce:F2}, finger {Residual.Finger / Ounce:F2} oz; reachable top {Least.Top / Ounce:F2} to {Greatest.Top / Ounce:F2}, " +
        $"side {Least.Side / Ounce:F2} to {Greatest.Side / Ounce:F2}, finger {Least.Finger / Ounce:F2} to {Greatest.Finger / Ounce:F2} oz");
}
