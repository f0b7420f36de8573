using System.Globalization;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>When a spinning ball came within an angle of its preferred axis, or why it did not.</summary>
public sealed record Settling
{
    internal Settling()
    {
    }

    /// <summary>The angle asked for, rad.</summary>
    public required double Angle { get; init; }

    /// <summary>First time at which the spin axis is within the angle, s; null if never within the time computed.</summary>
    public required double? FirstWithin { get; init; }

    /// <summary>
    /// Time from which it stays within the angle up to the end of the time computed, s; null if it was outside at the end. The axis swings
    /// as it goes round its polhode, so this may be later than <see cref="FirstWithin"/>.
    /// </summary>
    public required double? WithinForGood { get; init; }

    /// <summary>Smallest angle to the preferred axis seen at the steps of the computation, rad.</summary>
    public required double Nearest { get; init; }

    /// <summary>What happened, as a sentence.</summary>
    public required string Reason { get; init; }

    /// <summary>The reason, with the angle.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"within {Angle / Degree:0.###} deg: {Reason}");
}
