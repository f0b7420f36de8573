using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>Takes the numbers of a shot one after the other, a tile apart, to or from the card's memory.</summary>
internal interface ITransfer<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    /// <summary>Goes on with the number that stands there.</summary>
    void To(int number);

    /// <summary>What the next number is from now on.</summary>
    T Next(T number);
}

internal struct Reading<T>(ArrayView<double> shot) : ITransfer<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly ArrayView<double> shot = shot;
    private int at;

    public void To(int number) => at = number * Shots.Tile;

    public T Next(T number)
    {
        T read = shot[at];
        at += Shots.Tile;
        return read;
    }
}

internal struct Writing<T>(ArrayView<double> shot) : ITransfer<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly ArrayView<double> shot = shot;
    private int at;

    public void To(int number) => at = number * Shots.Tile;

    public T Next(T number)
    {
        shot[at] = (double)number;
        at += Shots.Tile;
        return number;
    }
}
