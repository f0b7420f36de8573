using System.Numerics;
using System.Runtime.CompilerServices;
using BallSim.Lanes;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>
/// A map read at several places at a time, each lane in its own cell. The lanes keep the numbers of their cells: a ball crosses from column to column seldom, and sixteen numbers that have just been put into lanes one by one
/// are slow to read as vectors.
/// </summary>
internal struct MapOfLanes<T>(PiecewiseBicubic map) : IMap<T>
    where T : struct, ILanes<T>, IReal<T>
{
    // As in MapOfReal.
    private const double Sliver = 1e-9;

    // No cell yet, of a lane that roams.
    private const int None = -1;

    [InlineArray(16)]
    private struct Cells
    {
        private int first;
    }

    private readonly PiecewiseBicubic map = map;

    // The rows that lanes have entered. Of lanes that roam, the cells they read, counted down from below None; those are looked after each time.
    private Cells rows;

    // Where the cells begin, and between which x the lanes may go on reading them: none yet.
    private T left, lowerEnd, from = double.PositiveInfinity, to = double.NegativeInfinity;
    private Sixteen<T> c;

    public T Enter(T y)
    {
        T end = 0.0;
        for (var lane = 0; lane < T.Count; lane++)
        {
            T.SetLane(ref end, lane, Enter(lane, T.Lane(y, lane)));
        }
        return end;
    }

    /// <summary>The same for one lane.</summary>
    public double Enter(int lane, double y)
    {
        var row = map.RowOf(y + Sliver);
        rows[lane] = row;
        T.SetLane(ref lowerEnd, lane, map.Y[row]);
        T.SetLane(ref to, lane, double.NegativeInfinity);
        return map.EndOf(row);
    }

    public readonly bool Joins => map.IsContinuous;

    /// <summary>From now on a lane reads the row that it is in, until it enters one.</summary>
    public void Roam()
    {
        to = double.NegativeInfinity;
        for (var lane = 0; lane < T.Count; lane++)
        {
            rows[lane] = None;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T At(T x, T y)
    {
        T zero = 0.0, one = 1.0;
        var strayed = T.IfLess(x, to, T.IfLess(x, from, one, zero), one);
        if (T.Any(strayed))
        {
            Follow(x, y, T.Mask(strayed));
        }
        var u = x - left;
        var v = y - lowerEnd;
        var c0 = T.Fma(T.Fma(T.Fma(c[3], v, c[2]), v, c[1]), v, c[0]);
        var c1 = T.Fma(T.Fma(T.Fma(c[7], v, c[6]), v, c[5]), v, c[4]);
        var c2 = T.Fma(T.Fma(T.Fma(c[11], v, c[10]), v, c[9]), v, c[8]);
        var c3 = T.Fma(T.Fma(T.Fma(c[15], v, c[14]), v, c[13]), v, c[12]);
        return T.Fma(T.Fma(T.Fma(c3, u, c2), u, c1), u, c0);
    }

    // The cells of lanes that have left theirs. The outer columns go on for ever.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Follow(T x, T y, uint strayed)
    {
        for (; strayed != 0; strayed &= strayed - 1)
        {
            var lane = BitOperations.TrailingZeroCount(strayed);
            var column = map.ColumnOf(T.Lane(x, lane));
            var row = rows[lane];
            if (row < 0)
            {
                row = map.RowOf(T.Lane(y, lane));
                var cell = None - 1 - (row * map.Columns + column);
                if (cell == rows[lane])
                {
                    continue;
                }
                rows[lane] = cell;
                T.SetLane(ref lowerEnd, lane, map.Y[row]);
            }
            else
            {
                T.SetLane(ref from, lane, column == 0 ? double.NegativeInfinity : map.X[column]);
                T.SetLane(ref to, lane, column == map.Columns - 1 ? double.PositiveInfinity : map.X[column + 1]);
            }
            T.SetLane(ref left, lane, map.X[column]);
            LaneCopy<T>.Set(ref c, lane, map.Coefficients[16 * (row * map.Columns + column)], 16);
        }
    }
}
