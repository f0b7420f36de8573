using BallSim.Spatial;

namespace BallSim.Fitting;

/// <summary>A place or an instant at which a shot is looked at, and whether more than place and time is asked of it.</summary>
internal readonly record struct Station(double At, bool IsTime, bool AsksMotion);

/// <summary>The ball at a station, with derivatives.</summary>
internal struct Passage
{
    public bool IsSeen;
    public Dual X, Y, Time, Speed, Heading, SpinRate, AxisRotation, AxisTilt;
}
