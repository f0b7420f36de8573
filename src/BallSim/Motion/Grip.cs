using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>What rolling asks of the contact at one state: tangential force beyond the limit of grip, the limit, the normal force, N; velocity of Bo; angular velocity.</summary>
internal struct Grip<T>
    where T : struct, IReal<T>
{
    public T Excess, Limit, N, VelocityX, VelocityY;
    public Vec3<T> ω;
}
