using System.Runtime.CompilerServices;
using BallSim.Lanes;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>A map read one place at a time. It keeps the cell that it read last: a ball crosses from column to column seldom. Mutable in that and in its row alone.</summary>
internal struct MapOfReal(PiecewiseBicubic map) : IMap<Real>
{
    private const int Any = -1;

    // A step that ends on a knot may end a rounding error short of it.
    private const double Sliver = 1e-9;

    private readonly PiecewiseBicubic map = map;
    private int row = Any, cell;

    // Where the cell begins, and between which x it may be read: none yet.
    private double left, lowerEnd, from = double.PositiveInfinity, to = double.NegativeInfinity;

    public Real Enter(Real y)
    {
        row = map.RowOf(y + Sliver);
        lowerEnd = map.Y[row];
        to = double.NegativeInfinity;
        return map.EndOf(row);
    }

    public readonly bool Joins => map.IsContinuous;

    public void Roam() => row = Any;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Real At(Real x, Real y)
    {
        if (row == Any)
        {
            return map.At(x, y);
        }
        if (!((double)x >= from && (double)x < to))
        {
            Follow(x);
        }
        double u = x - left, v = y - lowerEnd;
        return PiecewiseBicubic.At(map.Coefficients.AsSpan(cell, 16), u, v);
    }

    // The outer columns go on for ever.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Follow(double x)
    {
        var column = map.ColumnOf(x);
        cell = 16 * (row * map.Columns + column);
        left = map.X[column];
        from = column == 0 ? double.NegativeInfinity : left;
        to = column == map.Columns - 1 ? double.PositiveInfinity : map.X[column + 1];
    }
}
