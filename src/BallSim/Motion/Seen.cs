using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>What the last evaluation of sliding saw, in the lane frame: angular velocity, velocity of Bo, slip, normal force. The driver reads it instead of computing it again.</summary>
internal struct Seen<T>
    where T : struct, IReal<T>
{
    public Vec3<T> ω;
    public T VelocityX, VelocityY, Slip, N;
}
