using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>A shot at the foul line, and the setup that it is thrown with.</summary>
internal struct Start
{
    public DeviceDouble X, VelocityX, VelocityY, Hand;
    public Quat<DeviceDouble> Orientation;
    public Vec3<DeviceDouble> AngularVelocity;
    public double Loft;
    public int Setup;
}
