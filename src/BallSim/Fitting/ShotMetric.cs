namespace BallSim.Fitting;

/// <summary>A number by which shots are held against each other.</summary>
public enum ShotMetric
{
    /// <summary>Entry angle, rad.</summary>
    EntryAngle,

    /// <summary>Board at the pins.</summary>
    EntryBoard,

    /// <summary>Speed at the pins, m/s.</summary>
    EntrySpeed,

    /// <summary>Board of the breakpoint.</summary>
    BreakpointBoard,

    /// <summary>Distance of the breakpoint, m.</summary>
    BreakpointDistance,
}
