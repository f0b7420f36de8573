using BallSim.Shots;

namespace BallSim.Fitting;

/// <summary>How a shot ended, as designed and as measured.</summary>
/// <param name="ShotId">The shot.</param>
/// <param name="Designed">How it would have ended as designed, with the release as fitted.</param>
/// <param name="Measured">How its fitted path ends.</param>
public readonly record struct ShotEnds(string ShotId, StopReason Designed, StopReason Measured)
{
    /// <summary>Whether it would have come to the pins as designed.</summary>
    public bool IsDesignedAtPins => Designed is StopReason.HeadPin or StopReason.PassedHeadPin;

    /// <summary>Whether its fitted path comes to the pins.</summary>
    public bool IsMeasuredAtPins => Measured is StopReason.HeadPin or StopReason.PassedHeadPin;

    /// <summary>Whether one of the two comes to the pins and the other does not.</summary>
    public bool EndsOtherwise => IsDesignedAtPins != IsMeasuredAtPins;

    /// <summary>Both ends.</summary>
    public override string ToString() => $"shot {ShotId}: designed {Designed}, measured {Measured}";
}
