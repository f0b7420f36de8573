namespace BallSim.Motion;

/// <summary>Why a run ended.</summary>
internal enum Ending
{
    /// <summary>Not yet.</summary>
    None,

    // Places and times, in the order in which a step is searched for them.
    HeadPin,
    Gutter,
    PassedPins,
    FoulLine,
    TimeLimit,
    LeftLane,
    StepLimit,
    TransitionLimit,
}
