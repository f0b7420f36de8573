namespace BallSim.Files;

/// <summary>A value and what the scenario calls it.</summary>
/// <param name="Name">The name, unique within its list.</param>
/// <param name="Value">The value.</param>
public readonly record struct Named<T>(string Name, T Value);
