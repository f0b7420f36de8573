using BallSim.Files.Text;
using BallSim.Shots;

namespace BallSim.Files;

/// <summary>
/// The rows of a comparison as CSV, on the same line and re-aimed, in units of the trade, the unit in each column's name; what does not
/// exist is empty.
/// </summary>
public static class ComparisonCsv
{
    /// <summary>Writes the rows, replacing the file as a whole.</summary>
    /// <param name="path">The file.</param>
    /// <param name="rows">The rows, in the order they are to stand.</param>
    /// <exception cref="BadFileException">The file cannot be written.</exception>
    public static void Write(string path, IReadOnlyList<ComparisonRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        BoundedFile.Replace(path, stream => Columns.Csv(stream, ShotColumns.Comparison, rows));
    }
}
