using BallSim.Spatial;
using ILGPU;
using ILGPU.Runtime;

namespace BallSim.Gpu;

/// <summary>Two numbers of a shot that lie side by side, so that one instruction brings both.</summary>
internal struct Pair
{
    /// <summary>Where it lies, bytes.</summary>
    public const int Alignment = 16;

    public double First, Second;
}

/// <summary>Takes the numbers of a shot two by two, a tile apart, to or from the card's memory.</summary>
internal interface ITransfer<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    /// <summary>Goes on with the pair that holds this number, an even one.</summary>
    void To(int number);

    /// <summary>What the next two are from now on.</summary>
    void Two(ref T first, ref T second);
}

internal struct Reading<T>(ArrayView<Pair> shot) : ITransfer<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly ArrayView<Pair> shot = shot;
    private int at;

    public void To(int number) => at = number / 2 * Shots.Tile;

    public void Two(ref T first, ref T second)
    {
        var pair = shot.AsAligned(Pair.Alignment)[at];
        (first, second) = (pair.First, pair.Second);
        at += Shots.Tile;
    }
}

internal struct Writing<T>(ArrayView<Pair> shot) : ITransfer<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly ArrayView<Pair> shot = shot;
    private int at;

    public void To(int number) => at = number / 2 * Shots.Tile;

    public void Two(ref T first, ref T second)
    {
        Pair pair = default;
        (pair.First, pair.Second) = ((double)first, (double)second);
        shot.AsAligned(Pair.Alignment)[at] = pair;
        at += Shots.Tile;
    }
}
