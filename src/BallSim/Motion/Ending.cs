namespace BallSim.Motion;

/// <summary>Why a run ended.</summary>
internal enum Ending
{
    /// <summary>Not yet.</summary>
    None,
    HeadPin,
    PassedPins,
    Gutter,
    FoulLine,
    LeftLane,
    TimeLimit,
    StepLimit,
    TransitionLimit,
}
