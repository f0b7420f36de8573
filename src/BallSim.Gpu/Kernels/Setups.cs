using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>Where a thread finds the setup of its shot.</summary>
internal interface ISetups<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    Setup<T> Of(int index);
}

/// <summary>How setups are handed to a kernel.</summary>
internal interface ISetupsFrom<TSelf, T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
    where TSelf : struct, ISetupsFrom<TSelf, T>
{
    static abstract TSelf From(ReadOnlySpan<Setup<T>> setups, ArrayView<Setup<T>> onDevice);
}

/// <summary>One setup for all: an argument of the kernel, which lies in constant memory and needs no register.</summary>
internal readonly struct OneSetup<T>(Setup<T> setup) : ISetups<T>, ISetupsFrom<OneSetup<T>, T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly Setup<T> setup = setup;

    public static OneSetup<T> From(ReadOnlySpan<Setup<T>> setups, ArrayView<Setup<T>> onDevice) => new(setups[0]);

    public Setup<T> Of(int index) => setup;
}

/// <summary>Setups out of a table.</summary>
internal readonly struct SetupTable<T>(ArrayView<Setup<T>> setups) : ISetups<T>, ISetupsFrom<SetupTable<T>, T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    private readonly ArrayView<Setup<T>> setups = setups;

    public static SetupTable<T> From(ReadOnlySpan<Setup<T>> setups, ArrayView<Setup<T>> onDevice) => new(onDevice);

    public Setup<T> Of(int index) => setups[index];
}
