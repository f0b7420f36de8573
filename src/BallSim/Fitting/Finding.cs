namespace BallSim.Fitting;

/// <summary>How a metric, or a ball, stands to its design.</summary>
public enum Finding
{
    /// <summary>The whole interval of the difference lies within the tolerance.</summary>
    AsDesigned,

    /// <summary>The whole interval of the difference lies outside the tolerance, on one side.</summary>
    Differs,

    /// <summary>The interval reaches over an end of the tolerance: more shots, or a better known lane, are needed.</summary>
    CannotTell,
}
