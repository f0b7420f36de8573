namespace BallSim.Shots;

/// <summary>How exactly a spin test is computed. A value; change it by <c>with</c>.</summary>
public sealed record SpinTestOptions
{
    /// <summary>The defaults.</summary>
    public static SpinTestOptions Default { get; } = new();

    /// <summary>
    /// Error allowed per step, rad of orientation and as a share of the momentum, 1e-14 to 1e-4; 1e-10. Errors add up over the steps, and a
    /// spin that passes the middle axis amplifies them: a minute of spin that does so is good to about 5e-6 rad/s at the default, to 5e-9
    /// rad/s at 1e-13 (measured on solved cases).
    /// </summary>
    public double Tolerance { get; init => field = Check.Range(value, 1e-14, 1e-4, Quantity.Number, nameof(Tolerance)); } = 1e-10;

    /// <summary>
    /// Steps after which the test is ended, 10 to 10 million; 500 000. Each is kept, at some 420 bytes, for dense evaluation.
    /// </summary>
    public int MaxSteps { get; init => field = (int)Check.Range(value, 10, 10_000_000, Quantity.Number, nameof(MaxSteps)); } = 500_000;

    /// <summary>Tolerance and bound.</summary>
    public override string ToString() => FormattableString.Invariant($"within {Tolerance:E0} of itself, at most {MaxSteps} steps");
}
