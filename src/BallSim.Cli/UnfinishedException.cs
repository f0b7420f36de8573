namespace BallSim.Cli;

/// <summary>What was asked for is right, and cannot be computed here.</summary>
internal sealed class UnfinishedException(string message, Exception inner) : Exception(message, inner);
