using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>What one source of error does: half the difference between plus and minus its tolerance, with the sign of plus.</summary>
/// <param name="Source">The source of the error.</param>
/// <param name="Tolerance">Its size in SI units (m, rad or kg).</param>
/// <param name="ToleranceText">Its size in the units of the trade.</param>
/// <param name="OnRg">Change of the radius of gyration about the positive axis, m.</param>
/// <param name="OnBalance">Size of the change of the static balance, kg, whatever its direction.</param>
/// <param name="OnBoard">Change of the entry board, in boards, counted from the right.</param>
/// <param name="OnAngle">Change of the entry angle, rad.</param>
public readonly record struct ToleranceEffect(string Source, double Tolerance, string ToleranceText, double OnRg, double OnBalance, double OnBoard, double OnAngle)
{
    /// <summary>What it does, in the units of the trade.</summary>
    public override string ToString() => Invariant($"{Source} {ToleranceText}: RG {OnRg / Inch:+0.0000;-0.0000;0.0000} in, balance {OnBalance / Ounce:F2} oz, board {OnBoard:+0.00;-0.00;0.00}, {OnAngle / Degree:+0.00;-0.00;0.00}°");
}
