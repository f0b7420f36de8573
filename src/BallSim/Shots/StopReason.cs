namespace BallSim.Shots;

/// <summary>Why a shot ended.</summary>
public enum StopReason
{
    /// <summary>The ball touched the head pin: the regular end; no impact is computed.</summary>
    HeadPin,

    /// <summary>The ball passed the head pin without touching it; it reached the pins' line.</summary>
    PassedHeadPin,

    /// <summary>The centre of the ball passed the lane's edge.</summary>
    Gutter,

    /// <summary>The ball came back over the foul line (strong backspin).</summary>
    FoulLine,

    /// <summary>The normal force fell to zero: the ball left the lane (an offset too large for its spin). The model ends there.</summary>
    LeftLane,

    /// <summary>The longest time was reached (<see cref="SimulatorOptions.MaxTime"/>).</summary>
    TimeLimit,

    /// <summary>The largest number of steps was reached (<see cref="SimulatorOptions.MaxSteps"/>), or the step became too small for the numbers.</summary>
    StepLimit,

    /// <summary>The largest number of changes between sliding and rolling was reached (<see cref="SimulatorOptions.MaxTransitions"/>).</summary>
    TransitionLimit,
}
