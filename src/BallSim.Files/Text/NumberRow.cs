namespace BallSim.Files.Text;

/// <summary>A line of a <see cref="NumberTable"/>: its number in the file, its name, its values in SI.</summary>
internal sealed record NumberRow(int Line, string Text, IReadOnlyDictionary<string, double> Values)
{
    /// <summary>The value of a column, or null where it is not there.</summary>
    public double? this[string column] => Values.TryGetValue(column, out var value) ? value : null;
}
