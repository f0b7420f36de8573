using static System.FormattableString;

namespace BallSim.Lanes;

/// <summary>
/// A given coefficient of friction over the lane, in place of the law of film and slip: for textbook problems and for study. It depends on the place alone, not
/// on the slip speed and not on the ball.
/// </summary>
public sealed record FrictionMap
{
    private FrictionMap(PiecewiseBicubic map) => Map = map;

    internal PiecewiseBicubic Map { get; }

    /// <summary>The same coefficient everywhere.</summary>
    /// <param name="mu">Coefficient, a number in [0, 2].</param>
    public static FrictionMap Constant(double mu) => new(PiecewiseBicubic.Constant(Coefficient(mu, nameof(mu))));

    /// <summary>Zones one behind the other, each of one coefficient, with jumps between them.</summary>
    /// <param name="zones">Where each zone begins (y in m, increasing) and its coefficient (a number in [0, 2]). The first zone also reaches back from its beginning.</param>
    public static FrictionMap Zones(params (double From, double Mu)[] zones)
    {
        Check.That(zones.Length > 0, "zones is empty; at least one zone is needed", nameof(zones));
        var y = new double[zones.Length + 1];
        var cubic = new double[zones.Length][];
        for (var k = 0; k < zones.Length; k++)
        {
            y[k] = Check.Range(zones[k].From, -FarthestPlace, FarthestPlace, Quantity.Length, $"zones[{k}].From");
            Check.That(k == 0 || y[k] > y[k - 1],
                $"zones[{k}].From = {Check.Text(y[k])} m does not lie beyond the zone before it ({(k == 0 ? "" : Check.Text(y[k - 1]))} m); zones go down the lane", nameof(zones));
            cubic[k] = [Coefficient(zones[k].Mu, $"zones[{k}].Mu")];
        }
        y[^1] = y[^2] + 1;
        return new(PiecewiseBicubic.DownLane(y, cubic));
    }

    /// <summary>One coefficient, then another, with the smooth change mu1 + (mu2 - mu1) t² (3 - 2 t), t = (y - y1)/(y2 - y1), between.</summary>
    /// <param name="mu1">Coefficient before the change, a number in [0, 2].</param>
    /// <param name="mu2">Coefficient after the change, a number in [0, 2].</param>
    /// <param name="y1">Where the change begins, m.</param>
    /// <param name="y2">Where the change ends, m; beyond <paramref name="y1"/>.</param>
    public static FrictionMap Smoothstep(double mu1, double mu2, double y1, double y2)
    {
        Coefficient(mu1, nameof(mu1));
        Coefficient(mu2, nameof(mu2));
        Check.Range(y1, -FarthestPlace, FarthestPlace, Quantity.Length);
        Check.Range(y2, -FarthestPlace, FarthestPlace, Quantity.Length);
        Check.That(y2 > y1, $"y2 = {Check.Text(y2)} m does not lie beyond y1 = {Check.Text(y1)} m", nameof(y2));
        var h = y2 - y1;
        return new(PiecewiseBicubic.DownLane([y1 - 1, y1, y2, y2 + 1],
            [[mu1], [mu1, 0, 3 * (mu2 - mu1) / (h * h), -2 * (mu2 - mu1) / (h * h * h)], [mu2]]));
    }

    /// <summary>Coefficients given at stations and places across, smoothly between (C1, within the neighbouring values) and constant outside.</summary>
    /// <param name="y">Stations down the lane, m, increasing, at least two.</param>
    /// <param name="x">Places across, m (positive to the right), increasing, at least two.</param>
    /// <param name="mu">mu[k, i] at (x[i], y[k]), numbers in [0, 2].</param>
    public static FrictionMap FromTable(IReadOnlyList<double> y, IReadOnlyList<double> x, double[,] mu)
    {
        var stations = Table.Increasing(y, -FarthestPlace, FarthestPlace, nameof(y));
        var across = Table.Increasing(x, -FarthestPlace, FarthestPlace, nameof(x));
        return new(PiecewiseBicubic.FromTable(across, stations, Table.Values(mu, stations.Length, across.Length, 0, Greatest, Quantity.Number, nameof(mu))));
    }

    /// <summary>Coefficients kept by their cells.</summary>
    /// <param name="cells">The cells; the coefficient, a number in [0, 2] (but for rounding) at their corners and in their middles.</param>
    public static FrictionMap FromCells(MapCells cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        return new(cells.Within(0, Greatest, Quantity.Number, "mu"));
    }

    /// <summary>The cells of which the map is made.</summary>
    public MapCells Cells => new(Map);

    /// <summary>The coefficient at a place, a number.</summary>
    /// <param name="x">Across, m, positive to the right of the lane's middle.</param>
    /// <param name="y">Down the lane from the foul line, m.</param>
    public double At(double x, double y) => Map.At(x, y);

    /// <summary>The least and the greatest coefficient.</summary>
    public override string ToString()
    {
        var (least, greatest) = Map.Extremes();
        return least == greatest ? Invariant($"friction {least:0.####}") : Invariant($"friction {least:0.####} to {greatest:0.####}");
    }

    /// <summary>The same map with its least and greatest value moved to others, all between in proportion.</summary>
    internal FrictionMap Between(double least, double greatest)
    {
        var (low, high) = Map.Extremes();
        return high > low ? new(Map.Affine((greatest - least) / (high - low), least - low * (greatest - least) / (high - low))) : Constant(greatest);
    }

    private const double Greatest = 2;
    private const double FarthestPlace = 1000;

    private static double Coefficient(double mu, string name) => Check.Range(mu, 0, Greatest, Quantity.Number, name);
}
