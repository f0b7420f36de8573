namespace BallSim.Integration;

/// <summary>The dense output of a step.</summary>
internal enum Interpolant
{
    /// <summary>That of the explicit method, by all its slopes.</summary>
    Slopes,

    /// <summary>Only the first and the last slope are set: the cubic through both ends.</summary>
    Cubic,

    /// <summary>Something was added to the end that the slopes do not tell of: the method's own comes to it by degrees.</summary>
    Mended,
}
