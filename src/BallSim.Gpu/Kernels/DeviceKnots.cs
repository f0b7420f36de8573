using BallSim.Lanes;
using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>The numbers of <see cref="Knots"/> as the card reads them.</summary>
internal readonly struct DeviceKnots<T>(ArrayView<T> values, ArrayView<int> bins, double perUnit)
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly ArrayView<T> values = values;
    private readonly ArrayView<int> bins = bins;
    private readonly T perUnit = perUnit, lastBin = (double)(bins.Length - 1);

    /// <summary>How many intervals there are.</summary>
    public readonly int Intervals = (int)values.Length - 1;

    public T Start(int interval) => values[interval];

    public T End(int interval)
    {
        T never = double.PositiveInfinity;
        return interval < Intervals - 1 ? values[interval + 1] : never;
    }

    public int IndexOf(T coordinate)
    {
        T zero = 0.0;
        var bin = T.Truncate(T.Max(zero, T.Min((coordinate - values[0]) * perUnit, lastBin)));
        var interval = bins[bin];
        // One step or two; bounded, as every loop of a kernel.
        for (var i = 0; i < Intervals && interval < Intervals - 1 && coordinate >= values[interval + 1]; i++)
        {
            interval++;
        }
        return interval;
    }
}
