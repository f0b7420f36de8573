using BallSim.Lanes;
using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>The numbers of <see cref="Knots"/> as the card reads them.</summary>
internal readonly struct DeviceKnots<T>(ArrayView<T> values, ArrayView<int> bins, double perUnit, int steps)
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly ArrayView<T> values = values;
    private readonly ArrayView<int> bins = bins;
    private readonly T perUnit = perUnit, lastBin = (double)(bins.Length - 1);
    private readonly int steps = steps;

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
        // One step or two, without branches: a warp that has to jump waits for its instructions. More only on maps with very unequal intervals.
        interval = Step(coordinate, Step(coordinate, interval));
        for (var i = 2; i < steps; i++)
        {
            interval = Step(coordinate, interval);
        }
        return interval;
    }

    private int Step(T coordinate, int interval)
    {
        var next = Math.Min(interval + 1, Intervals - 1);
        return coordinate >= values[next] ? next : interval;
    }
}
