namespace BallSim.Files;

/// <summary>One weight of a line of balls.</summary>
/// <param name="Weight">The wished weight, kg.</param>
/// <param name="Poured">The ball; null if there is none.</param>
/// <param name="Refusal">Why there is none; empty if there is one.</param>
public sealed record PouredRow(double Weight, PouredBall? Poured, string Refusal);
