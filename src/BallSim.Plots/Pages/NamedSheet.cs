using BallSim.Drilling;

namespace BallSim.Plots.Pages;

/// <summary>A drilled ball of a page, with what it is called.</summary>
/// <param name="Name">Ball and layout in a few words.</param>
/// <param name="Sheet">What drilling did to it.</param>
/// <param name="BalanceLever">Lever length of the balance scale, m, by which its static balance is told; 3.36 in is usual here (assumed).</param>
public sealed record NamedSheet(string Name, DrillSheet Sheet, double BalanceLever = 3.36 * Units.Inch);
