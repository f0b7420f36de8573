namespace BallSim.Shots;

/// <summary>How the ball moves at an instant.</summary>
public enum ShotPhase
{
    /// <summary>Through the air, before it lands: straight on, turning as a free body.</summary>
    Loft,

    /// <summary>On the lane with the contact point slipping.</summary>
    Sliding,

    /// <summary>On the lane with the contact point at rest.</summary>
    Rolling,
}
