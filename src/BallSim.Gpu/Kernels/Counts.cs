using BallSim.Motion;

namespace BallSim.Gpu;

/// <summary>The whole numbers of a shot, as one instruction brings them.</summary>
internal struct Counts(int steps, int rejected, int transitions, Phase phase, Ending ended)
{
    /// <summary>Where they lie, bytes.</summary>
    public const int Alignment = 16;

    private const int Phases = 16;

    public int Steps = steps, Rejected = rejected, Transitions = transitions;

    // Two in one.
    private readonly int state = (int)ended * Phases + (int)phase;

    public readonly Phase Phase => (Phase)(state % Phases);

    public readonly Ending Ended => (Ending)(state / Phases);
}
