using BallSim.Lanes;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>Slopes out of a map of heights with their derivatives by the place. Mutable in its row alone.</summary>
internal struct SlopesOfDual(PiecewiseBicubic heights) : ISlopes<Dual>
{
    private const int Any = -1;

    // As in MapOfReal.
    private const double Sliver = 1e-9;

    private readonly PiecewiseBicubic heights = heights;
    private int row = Any;

    public Dual Enter(Dual y)
    {
        row = heights.RowOf((double)y + Sliver);
        return heights.EndOf(row);
    }

    public readonly bool Joins => heights.IsSmooth;

    public void Roam() => row = Any;

    // The same sums as the map's own, on numbers that carry derivatives.
    public readonly void At(Dual x, Dual y, out Dual across, out Dual along)
    {
        var at = row == Any ? heights.RowOf((double)y) : row;
        var column = heights.ColumnOf((double)x);
        var u = x - heights.X[column];
        var v = y - heights.Y[at];
        var c = heights.Coefficients.AsSpan(16 * (at * heights.Columns + column), 16);
        across = Dual.Fma(Dual.Fma(3.0 * Cubic(c[12..], v), u, 2.0 * Cubic(c[8..], v)), u, Cubic(c[4..], v));
        along = Dual.Fma(Dual.Fma(Dual.Fma(Slope(c[12..], v), u, Slope(c[8..], v)), u, Slope(c[4..], v)), u, Slope(c, v));
    }

    private static Dual Cubic(ReadOnlySpan<double> c, Dual v) => Dual.Fma(Dual.Fma(Dual.Fma(c[3], v, c[2]), v, c[1]), v, c[0]);

    private static Dual Slope(ReadOnlySpan<double> c, Dual v) => Dual.Fma(Dual.Fma(3 * c[3], v, 2 * c[2]), v, c[1]);
}
