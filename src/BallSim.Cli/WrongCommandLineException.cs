namespace BallSim.Cli;

/// <summary>The command line asks for something that is not there.</summary>
internal sealed class WrongCommandLineException(string message) : Exception(message);
