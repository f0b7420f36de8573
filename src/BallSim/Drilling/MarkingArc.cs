namespace BallSim.Drilling;

/// <summary>One place on the marking sheet.</summary>
/// <param name="Name">What is marked there.</param>
/// <param name="FromPin">Arc on the surface from the pin, m.</param>
/// <param name="FromMassBias">Arc on the surface from the mass-bias mark, m; null on a ball without one.</param>
/// <param name="Side">
/// Side of the line from pin to mark, going that way and seen from outside, on which the place lies; null on the line or without a mark.
/// </param>
public readonly record struct MarkingArc(string Name, double FromPin, double? FromMassBias, Hand? Side)
{
    /// <summary>The arcs in inches.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name}: {FromPin / Units.Inch:F2} in from the pin") + (FromMassBias is { } arc ? FormattableString.Invariant($", {arc / Units.Inch:F2} in from the mass bias") : "") + (Side is { } side ? $", {(side == Hand.Left ? "left" : "right")} of the line" : "");
}
