using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>Takes the numbers of a shot four by four, a tile apart, to or from the card's memory.</summary>
internal interface ITransfer<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    /// <summary>Goes on with this number, which four divide.</summary>
    void To(int number);

    /// <summary>What the next four are from now on.</summary>
    void Four(ref T first, ref T second, ref T third, ref T fourth);

    /// <summary>What the next two are, the last of a section.</summary>
    void Two(ref T first, ref T second);
}

internal struct Reading<T, TUnit>(ArrayView<TUnit> shot) : ITransfer<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
    where TUnit : unmanaged, IUnit<TUnit>
{
    private readonly ArrayView<TUnit> shot = shot;
    private int at;

    public void To(int number) => at = number;

    public void Four(ref T first, ref T second, ref T third, ref T fourth)
    {
        TUnit.Read(shot, at, ref first, ref second, ref third, ref fourth);
        at += 4;
    }

    public void Two(ref T first, ref T second) => TUnit.Read(shot, at, ref first, ref second);
}

internal struct Writing<T, TUnit>(ArrayView<TUnit> shot) : ITransfer<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
    where TUnit : unmanaged, IUnit<TUnit>
{
    private readonly ArrayView<TUnit> shot = shot;
    private int at;

    public void To(int number) => at = number;

    public void Four(ref T first, ref T second, ref T third, ref T fourth)
    {
        TUnit.Write(shot, at, first, second, third, fourth);
        at += 4;
    }

    public void Two(ref T first, ref T second) => TUnit.Write(shot, at, first, second);
}
