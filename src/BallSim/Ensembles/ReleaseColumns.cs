namespace BallSim.Ensembles;

/// <summary>
/// Releases as columns, for programs that hold them so: one list for each number of <see cref="Releases.Release"/>, in its units and ranges, all of one length. What is not given is the same for all: the release passed
/// beside the columns. The lists (arrays will do) are read, not copied.
/// </summary>
public sealed record ReleaseColumns
{
    /// <summary>Board at the foul line.</summary>
    public IReadOnlyList<double>? Board { get; init; }

    /// <summary>Launch angle, rad.</summary>
    public IReadOnlyList<double>? LaunchAngle { get; init; }

    /// <summary>Speed, m/s.</summary>
    public IReadOnlyList<double>? Speed { get; init; }

    /// <summary>Spin rate, rad/s.</summary>
    public IReadOnlyList<double>? SpinRate { get; init; }

    /// <summary>Axis rotation, rad.</summary>
    public IReadOnlyList<double>? AxisRotation { get; init; }

    /// <summary>Axis tilt, rad.</summary>
    public IReadOnlyList<double>? AxisTilt { get; init; }

    /// <summary>Loft, m.</summary>
    public IReadOnlyList<double>? Loft { get; init; }

    /// <summary>Roll phase, rad.</summary>
    public IReadOnlyList<double>? RollPhase { get; init; }

    /// <summary>How many releases there are.</summary>
    /// <exception cref="ArgumentException">The columns have different lengths, or there is none.</exception>
    public int Count
    {
        get
        {
            var count = -1;
            foreach (var (column, name) in Named)
            {
                if (column is null)
                {
                    continue;
                }
                Check.That(count < 0 || count == column.Count, $"{name} has {column.Count} numbers, a column before it {count}: all columns of releases must have the same length", name);
                count = column.Count;
            }
            Check.That(count >= 0, "there is no column: give at least one, such as Speed", nameof(ReleaseColumns));
            return count;
        }
    }

    private (IReadOnlyList<double>? Column, string Name)[] Named =>
    [
        (Board, nameof(Board)), (LaunchAngle, nameof(LaunchAngle)), (Speed, nameof(Speed)), (SpinRate, nameof(SpinRate)),
        (AxisRotation, nameof(AxisRotation)), (AxisTilt, nameof(AxisTilt)), (Loft, nameof(Loft)), (RollPhase, nameof(RollPhase)),
    ];

    /// <summary>Which numbers have a column.</summary>
    public override string ToString() => string.Join(", ", new (string Name, object? Column)[] { ("board", Board), ("launch angle", LaunchAngle), ("speed", Speed), ("spin rate", SpinRate), ("axis rotation", AxisRotation), ("axis tilt", AxisTilt), ("loft", Loft), ("roll phase", RollPhase) }.Where(c => c.Column is not null).Select(c => c.Name));
}
