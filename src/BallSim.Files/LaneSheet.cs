using BallSim.Lanes;

namespace BallSim.Files;

/// <summary>A lane of a scenario: the lane, and how its oil was described.</summary>
public sealed record LaneSheet
{
    /// <summary>A lane with its oil.</summary>
    /// <param name="name">What the lane is called.</param>
    /// <param name="lane">The lane; its own oil is replaced.</param>
    /// <param name="oil">The oil.</param>
    /// <exception cref="ArgumentException">The oil's numbers are out of range.</exception>
    public LaneSheet(string name, Lane lane, OilSheet oil)
    {
        ArgumentNullException.ThrowIfNull(lane);
        ArgumentNullException.ThrowIfNull(oil);
        (Name, Lane, Oil) = (name, lane with { Oil = oil.Built() }, oil);
    }

    /// <summary>What the lane is called.</summary>
    public string Name { get; }

    /// <summary>The lane, oiled.</summary>
    public Lane Lane { get; }

    /// <summary>The oil as described.</summary>
    public OilSheet Oil { get; }

    /// <summary>The file of the lane's measured surface, relative to the scenario's folder, or null for a lane that is level or tilted as a whole.</summary>
    public string? TopographyFile { get; init; }

    /// <summary>Name and lane.</summary>
    public override string ToString() => $"{Name}: {Lane}";
}
