using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Lanes;

/// <summary>One line of a lane's check.</summary>
/// <param name="What">What is limited.</param>
/// <param name="Value">The value, m.</param>
/// <param name="AtLeast">Lower limit, m, or null.</param>
/// <param name="AtMost">Upper limit, m.</param>
/// <param name="At">Where the value was found, m from the foul line, or null where that says nothing.</param>
/// <param name="Source">Where the limit was read, and how it is known.</param>
public sealed record LaneCheckLine(string What, double Value, double? AtLeast, double AtMost, double? At, string Source)
{
    // A limit of 0.040 in and heights that were made from it differ in the sixteenth digit.
    private const double Rounding = 1e-12;

    /// <summary>True if the value keeps the limit; a last digit of rounding is forgiven, nothing else.</summary>
    public bool Passes => !(Value > AtMost + Rounding) && !(Value < AtLeast - Rounding);

    /// <summary>The value in inches.</summary>
    public string ValueText => Invariant($"{Value / Inch:F3} in") + (At is { } at ? Invariant($" at {at / Foot:F1} ft") : "");

    /// <summary>The limit in inches.</summary>
    public string LimitText => AtLeast is { } low ? Invariant($"{low / Inch:F3} to {AtMost / Inch:F3} in") : Invariant($"up to {AtMost / Inch:F3} in");

    /// <summary>"pass" or "FAIL".</summary>
    public string VerdictText => Passes ? "pass" : "FAIL";

    /// <summary>The line as text.</summary>
    public override string ToString() => $"{What}: {ValueText}, limit {LimitText}: {VerdictText} ({Source})";
}
