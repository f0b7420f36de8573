namespace BallSim.Fitting;

/// <summary>What is odd about a tracked point.</summary>
public enum QualityIssue
{
    /// <summary>A stretch without points, much longer than the usual distance between them.</summary>
    Gap,

    /// <summary>Far off the smooth line of its neighbours.</summary>
    Outlier,

    /// <summary>The station of another point once more; the first is kept.</summary>
    Duplicate,

    /// <summary>Behind the point before it; the points are put in order.</summary>
    OutOfOrder,

    /// <summary>Beyond the place where the ball meets the pins, or before the foul line; left out.</summary>
    OffLane,
}
