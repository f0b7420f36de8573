namespace BallSim.Integration;

/// <summary>Two places in a step, as parts of it, and a quantity there: below zero at the first, above at the second; and where between them it is likely to pass zero, 0 if that is not known.</summary>
internal readonly struct Between(double low, double atLow, double high, double atHigh, double likely = 0)
{
    public readonly double Low = low, AtLow = atLow, High = high, AtHigh = atHigh, Likely = likely;

    /// <summary>Whether there are such places.</summary>
    public bool Exists => High > 0;
}
