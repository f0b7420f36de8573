using BallSim.Motion;

namespace BallSim.Gpu;

/// <summary>A shot between two kernels, in doubles.</summary>
internal struct Shot
{
    public Moving<DeviceDouble> Moving;

    /// <summary>The setup that it is thrown with.</summary>
    public int Setup;

    public Why Why;
}
