using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// What the last evaluation of sliding saw, in the lane frame: angular velocity, velocity of Bo, slip, normal force; and, but for the stages inside a step, the rate at which the slip falls, m/s², and the friction force, N. The driver
/// reads it instead of computing it again.
/// </summary>
internal struct Seen<T>
    where T : struct, IReal<T>
{
    public Vec3<T> ω;
    public T VelocityX, VelocityY, Slip, N, Fall, Pull;

    /// <summary>Place and time so many seconds later at this velocity; the rest of the state as it is.</summary>
    public readonly State<T> After(T seconds, in State<T> y) => y with { X = T.Fma(seconds, VelocityX, y.X), Y = T.Fma(seconds, VelocityY, y.Y), Time = y.Time + seconds };
}
