using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Lanes;

/// <summary>
/// The oil on the lane: the thickness of its film over (x, y), in m. Films at boards are values at the boards' centres on a lane of regulation width; a
/// continuous board b lies at x = W/2 - (b - ½) W/39, b = 1 rightmost. Between the given places the film is smooth (C1), never leaves the range of the four values
/// around it and is exact where it is linear; outside the given places it holds the edge's value, which makes a kink there.
/// </summary>
/// <remarks>
/// A described pattern ends over a last stretch (the run-out, 1 ft by default, assumed) on which the film falls smoothly to zero, reached at <see cref="Length"/>.
/// Corners of a described profile are rounded over one board across and over the run-out along the lane.
/// </remarks>
public sealed record OilMap
{
    private readonly string kind;

    private OilMap(string kind, double length, PiecewiseBicubic map) => (this.kind, Length, Map) = (kind, length, map);

    internal PiecewiseBicubic Map { get; }

    /// <summary>No oil.</summary>
    public static OilMap Dry { get; } = new("dry", 0, PiecewiseBicubic.Constant(0));

    /// <summary>The same film everywhere up to the run-out.</summary>
    /// <param name="length">Where the film ends, m, 1.5 to 18.3 m.</param>
    /// <param name="film">Film, m, 0 to 0.5 mm.</param>
    /// <param name="runout">Length of the last stretch, on which the film falls to zero, m, 1 cm to half the length; 1 ft, assumed.</param>
    public static OilMap Even(double length, double film, double runout = Foot)
    {
        Film(film, nameof(film));
        Ends(length, runout);
        return Described("even", Evenly, length, runout, length - runout, film, film);
    }

    /// <summary>A film that is full to a distance, then falls linearly towards an end film at the end distance, the same on every board.</summary>
    /// <param name="film">Film from the foul line on, m, 0 to 0.5 mm.</param>
    /// <param name="fullTo">Distance to which it is full, m, 0 to the beginning of the run-out.</param>
    /// <param name="endFilm">Film towards which it falls, m, 0 to 0.5 mm: the value that the linear fall would reach at the end but for the run-out.</param>
    /// <param name="length">Where the film ends, m, 1.5 to 18.3 m.</param>
    /// <param name="runout">Length of the last stretch, on which the film falls to zero, m, 1 cm to half the length; 1 ft, assumed.</param>
    public static OilMap Tapered(double film, double fullTo, double endFilm, double length, double runout = Foot)
    {
        Film(film, nameof(film));
        Film(endFilm, nameof(endFilm));
        Ends(length, runout);
        Check.Range(fullTo, 0, length - runout, Quantity.Length);
        return Described("tapered", Evenly, length, runout, fullTo, film, endFilm);
    }

    /// <summary>
    /// The common shape of a pattern: most oil in the middle boards and near the foul line, less outside and further down. All shape parameters' defaults are assumed.
    /// </summary>
    /// <param name="length">Where the film ends, m, 1.5 to 18.3 m; usually about 40 ft.</param>
    /// <param name="volume">Volume of the oil on the lane, m³, 0 to 1 L; usually 18 to 30 mL.</param>
    /// <param name="fullTo">Distance to which the film is full, m, 0 to the beginning of the run-out; 8 ft.</param>
    /// <param name="endFraction">Fraction of the full film towards which it falls linearly at the end, a number in [0, 1]; a quarter.</param>
    /// <param name="fullFrom">Rightmost full board, 1 to 39; 13.</param>
    /// <param name="fullUpTo">Leftmost full board, 1 to 39, not right of <paramref name="fullFrom"/>; 27.</param>
    /// <param name="edgeFraction">Fraction of the middle's film on the edge boards 1 and 39, linear between, a number in [0, 1]; an eighth.</param>
    /// <param name="runout">Length of the last stretch, on which the film falls to zero, m, 1 cm to half the length; 1 ft.</param>
    public static OilMap Crowned(double length, double volume, double fullTo = 8 * Foot, double endFraction = 0.25, double fullFrom = 13, double fullUpTo = 27,
        double edgeFraction = 0.125, double runout = Foot)
    {
        Ends(length, runout);
        Check.Range(volume, 0, 1e-3, Quantity.Volume);
        Check.Range(fullTo, 0, length - runout, Quantity.Length);
        Check.Range(endFraction, 0, 1, Quantity.Number);
        Check.Range(fullFrom, 1, RegulationLane.Boards, Quantity.Number);
        Check.Range(fullUpTo, 1, RegulationLane.Boards, Quantity.Number);
        Check.That(fullUpTo >= fullFrom, $"fullUpTo = board {Check.Text(fullUpTo)} lies right of fullFrom = board {Check.Text(fullFrom)}; boards count from the right", nameof(fullUpTo));
        Check.Range(edgeFraction, 0, 1, Quantity.Number);
        var shape = Described("crowned", Crown(fullFrom, fullUpTo, edgeFraction), length, runout, fullTo, 1, endFraction);
        return new("crowned", length, shape.Map.Times(volume / shape.Volume));
    }

    /// <summary>A film that is linear in the place, everywhere: for study. Where the plane lies below zero there is no film; <see cref="Volume"/> is the plane's integral.</summary>
    /// <param name="atOrigin">Film at the middle of the foul line, m.</param>
    /// <param name="perX">Change for each metre to the right, a number.</param>
    /// <param name="perY">Change for each metre down the lane, a number.</param>
    public static OilMap Linear(double atOrigin, double perX, double perY) => new("linear", RegulationLane.Length, PiecewiseBicubic.Plane(
        Check.Range(atOrigin, -ThickestFilm, ThickestFilm, Quantity.Film),
        Check.Range(perX, -ThickestFilm, ThickestFilm, Quantity.Number),
        Check.Range(perY, -ThickestFilm, ThickestFilm, Quantity.Number)));

    /// <summary>A measured or designed film. To let it end, give a last station (or two) of zeros: beyond the last station the film holds.</summary>
    /// <param name="stations">Distances from the foul line, m, increasing, at least two, 0 to 30 m.</param>
    /// <param name="boards">Boards counted from the right, increasing, at least two, 0.5 to 39.5 (1 is the centre of the rightmost board).</param>
    /// <param name="films">films[k, i] at stations[k] and boards[i], m, 0 to 0.5 mm.</param>
    public static OilMap FromTable(IReadOnlyList<double> stations, IReadOnlyList<double> boards, double[,] films)
    {
        var y = Table.Increasing(stations, 0, 30, nameof(stations));
        var b = Table.Increasing(boards, 0.5, RegulationLane.Boards + 0.5, nameof(boards), Quantity.Number);
        Table.Values(films, y.Length, b.Length, 0, ThickestFilm, Quantity.Film, nameof(films));
        return Between("table", LastFilm(y, films), y, b, (k, i) => films[k, i]);
    }

    /// <summary>A film kept by its cells.</summary>
    /// <param name="kind">What the map calls itself, a word: "crowned", "table".</param>
    /// <param name="length">Where the film ends, m, 0 to 30 m.</param>
    /// <param name="cells">The cells; the film, m, -0.1 to 0.1 m at their corners and in their middles (below zero there is no film).</param>
    public static OilMap FromCells(string kind, double length, MapCells cells)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(kind);
        ArgumentNullException.ThrowIfNull(cells);
        return new(kind, Check.Range(length, 0, 30, Quantity.Length), cells.Within(-0.1, 0.1, Quantity.Film, "film"));
    }

    /// <summary>The film through values at stations and boards that the caller has made sure of.</summary>
    internal static OilMap Through(string kind, double[] stations, double[] boards, double[,] films) =>
        Between(kind, LastFilm(stations, films), stations, boards, (k, i) => films[k, i]);

    /// <summary>What the map calls itself: "dry", "even", "tapered", "crowned", "linear", "table", or what it became by bowling.</summary>
    public string Kind => kind;

    /// <summary>The cells of which the map is made, with the film in m.</summary>
    public MapCells Cells => new(Map);

    /// <summary>Where the film ends: the station from which on there is none on any board, m; the pins' distance (60 ft) if there is film at the last station.</summary>
    public double Length { get; }

    /// <summary>The distances at which the film is given and between which it is one cubic, m; empty for a dry or a linear map, which are given everywhere.</summary>
    public IReadOnlyList<double> Stations => Map.Y.Length > 2 ? Map.Y[1..^1] : [];

    /// <summary>Volume of the oil on a lane of 41.5 in by 60 ft, m³: the exact integral of the interpolated film.</summary>
    public double Volume => Map.Integral(-RegulationLane.Width / 2, RegulationLane.Width / 2, 0, RegulationLane.Length);

    /// <summary>The film at a place, m.</summary>
    /// <param name="x">Across, m, positive to the right of the lane's middle.</param>
    /// <param name="y">Down the lane from the foul line, m.</param>
    public double FilmAt(double x, double y) => Math.Max(0, Map.At(x, y));

    /// <summary>The film at a distance on a board, m.</summary>
    /// <param name="distance">Down the lane from the foul line, m.</param>
    /// <param name="board">Continuous board, counted from the right; 1 is the centre of the rightmost board.</param>
    public double FilmOnBoard(double distance, double board) => FilmAt(RegulationLane.PlaceOf(board), distance);

    /// <summary>
    /// Mean film of the boards 18 to 22 over the mean film of the boards 3 to 7, a number: the trade's measure of how much a pattern helps (the pairing of boards is common practice, no
    /// source). Infinite where only the middle is oiled, NaN where neither is.
    /// </summary>
    /// <param name="distance">Down the lane from the foul line, m.</param>
    public double Ratio(double distance) => Mean(distance, 18, 22) / Mean(distance, 3, 7);

    /// <summary>Kind, volume, length, and the film in the middle and the ratio at 15 ft.</summary>
    public override string ToString() => Map.Coefficients.All(c => c == 0) ? "dry" : Invariant(
        $"{kind}: {Volume / Millilitre:F1} mL to {Length / Foot:F1} ft, {FilmOnBoard(15 * Foot, 20) / Micrometre:F2} µm on board 20 at 15 ft, ratio {Ratio(15 * Foot):F1} there");

    private const double ThickestFilm = 0.5e-3;

    private static readonly (double Board, double Fraction)[] Evenly = [(1, 1), (RegulationLane.Boards, 1)];

    private double Mean(double distance, int from, int to) => Enumerable.Range(from, to - from + 1).Average(b => FilmOnBoard(distance, b));

    private static void Film(double film, string name) => Check.Range(film, 0, ThickestFilm, Quantity.Film, name);

    private static void Ends(double length, double runout)
    {
        Check.Range(length, 1.5, RegulationLane.Length + RegulationLane.LengthTolerance, Quantity.Length);
        Check.Range(runout, 0.01, length / 2, Quantity.Length);
    }

    /// <summary>The crown as few columns as its straight parts need: each straight part one column, each corner rounded within the board beside it.</summary>
    private static (double Board, double Fraction)[] Crown(double from, double to, double edge)
    {
        const double last = RegulationLane.Boards;
        var boards = new SortedSet<double> { 1, from, to, last };
        if (from - 1 > 1)
        {
            boards.Add(from - 1);
        }
        if (to + 1 < last)
        {
            boards.Add(to + 1);
        }
        double Fraction(double b) => b < from ? edge + (1 - edge) * (b - 1) / (from - 1) : b > to ? edge + (1 - edge) * (last - b) / (last - to) : 1;
        return [.. boards.Select(b => (b, Fraction(b)))];
    }

    /// <summary>
    /// Few rows: the full part, a corner, the linear fall, a corner, the run-out, and a row of zeros behind it so that the film ends with zero slope.
    /// </summary>
    private static OilMap Described(string kind, (double Board, double Fraction)[] across, double length, double runout, double fullTo, double film, double endFilm)
    {
        var end = length - runout;
        var stations = new SortedSet<double> { 0, fullTo, end, length, length + runout };
        if (fullTo + runout < end - runout)
        {
            stations.Add(fullTo + runout);
            stations.Add(end - runout);
        }
        double[] y = [.. stations];
        double Profile(double d) => d >= length ? 0 : d <= fullTo ? film : film + (endFilm - film) * (d - fullTo) / (length - fullTo);
        return Between(kind, length, y, [.. across.Select(a => a.Board)], (k, i) => Profile(y[k]) * across[i].Fraction);
    }

    /// <summary>Boards count against x: the columns are turned round.</summary>
    private static OilMap Between(string kind, double length, double[] y, double[] boards, Func<int, int, double> film)
    {
        var last = boards.Length - 1;
        var values = new double[y.Length, boards.Length];
        var x = new double[boards.Length];
        for (var i = 0; i <= last; i++)
        {
            x[last - i] = RegulationLane.PlaceOf(boards[i]);
            for (var k = 0; k < y.Length; k++)
            {
                values[k, last - i] = film(k, i);
            }
        }
        return new(kind, length, PiecewiseBicubic.FromTable(x, y, values));
    }

    private static double LastFilm(double[] y, double[,] films)
    {
        for (var k = y.Length - 1; k >= 0; k--)
        {
            for (var i = 0; i < films.GetLength(1); i++)
            {
                if (films[k, i] > 0)
                {
                    return k == y.Length - 1 ? RegulationLane.Length : y[k + 1];
                }
            }
        }
        return 0;
    }
}
