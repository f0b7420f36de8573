using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Where and when a run ends at the latest; infinite where there is no such end.</summary>
internal struct Bounds<T>
    where T : struct, IReal<T>
{
    /// <summary>|x| of Bo at which the ball drops into the gutter, m.</summary>
    public T HalfWidth;

    /// <summary>y of the head pin's axis, m, and the distance between it and Bo at first touch, m.</summary>
    public T PinsAt, TouchDistance;

    /// <summary>The lowest y of Bo: a ball that spins back over the foul line ends there.</summary>
    public T BackAt;

    /// <summary>Latest time, s.</summary>
    public T MaxTime;

    public int MaxSteps, MaxTransitions;

    /// <summary>How many numbers there are, before the counts.</summary>
    public const int Numbers = 5;
}
