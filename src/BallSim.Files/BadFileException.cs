namespace BallSim.Files;

/// <summary>A file that cannot be used; the message says where in it and what would be right.</summary>
public sealed class BadFileException(string message) : IOException(message);
