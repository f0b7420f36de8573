using System.Runtime.InteropServices;
using BallSim.Lanes;
using BallSim.Spatial;
using ILGPU;
using ILGPU.Runtime;

namespace BallSim.Gpu;

/// <summary>What a lane must be like for a device.</summary>
internal static class LaneOnDevice
{
    /// <summary>Whether a bin and the next lead to any place of its maps. Not where intervals are thousands of times as wide as others: shots on such a lane are the processor's.</summary>
    public static bool Takes(Lane lane) => Maps(lane).All(map => Knots.Fine(map.X).Steps < 2 && Knots.Fine(map.Y).Steps < 2);

    private static IEnumerable<PiecewiseBicubic> Maps(Lane lane)
    {
        yield return lane.GivenFriction is { } friction ? friction.Map : lane.Oil.Map;
        if (lane.Topography.Heights is { } heights)
        {
            yield return heights;
        }
    }
}

/// <summary>The maps of a lane in a device's memory.</summary>
internal sealed class LaneOnDevice<T> : IDisposable
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly List<MemoryBuffer> buffers = [];
    private readonly Accelerator accelerator;

    public LaneOnDevice(Accelerator accelerator, Lane lane)
    {
        this.accelerator = accelerator;
        Map = Grid(lane.GivenFriction is { } friction ? friction.Map : lane.Oil.Map);
        // A level lane's kernel does not read them.
        Heights = lane.Topography.Heights is { } heights ? Grid(heights) : Map;
    }

    public DeviceGrid<T> Map { get; }

    public DeviceGrid<T> Heights { get; }

    public void Dispose() => buffers.ForEach(b => b.Dispose());

    private DeviceGrid<T> Grid(PiecewiseBicubic map) => new(Cells(map.Coefficients), Knots(map.X), Knots(map.Y), map.IsSmooth ? 2 : map.IsContinuous ? 1 : 0);

    private DeviceKnots<T> Knots(double[] values)
    {
        var index = Lanes.Knots.Fine(values);
        return new(Numbers(values), values[0], OnDevice(index.Bins), index.PerUnit);
    }

    private ArrayView<Cell<T>> Cells(double[] coefficients) => OnDevice(MemoryMarshal.Cast<T, Cell<T>>(Converted(coefficients)).ToArray());

    private ArrayView<T> Numbers(double[] values) => OnDevice(Converted(values));

    private static T[] Converted(double[] values) => Array.ConvertAll(values, v => (T)v);

    private ArrayView<TItem> OnDevice<TItem>(TItem[] items)
        where TItem : unmanaged
    {
        var numbers = accelerator.Allocate1D(items);
        buffers.Add(numbers);
        return numbers.View;
    }
}
