namespace BallSim.Files;

/// <summary>A turn of a piece about the origin of its drawing, counter-clockwise as seen from the tip of the axis.</summary>
/// <param name="About">Axis in the drawing, of any length but zero.</param>
/// <param name="By">Angle, rad; -2π to 2π.</param>
public readonly record struct CoreTurn(Vector3D About, double By);
