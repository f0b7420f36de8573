using BallSim.Lanes;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>Slopes out of a map of heights, read one place at a time. Mutable in its row alone.</summary>
internal struct SlopesOfReal(PiecewiseBicubic heights) : ISlopes<Real>
{
    private const int Any = -1;

    // As in MapOfReal.
    private const double Sliver = 1e-9;

    private readonly PiecewiseBicubic heights = heights;
    private int row = Any;

    public Real Enter(Real y)
    {
        row = heights.RowOf(y + Sliver);
        return heights.EndOf(row);
    }

    public readonly bool Joins => heights.IsSmooth;

    public void Roam() => row = Any;

    public readonly void At(Real x, Real y, out Real across, out Real along)
    {
        heights.Slopes(x, y, row == Any ? heights.RowOf(y) : row, out var perX, out var perY);
        (across, along) = (perX, perY);
    }
}
