using BallSim.Lanes;
using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>The numbers of <see cref="Knots"/> as the card reads them, with bins so fine that the interval a bin begins in or the next holds any place in it.</summary>
internal readonly struct DeviceKnots<T>(ArrayView<T> values, double first, ArrayView<int> bins, double perUnit)
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly ArrayView<T> values = values;
    private readonly ArrayView<int> bins = bins;
    private readonly T first = first, perUnit = perUnit, lastBin = (double)(bins.Length - 1);

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
        // That or the next, both looked at and without a branch: a warp that has to jump waits for its instructions, and one look after the other for memory.
        var next = Math.Min(interval + 1, Intervals - 1);
        (start, var atNext) = (values[interval], values[next]);
        (interval, start) = coordinate >= atNext ? (next, atNext) : (interval, start);
        return interval;
    }
}
