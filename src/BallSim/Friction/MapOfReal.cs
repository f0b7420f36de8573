using System.Runtime.CompilerServices;
using BallSim.Lanes;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>A map read one place at a time. Mutable in its row alone.</summary>
internal struct MapOfReal(PiecewiseBicubic map) : IMap<Real>
{
    private const int Any = -1;

    // A step that ends on a knot may end a rounding error short of it.
    private const double Sliver = 1e-9;

    private readonly PiecewiseBicubic map = map;
    private int row = Any;

    public Real Enter(Real y)
    {
        row = map.RowOf(y + Sliver);
        return map.NextKnot(y + Sliver);
    }

    public readonly bool Joins => map.IsContinuous;

    public void Roam() => row = Any;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly Real At(Real x, Real y) => row == Any ? map.At(x, y) : map.At(x, y, row);
}
