namespace BallSim.Files.Text;

/// <summary>A line of a <see cref="NumberTable"/>: its number in the file, its name, its values in SI in the order of <paramref name="Columns"/>, NaN where there is none.</summary>
internal sealed record NumberRow(int Line, string Text, string[] Columns, double[] Values)
{
    /// <summary>The value of a column, or null where it is not there.</summary>
    public double? this[string column] => Array.IndexOf(Columns, column) is >= 0 and var at && !double.IsNaN(Values[at]) ? Values[at] : null;
}
