using BallSim.Spatial;
using ILGPU;
using ILGPU.Runtime;

namespace BallSim.Gpu;

/// <summary>Numbers of a shot that lie side by side in the card's memory, as many as one instruction brings: in the numbers of the plain steps.</summary>
internal interface IUnit<TSelf>
    where TSelf : unmanaged, IUnit<TSelf>
{
    /// <summary>How many.</summary>
    static abstract int Numbers { get; }

    /// <summary>Four numbers of a shot from the one on that is told, which four divide.</summary>
    static abstract void Read<T>(ArrayView<TSelf> shot, int from, ref T first, ref T second, ref T third, ref T fourth)
        where T : unmanaged, IDeviceReal<T>, IReal<T>;

    /// <summary>Two.</summary>
    static abstract void Read<T>(ArrayView<TSelf> shot, int from, ref T first, ref T second)
        where T : unmanaged, IDeviceReal<T>, IReal<T>;

    /// <summary>Writes four.</summary>
    static abstract void Write<T>(ArrayView<TSelf> shot, int from, T first, T second, T third, T fourth)
        where T : unmanaged, IDeviceReal<T>, IReal<T>;

    /// <summary>Writes two; two more may be lost.</summary>
    static abstract void Write<T>(ArrayView<TSelf> shot, int from, T first, T second)
        where T : unmanaged, IDeviceReal<T>, IReal<T>;
}

/// <summary>Two doubles.</summary>
internal struct Doubles : IUnit<Doubles>
{
    public static int Numbers => 2;

    private double first, second;

    public static void Read<T>(ArrayView<Doubles> shot, int from, ref T first, ref T second, ref T third, ref T fourth)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
        Read(shot, from, ref first, ref second);
        Read(shot, from + 2, ref third, ref fourth);
    }

    public static void Read<T>(ArrayView<Doubles> shot, int from, ref T first, ref T second)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
        var unit = shot.AsAligned(ShotColumns.UnitBytes)[from / 2 * ShotColumns.Tile];
        (first, second) = (unit.first, unit.second);
    }

    public static void Write<T>(ArrayView<Doubles> shot, int from, T first, T second, T third, T fourth)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
        Write(shot, from, first, second);
        Write(shot, from + 2, third, fourth);
    }

    public static void Write<T>(ArrayView<Doubles> shot, int from, T first, T second)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
        Doubles unit = default;
        (unit.first, unit.second) = ((double)first, (double)second);
        shot.AsAligned(ShotColumns.UnitBytes)[from / 2 * ShotColumns.Tile] = unit;
    }
}

/// <summary>Four floats.</summary>
internal struct Singles : IUnit<Singles>
{
    public static int Numbers => 4;

    private float first, second, third, fourth;

    public static void Read<T>(ArrayView<Singles> shot, int from, ref T first, ref T second, ref T third, ref T fourth)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
        var unit = shot.AsAligned(ShotColumns.UnitBytes)[from / 4 * ShotColumns.Tile];
        (first, second, third, fourth) = (T.Of(unit.first), T.Of(unit.second), T.Of(unit.third), T.Of(unit.fourth));
    }

    public static void Read<T>(ArrayView<Singles> shot, int from, ref T first, ref T second)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
        T third = default, fourth = default;
        Read(shot, from, ref first, ref second, ref third, ref fourth);
    }

    public static void Write<T>(ArrayView<Singles> shot, int from, T first, T second, T third, T fourth)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
        Singles unit = default;
        (unit.first, unit.second, unit.third, unit.fourth) = (T.Single(first), T.Single(second), T.Single(third), T.Single(fourth));
        shot.AsAligned(ShotColumns.UnitBytes)[from / 4 * ShotColumns.Tile] = unit;
    }

    public static void Write<T>(ArrayView<Singles> shot, int from, T first, T second)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
        T zero = 0.0;
        Write(shot, from, first, second, zero, zero);
    }
}
