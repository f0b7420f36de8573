using BallSim.Lanes;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>
/// A map read one place at a time with its derivatives: by the place, and by two numbers of its own, offset + gain · map, which a fit may move. Mutable in its row alone.
/// </summary>
internal struct MapOfDual(PiecewiseBicubic map, Dual offset, Dual gain) : IMap<Dual>
{
    private const int Any = -1;

    // As in MapOfReal.
    private const double Sliver = 1e-9;

    private readonly PiecewiseBicubic map = map;
    private readonly Dual offset = offset, gain = gain;
    private readonly bool isPlain = offset.Equals(0.0) && gain.Equals(1.0);
    private int row = Any;

    public Dual Enter(Dual y)
    {
        row = map.RowOf((double)y + Sliver);
        return map.EndOf(row);
    }

    public readonly bool Joins => map.IsContinuous;

    public void Roam() => row = Any;

    public readonly Dual At(Dual x, Dual y)
    {
        double u = (double)x, v = (double)y;
        var at = row == Any ? map.RowOf(v) : row;
        map.Slopes(u, v, at, out var perX, out var perY);
        var value = Dual.Chain(map.At(u, v, at), perX, x, perY, y);
        return isPlain ? value : Dual.Fma(gain, value, offset);
    }
}
