using BallSim.Lanes;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// What one shot does to the oil on the lane: where the ball runs it takes oil up and, farther down, lays some of it down again. Along the path it removes, over a strip 2 r_c wide,
/// (v_b/v)(φ_s h_c - (1 - φ) h_B) metres of film in a pass, v_b = |v - s|.
/// </summary>
/// <remarks>
/// Two computations along one path: <see cref="Loss"/> comes out of the cells, each of which the strip takes from by the area that it covers; the cover's side is the gain of its film
/// over the shot's own history, what was absorbed, and what stayed on rings that the contact left (see <see cref="OilExchange"/>). Their difference is <see cref="Imbalance"/>. Neglected: oil pushed aside by the contact and flow
/// on the lane between shots; oil on the cover that runs; the film across the strip, taken at its middle. The ball is wiped before every shot. With <see cref="SimulatorOptions.CoverOil"/> off,
/// and on a lane of given friction, nothing is taken.
/// </remarks>
public sealed record LaneWear
{
    // A piece of path turns the ball by at most this: the fresh fraction follows the turn.
    private const double MostTurn = 1.2;

    // Gauss-Legendre on [0, 1]: four points for the lane, five for the cover.
    private static readonly (double At, double Weight)[] Four =
    [
        (0.06943184420297371, 0.17392742256872693), (0.33000947820757187, 0.32607257743127307),
        (0.66999052179242813, 0.32607257743127307), (0.93056815579702629, 0.17392742256872693),
    ];

    private static readonly (double At, double Weight)[] Five =
    [
        (0.04691007703066800, 0.11846344252809454), (0.23076534494715845, 0.23931433524968324), (0.5, 0.28444444444444444),
        (0.76923465505284155, 0.23931433524968324), (0.95308992296933200, 0.11846344252809454),
    ];

    private LaneWear(OilCells before, OilCells after) => (Before, After) = (before, after);

    /// <summary>The cells before the shot.</summary>
    public OilCells Before { get; }

    /// <summary>The cells after it; the next shot is thrown on <c>After.Oil</c>.</summary>
    public OilCells After { get; }

    /// <summary>Taken up, m³: the loss of the cells that lost.</summary>
    public double TakenUp { get; private init; }

    /// <summary>Laid down, m³: the gain of the cells that gained.</summary>
    public double LaidDown { get; private init; }

    /// <summary>What the lane lost, m³: the cells before less the cells after.</summary>
    public double Loss => TakenUp - LaidDown;

    /// <summary>Wanted by the ball from cells that had no more, nor any around them, m³: zero but on a lane all but dry.</summary>
    public double Withheld { get; private init; }

    /// <summary>Gained by the ring under the contact, m³: ∫ A dh_B, A the ring's area. As the axis migrates the ring changes its length, so this is not the film at the end times its area.</summary>
    public double OnCover { get; private init; }

    /// <summary>Absorbed by the cover, m³.</summary>
    public double Absorbed { get; private init; }

    /// <summary>Left on rings that the contact moved away from, m³.</summary>
    public double OnOldRings { get; private init; }

    /// <summary>What the cover gained in all, m³: on the ring, absorbed, on old rings.</summary>
    public double CoverGain => OnCover + Absorbed + OnOldRings;

    /// <summary>Loss of the lane and what was withheld from the ball, less the gain of the cover, m³: zero but for the tolerance of the path.</summary>
    public double Imbalance => Loss + Withheld - CoverGain;

    /// <summary>What a shot takes from cells.</summary>
    /// <param name="shot">The shot, thrown on the oil of these cells.</param>
    /// <param name="cells">The cells before it. A strip beyond their edges counts for the outermost cells.</param>
    public static LaneWear Of(Shot shot, OilCells cells)
    {
        ArgumentNullException.ThrowIfNull(shot);
        ArgumentNullException.ThrowIfNull(cells);
        var taken = new double[cells.Rows * cells.Columns];
        double onCover = 0, absorbed = 0, onOldRings = 0;
        for (var i = 0; i < shot.SegmentCount; i++)
        {
            Take(shot, i, cells, taken);
            var segment = shot.Segment(i);
            foreach (var (θ, weight) in Nodes(0, 1, segment.TurnOver(0, 1), Five))
            {
                var exchange = shot.ExchangeAt(i, θ);
                var rate = segment.RateAt(θ);
                onCover += weight * exchange.Ring * rate.CoverFilm;
                absorbed += weight * rate.Time * exchange.Absorbed;
                onOldRings += weight * rate.Time * exchange.LeftOnOldRings;
            }
        }
        var after = cells.Less(taken, out var withheld);
        var (up, down) = (0.0, 0.0);
        for (var row = 0; row < cells.Rows; row++)
        {
            for (var column = 0; column < cells.Columns; column++)
            {
                var lost = cells.VolumeIn(row, column) - after.VolumeIn(row, column);
                up += Math.Max(0, lost);
                down += Math.Max(0, -lost);
            }
        }
        return new(cells, after) { TakenUp = up, LaidDown = down, Withheld = withheld, OnCover = onCover, Absorbed = absorbed, OnOldRings = onOldRings };
    }

    /// <summary>In microlitres.</summary>
    public override string ToString() => Invariant(
        $"{TakenUp / Microlitre:F1} µL taken up, {LaidDown / Microlitre:F1} laid down; on the cover {OnCover / Microlitre:0.0;-0.0;0.0}, absorbed {Absorbed / Microlitre:F1}, left on old rings {OnOldRings / Microlitre:F1}");

    private const double Microlitre = 1e-3 * Millilitre;

    // One step, cut where it passes from one row of cells to the next.
    private static void Take(Shot shot, int i, OilCells cells, double[] taken)
    {
        var segment = shot.Segment(i);
        var (from, fromRow, lastRow) = (0.0, RowOf(segment.StartY, cells), RowOf(segment.EndY, cells));
        for (var row = fromRow; from < 1; row++)
        {
            var to = row < lastRow ? segment.AtDistance((row + 1) * cells.CellLength) : 1;
            foreach (var (θ, weight) in Nodes(from, to, segment.TurnOver(from, to), Four))
            {
                var exchange = shot.ExchangeAt(i, θ);
                Share(exchange, weight * segment.RateAt(θ).Time * exchange.FromLane, cells, taken);
            }
            from = to;
        }
    }

    private static int RowOf(double y, OilCells cells) => (int)Math.Clamp(Math.Floor(y / cells.CellLength), 0, cells.Rows - 1);

    // To every cell that the strip covers by the part of its width that lies there.
    private static void Share(in OilExchange exchange, double volume, OilCells cells, double[] taken)
    {
        if (volume == 0)
        {
            return;
        }
        var first = RowOf(exchange.Y, cells) * cells.Columns;
        var middle = (0.5 * cells.CellWidth * cells.Columns - exchange.X) / cells.CellWidth;
        var half = exchange.HalfStrip / cells.CellWidth;
        var (right, left) = (middle - half, middle + half);
        for (var column = (int)Math.Floor(right); column < left; column++)
        {
            var part = (Math.Min(left, column + 1) - Math.Max(right, column)) / (left - right);
            taken[first + Math.Clamp(column, 0, cells.Columns - 1)] += part * volume;
        }
    }

    private static IEnumerable<(double θ, double Weight)> Nodes(double from, double to, double turn, (double At, double Weight)[] rule)
    {
        var parts = 1 + (int)(turn / MostTurn);
        var width = (to - from) / parts;
        for (var part = 0; part < parts; part++)
        {
            foreach (var (at, weight) in rule)
            {
                yield return (from + (part + at) * width, weight * width);
            }
        }
    }
}
