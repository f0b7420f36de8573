using System.Runtime.CompilerServices;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// The state of a ball that spins on the spot: the angular momentum of ball and rotor together and that of the rotor alone, in the lane
/// frame, where they vary slowly, and the rotation vector since the start of the step.
/// </summary>
internal struct SpinState<T> : ILinear<SpinState<T>, T>
    where T : struct, IReal<T>
{
    public Vec3<T> Momentum, Rotor, Turn;

    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Add(T s, in SpinState<T> k)
    {
        Momentum = Vec3<T>.AddScaled(Momentum, s, k.Momentum);
        Rotor = Vec3<T>.AddScaled(Rotor, s, k.Rotor);
        Turn = Vec3<T>.AddScaled(Turn, s, k.Turn);
    }

    public void Add(T s1, in SpinState<T> k1, T s2, in SpinState<T> k2)
    {
        Add(s1, k1);
        Add(s2, k2);
    }

    public void Add(T s1, in SpinState<T> k1, T s2, in SpinState<T> k2, T s3, in SpinState<T> k3)
    {
        Add(s1, k1);
        Add(s2, k2);
        Add(s3, k3);
    }
}
