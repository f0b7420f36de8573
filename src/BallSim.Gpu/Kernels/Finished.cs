using BallSim.Motion;

namespace BallSim.Gpu;

/// <summary>What comes back of a shot.</summary>
internal struct Finished
{
    public Moment<DeviceDouble> End;
    public Tally<DeviceDouble> Tally;
    public double OilTaken;
    public int Steps;
    public Ending Ended;
}
