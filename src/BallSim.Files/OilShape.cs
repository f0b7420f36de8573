namespace BallSim.Files;

/// <summary>The ways in which a scenario describes the oil on a lane.</summary>
public enum OilShape
{
    /// <summary>No oil.</summary>
    Dry,

    /// <summary>The same film everywhere.</summary>
    Even,

    /// <summary>A film that thins down the lane, the same on every board.</summary>
    Tapered,

    /// <summary>Most oil in the middle boards and near the foul line.</summary>
    Crowned,

    /// <summary>A table in a CSV file.</summary>
    File,
}
