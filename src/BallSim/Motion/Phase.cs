namespace BallSim.Motion;

/// <summary>How the ball moves between two events.</summary>
internal enum Phase
{
    /// <summary>Through the air, before it lands.</summary>
    Loft,

    /// <summary>On the lane, the contact point slipping.</summary>
    Slide,

    /// <summary>On the lane, the contact point at rest.</summary>
    Roll,
}
