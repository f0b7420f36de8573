using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>What comes back of a shot: of its last instant what an outcome asks for, since the way from the card is narrow.</summary>
internal struct Finished
{
    /// <summary>As many doubles take the same room.</summary>
    public const int Doubles = 27;

    public DeviceDouble Time, X, Y, VelocityX, VelocityY, SlipX, SlipY, Revolutions;
    public Quat<DeviceDouble> Orientation;
    public Vec3<DeviceDouble> AngularVelocity;
    public Tally<DeviceDouble> Tally;
    public double OilTaken;
    public int Steps;
    public Ending Ended;

    /// <summary>Its last instant as the processor has it, as far as it came back.</summary>
    public readonly Moment<Real> End
    {
        get
        {
            static Real Of(DeviceDouble a) => (double)a;
            var (q, ω) = (Orientation, AngularVelocity);
            Moment<Real> end = default;
            (end.Time, end.X, end.Y, end.Revolutions) = (Of(Time), Of(X), Of(Y), Of(Revolutions));
            (end.VelocityX, end.VelocityY, end.SlipX, end.SlipY) = (Of(VelocityX), Of(VelocityY), Of(SlipX), Of(SlipY));
            end.Orientation = new(Of(q.W), Of(q.X), Of(q.Y), Of(q.Z));
            end.AngularVelocity = new(Of(ω.X), Of(ω.Y), Of(ω.Z));
            return end;
        }
    }
}
