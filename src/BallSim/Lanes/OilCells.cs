using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Lanes;

/// <summary>
/// The oil on the lane kept by volume, cell by cell: the books of a lane that changes. The cells are equal and cover a lane of 41.5 in by 60 ft; column 0 lies at the right
/// edge, row 0 at the foul line. Inside a cell nothing is known but its mean film, so a groove that a ball leaves (some 4 mm wide) is spread over the cell's width.
/// </summary>
/// <remarks>
/// <see cref="Oil"/> is the film through the cells' means at their centres, by the bounded bicubic of every oil map, held constant over the outer half cells. It holds the cells' volume
/// exactly (to rounding): a bicubic Hermite cell integrates to the mean of its corners and differences of the nodes' derivatives, on equal cells those differences cancel from cell to
/// cell whatever the limiting did, and at the edges, where the film is held, they vanish. One cell alone may differ: of a groove one cell wide in an even film, 3/16 of the depth
/// lies in the two cells beside it. It never falls below zero.
/// </remarks>
public sealed record OilCells
{
    // How far a cell that has too little looks around for what the film between the centres borrowed from its neighbours.
    private const int FarthestLender = 4;

    private readonly double[] volumes;
    private readonly Lazy<OilMap> oil;

    private OilCells(int cellsPerBoard, int rows, double[] volumes)
    {
        (CellsPerBoard, Rows, this.volumes) = (cellsPerBoard, rows, volumes);
        oil = new(Film);
    }

    /// <summary>A film cut into cells, each with the exact integral of the film over it.</summary>
    /// <param name="oil">The film; where a plane for study lies below zero there is none.</param>
    /// <param name="cellsPerBoard">Cells across one board, 1 to 8; 1: as fine as a measured map, and about as fine as a bowler repeats (assumed).</param>
    /// <param name="rows">Rows from the foul line to the head pin, 10 to 1000; 120, each half a foot long (assumed).</param>
    public static OilCells Of(OilMap oil, int cellsPerBoard = 1, int rows = 120)
    {
        ArgumentNullException.ThrowIfNull(oil);
        Check.Range(cellsPerBoard, 1, 8, Quantity.Number);
        Check.Range(rows, 10, 1000, Quantity.Number);
        var columns = RegulationLane.Boards * cellsPerBoard;
        var x = Edges(columns, -RegulationLane.Width / 2, RegulationLane.Width);
        var integrals = oil.Map.Integrals(x, Edges(rows, 0, RegulationLane.Length));
        var volumes = new double[rows * columns];
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                // Columns count from the right, x to the right.
                volumes[row * columns + column] = Math.Max(0, integrals[row, columns - 1 - column]);
            }
        }
        return new(cellsPerBoard, rows, volumes);
    }

    /// <summary>Cells across one board.</summary>
    public int CellsPerBoard { get; }

    /// <summary>Rows from the foul line to the head pin.</summary>
    public int Rows { get; }

    /// <summary>Cells across the lane.</summary>
    public int Columns => RegulationLane.Boards * CellsPerBoard;

    /// <summary>Width of a cell, m.</summary>
    public double CellWidth => RegulationLane.Width / Columns;

    /// <summary>Length of a cell, m.</summary>
    public double CellLength => RegulationLane.Length / Rows;

    /// <summary>Volume of all cells, m³.</summary>
    public double Volume => volumes.Sum();

    /// <summary>The film that the simulator throws on: smooth, through the cells' means, of the same volume.</summary>
    public OilMap Oil => oil.Value;

    /// <summary>The mean film of a cell, m.</summary>
    /// <param name="row">Row, 0 at the foul line.</param>
    /// <param name="column">Column, 0 at the right edge.</param>
    public double FilmIn(int row, int column) => VolumeIn(row, column) / (CellWidth * CellLength);

    /// <summary>The volume in a cell, m³.</summary>
    /// <param name="row">Row, 0 at the foul line.</param>
    /// <param name="column">Column, 0 at the right edge.</param>
    public double VolumeIn(int row, int column)
    {
        Check.Range(row, 0, Rows - 1, Quantity.Number);
        Check.Range(column, 0, Columns - 1, Quantity.Number);
        return volumes[row * Columns + column];
    }

    /// <summary>The volume between two distances on a stretch of boards, m³; cells that lie in it partly count by their share.</summary>
    /// <param name="fromDistance">m from the foul line.</param>
    /// <param name="toDistance">m from the foul line, not before <paramref name="fromDistance"/>.</param>
    /// <param name="fromBoard">Continuous board at which the stretch begins; board b reaches from b - ½ to b + ½.</param>
    /// <param name="toBoard">Continuous board at which it ends, not right of <paramref name="fromBoard"/>.</param>
    public double VolumeBetween(double fromDistance, double toDistance, double fromBoard, double toBoard)
    {
        Check.Range(fromDistance, 0, RegulationLane.Length, Quantity.Length);
        Check.Range(toDistance, fromDistance, RegulationLane.Length, Quantity.Length);
        Check.Range(fromBoard, 0.5, RegulationLane.Boards + 0.5, Quantity.Of("boards"));
        Check.Range(toBoard, fromBoard, RegulationLane.Boards + 0.5, Quantity.Of("boards"));
        double sum = 0;
        for (var row = 0; row < Rows; row++)
        {
            var down = Overlap(fromDistance / CellLength, toDistance / CellLength, row);
            for (var column = 0; down > 0 && column < Columns; column++)
            {
                sum += down * Overlap((fromBoard - 0.5) * CellsPerBoard, (toBoard - 0.5) * CellsPerBoard, column) * volumes[row * Columns + column];
            }
        }
        return sum;
    }

    /// <summary>Equal if they have the same cells with the same volumes.</summary>
    public bool Equals(OilCells? other) =>
        other is not null && CellsPerBoard == other.CellsPerBoard && Rows == other.Rows && volumes.AsSpan().SequenceEqual(other.volumes);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(CellsPerBoard, Rows, volumes[volumes.Length / 2]);

    /// <summary>Cells and volume in the units of the trade.</summary>
    public override string ToString() =>
        Invariant($"{Volume / Millilitre:F3} mL in {Rows} by {Columns} cells of {CellLength / Foot:F2} ft by {CellWidth / Inch:F2} in");

    /// <summary>
    /// The cells less what was taken from each (below zero: laid down). No cell gives more than it has: what is wanted beyond that comes, by their volumes, from the cells around it, whose
    /// oil the smooth film there is; what those lack too is withheld.
    /// </summary>
    internal OilCells Less(ReadOnlySpan<double> taken, out double withheld)
    {
        var left = new double[volumes.Length];
        for (var i = 0; i < left.Length; i++)
        {
            left[i] = volumes[i] - taken[i];
        }
        withheld = 0;
        for (var i = 0; i < left.Length; i++)
        {
            if (left[i] < 0)
            {
                var wanted = -left[i];
                left[i] = 0;
                for (var reach = 1; reach <= FarthestLender && wanted > 0; reach++)
                {
                    wanted -= Lent(left, i / Columns, i % Columns, reach, wanted);
                }
                withheld += wanted;
            }
        }
        return new(CellsPerBoard, Rows, left);
    }

    private double Lent(double[] left, int row, int column, int reach, double wanted)
    {
        var (firstRow, lastRow) = (Math.Max(row - reach, 0), Math.Min(row + reach, Rows - 1));
        var (first, last) = (Math.Max(column - reach, 0), Math.Min(column + reach, Columns - 1));
        double available = 0;
        for (var k = firstRow; k <= lastRow; k++)
        {
            for (var i = first; i <= last; i++)
            {
                available += Math.Max(0, left[k * Columns + i]);
            }
        }
        if (available <= 0)
        {
            return 0;
        }
        var share = Math.Min(1, wanted / available);
        for (var k = firstRow; k <= lastRow; k++)
        {
            for (var i = first; i <= last; i++)
            {
                // A cell still to be looked at may lie below zero; it lends nothing.
                left[k * Columns + i] -= share * Math.Max(0, left[k * Columns + i]);
            }
        }
        return Math.Min(wanted, available);
    }

    private OilMap Film()
    {
        double[] stations = [0, .. Enumerable.Range(0, Rows).Select(k => (k + 0.5) * CellLength), RegulationLane.Length];
        double[] boards = [0.5, .. Enumerable.Range(0, Columns).Select(i => 0.5 + (i + 0.5) / CellsPerBoard), RegulationLane.Boards + 0.5];
        var films = new double[stations.Length, boards.Length];
        for (var k = 0; k < stations.Length; k++)
        {
            for (var i = 0; i < boards.Length; i++)
            {
                films[k, i] = FilmIn(Math.Clamp(k - 1, 0, Rows - 1), Math.Clamp(i - 1, 0, Columns - 1));
            }
        }
        return OilMap.Through("in cells", stations, boards, films);
    }

    private static double[] Edges(int cells, double from, double width) => [.. Enumerable.Range(0, cells + 1).Select(i => from + width * i / cells)];

    private static double Overlap(double from, double to, int cell) => Math.Max(0, Math.Min(to, cell + 1) - Math.Max(from, cell));
}
