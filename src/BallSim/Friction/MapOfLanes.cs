using System.Runtime.CompilerServices;
using BallSim.Lanes;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>A map read at several places at a time, each lane in its own row.</summary>
internal struct MapOfLanes<T>(PiecewiseBicubic map) : IMap<T>
    where T : struct, ILanes<T>, IReal<T>
{
    // As in MapOfReal.
    private const double Sliver = 1e-9;

    [InlineArray(16)]
    private struct Cells
    {
        private int first;
    }

    private readonly PiecewiseBicubic map = map;
    private Cells rows;
    private T lowerEnd;

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
        return map.NextKnot(y + Sliver);
    }

    public readonly void Roam() => throw new NotSupportedException("lanes go by distance");

    public readonly T At(T x, T y)
    {
        Cells at = default;
        T left = 0.0;
        for (var lane = 0; lane < T.Count; lane++)
        {
            var column = map.ColumnOf(T.Lane(x, lane));
            T.SetLane(ref left, lane, map.X[column]);
            at[lane] = 16 * (rows[lane] * map.Columns + column);
        }
        Unsafe.SkipInit(out Sixteen<T> c);
        T.Gather(ref map.Coefficients[0], at, ref c);
        var u = x - left;
        var v = y - lowerEnd;
        var c0 = T.Fma(T.Fma(T.Fma(c[3], v, c[2]), v, c[1]), v, c[0]);
        var c1 = T.Fma(T.Fma(T.Fma(c[7], v, c[6]), v, c[5]), v, c[4]);
        var c2 = T.Fma(T.Fma(T.Fma(c[11], v, c[10]), v, c[9]), v, c[8]);
        var c3 = T.Fma(T.Fma(T.Fma(c[15], v, c[14]), v, c[13]), v, c[12]);
        return T.Fma(T.Fma(T.Fma(c3, u, c2), u, c1), u, c0);
    }
}
