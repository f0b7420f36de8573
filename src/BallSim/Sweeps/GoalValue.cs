using System.Globalization;

namespace BallSim.Sweeps;

/// <summary>What one candidate reaches of one goal.</summary>
/// <param name="Name">The goal.</param>
/// <param name="Value">The value: the mean of the metric in its unit, or the share.</param>
/// <param name="Low">Lower end of the 95 % interval that the number of throws leaves.</param>
/// <param name="High">Upper end of that interval.</param>
/// <param name="Cost">How far from the goal, in the goal's scale; 0 is reached.</param>
public readonly record struct GoalValue(string Name, double Value, double Low, double High, double Cost)
{
    /// <summary>Name, value and interval.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} {Value:G4} ({Low:G4} to {High:G4})");
}
