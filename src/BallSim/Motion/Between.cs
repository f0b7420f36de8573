namespace BallSim.Motion;

/// <summary>Two places in a step, as parts of it, and a quantity there: below zero at the first, above at the second.</summary>
internal readonly struct Between(double low, double atLow, double high, double atHigh)
{
    public readonly double Low = low, AtLow = atLow, High = high, AtHigh = atHigh;

    /// <summary>Whether there are such places.</summary>
    public bool Exists => High > 0;
}
