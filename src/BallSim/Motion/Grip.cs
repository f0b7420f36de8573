using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// What rolling asks of the contact at one state: tangential force beyond the limit of grip, the limit, the normal force, N; velocity of Bo; angular velocity. Where <see cref="Body{T}.HasDips"/>, also the film on the lane, m, and how far the
/// track shifts in a turn, in widths of the contact, for the force that holds: what a step of rolling does to the oil on the cover follows from them.
/// </summary>
internal struct Grip<T>
    where T : struct, IReal<T>
{
    public T Excess, Limit, N, VelocityX, VelocityY, Film, Shift;
    public Vec3<T> ω;
}
