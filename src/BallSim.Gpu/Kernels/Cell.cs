using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>The coefficients of a cell of a map, as they lie in the card's memory: its value is a + u (b + u (c + u d)), each of these a cubic of v.</summary>
internal struct Cell<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    public Cubic<T> A, B, C, D;
}

internal struct Cubic<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    public T C0, C1, C2, C3;

    public readonly T At(T v) => T.Fma(T.Fma(T.Fma(C3, v, C2), v, C1), v, C0);

    public readonly T Slope(T v)
    {
        T two = 2.0, three = 3.0;
        return T.Fma(T.Fma(three * C3, v, two * C2), v, C1);
    }
}
