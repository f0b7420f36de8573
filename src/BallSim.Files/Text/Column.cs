namespace BallSim.Files.Text;

/// <summary>
/// One column of a table for machines: its name with the unit in it, and its value in a row: a number, a text, or nothing.
/// </summary>
internal sealed record Column<T>(string Name, Func<T, object?> Value);
