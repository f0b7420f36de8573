namespace BallSim.Files;

/// <summary>A corner of the outline of a turned piece; from the one before to this goes a straight line, or an arc through a third point.</summary>
/// <param name="Along">Height along the axis, m; -1 to 1.</param>
/// <param name="Off">Distance from the axis, m; 0 to 1.</param>
public readonly record struct OutlinePoint(double Along, double Off)
{
    /// <summary>A point of the arc that leads here, height along the axis and distance from it, m; null for a straight line.</summary>
    public (double Along, double Off)? Through { get; init; }
}
