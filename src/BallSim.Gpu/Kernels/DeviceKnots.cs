using BallSim.Lanes;
using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>The numbers of <see cref="Knots"/> as the card reads them.</summary>
internal readonly struct DeviceKnots<T>(ArrayView<T> values, double first, ArrayView<int> bins, double perUnit, int steps)
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly ArrayView<T> values = values;
    private readonly ArrayView<int> bins = bins;
    private readonly T first = first, perUnit = perUnit, lastBin = (double)(bins.Length - 1);
    private readonly int steps = steps;

    /// <summary>How many intervals there are.</summary>
    public readonly int Intervals = (int)values.Length - 1;

    public T Start(int interval) => values[interval];

    public T End(int interval)
    {
        T never = double.PositiveInfinity;
        return interval < Intervals - 1 ? values[interval + 1] : never;
    }

    public int IndexOf(T coordinate) => IndexOf(coordinate, out _);

    /// <summary>The interval of a coordinate, and where it starts.</summary>
    public int IndexOf(T coordinate, out T start)
    {
        T zero = 0.0;
        var bin = T.Truncate(T.Max(zero, T.Min((coordinate - first) * perUnit, lastBin)));
        var interval = bins[bin];
        // The next one or two, looked at together and without branches: a warp that has to jump waits for its instructions, and one look after the other for memory. More only on maps with very unequal intervals.
        var (next, second) = (Math.Min(interval + 1, Intervals - 1), Math.Min(interval + 2, Intervals - 1));
        (start, var atNext, var atSecond) = (values[interval], values[next], values[second]);
        (interval, start) = coordinate >= atNext ? (next, atNext) : (interval, start);
        (interval, start) = coordinate >= atSecond ? (second, atSecond) : (interval, start);
        for (var i = 2; i < steps; i++)
        {
            interval = coordinate >= End(interval) ? interval + 1 : interval;
            start = values[interval];
        }
        return interval;
    }
}
