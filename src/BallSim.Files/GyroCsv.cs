using BallSim.Files.Text;
using BallSim.Fitting;

namespace BallSim.Files;

/// <summary>The record of a gyroscope in the ball as CSV: time and three angular velocities in the sensor's axes, the unit of each in the header.</summary>
/// <example><code>
/// time [s],wx [rad/s],wy [rad/s],wz [rad/s]
/// 0.00,10.02,4.97,40.01
/// 0.01,9.98,5.15,39.99
/// </code></example>
public static class GyroCsv
{
    private const int LargestFile = 64 * 1024 * 1024;

    private static readonly (string Name, UnitKind? Kind)[] Known = [("time", UnitKind.Time), ("wx", UnitKind.SpinRate), ("wy", UnitKind.SpinRate), ("wz", UnitKind.SpinRate)];

    /// <summary>Reads a file of at most 64 MB.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="BadFileException">The file cannot be used; the message names file, line, column, value and what was expected.</exception>
    public static IReadOnlyList<GyroSample> Read(string path)
    {
        using var reader = TextFile.Opened(path, LargestFile);
        return Read(reader, path);
    }

    /// <summary>Reads a text.</summary>
    /// <param name="reader">The text; it is read to its end and not closed.</param>
    /// <param name="name">What error messages call it.</param>
    /// <exception cref="BadFileException">The text cannot be used; the message names line, column, value and what was expected.</exception>
    public static IReadOnlyList<GyroSample> Read(TextReader reader, string name)
    {
        var table = NumberTable.Read(reader, name, Known, text: null);
        foreach (var (column, _) in Known)
        {
            if (!table.Has(column))
            {
                throw BadFile.At(name, $"line {table.HeaderLine}", $"has no column \"{column}\"; expected time [s], wx [rad/s], wy [rad/s] and wz [rad/s]");
            }
        }
        List<GyroSample> samples = [];
        foreach (var row in table.Rows)
        {
            double Number(string column) => row[column] ?? throw BadFile.At(name, $"line {row.Line}, {column}", "is empty; a gyroscope's record has no gaps in a line");
            var time = Number("time");
            if (samples.Count > 0 && time <= samples[^1].Time)
            {
                throw BadFile.At(name, $"line {row.Line}, time", FormattableString.Invariant($"{time:G6} s is not later than {samples[^1].Time:G6} s before it"));
            }
            samples.Add(new(time, new(Number("wx"), Number("wy"), Number("wz"))));
        }
        return samples;
    }
}
