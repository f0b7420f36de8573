namespace BallSim.Drilling;

/// <summary>One place on the marking sheet.</summary>
/// <param name="Name">What is marked there.</param>
/// <param name="FromPin">Arc on the surface from the pin, m.</param>
/// <param name="FromMassBias">Arc on the surface from the mass-bias mark, m; null on a ball without one.</param>
/// <param name="Side">
/// Side of the line from pin to mark, going that way and seen from outside, on which the place lies; null on the line or without a mark.
/// </param>
public readonly record struct MarkingArc(string Name, double FromPin, double? FromMassBias, Hand? Side);
