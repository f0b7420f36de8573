namespace BallSim.Shots;

/// <summary>What one source of error does: half the difference between plus and minus its tolerance, with the sign of plus.</summary>
/// <param name="Source">The source of the error.</param>
/// <param name="Tolerance">Its size in SI units (m, rad or kg).</param>
/// <param name="ToleranceText">Its size in the units of the trade.</param>
/// <param name="OnRg">Change of the radius of gyration about the positive axis, m.</param>
/// <param name="OnBalance">Size of the change of the static balance, kg, whatever its direction.</param>
/// <param name="OnBoard">Change of the entry board, in boards, counted from the right.</param>
/// <param name="OnAngle">Change of the entry angle, rad.</param>
public readonly record struct ToleranceEffect(string Source, double Tolerance, string ToleranceText, double OnRg, double OnBalance, double OnBoard, double OnAngle);
