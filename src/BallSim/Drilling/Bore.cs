using System.Globalization;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>The size and the lean of one gripping hole; where it goes follows from the grip.</summary>
public readonly record struct Bore
{
    /// <summary>A hole by its measures.</summary>
    /// <param name="diameter">Width of the hole, m; 0.4 to 1.6 in.</param>
    /// <param name="depth">Depth along its axis, from where the axis meets the surface, m; 0.25 to 4 in.</param>
    /// <param name="forwardPitch">Distance by which the axis passes beside the centre of the ball, m; positive: the bottom leans towards
    /// the grip centre.</param>
    /// <param name="lateralPitch">The same sideways, m; positive: along the midline towards the side of the positive axis point.</param>
    public Bore(double diameter, double depth, double forwardPitch = 0, double lateralPitch = 0) =>
        (Diameter, Depth, ForwardPitch, LateralPitch) = (diameter, depth, forwardPitch, lateralPitch);

    /// <summary>Width of the hole, m; 0.4 to 1.6 in. Usual (from memory): thumb 7/8 to 1 1/4 in, fingers 31/32 to 1 1/16 in.</summary>
    public double Diameter { get; init => field = Check.Range(value, 0.4 * Inch, 1.6 * Inch, Quantity.Length, nameof(Diameter)); }

    /// <summary>
    /// Depth along the axis, from where the axis meets the surface, m; 0.25 to 4 in. Usual (from memory): thumb 2 1/2 to 3 1/4 in, fingers
    /// 1 1/4 to 2 1/4 in.
    /// </summary>
    public double Depth { get; init => field = Check.Range(value, 0.25 * Inch, 4 * Inch, Quantity.Length, nameof(Depth)); }

    /// <summary>
    /// Distance by which the axis passes beside the centre of the ball towards (positive, forward: the bottom leans towards the grip
    /// centre) or away from
    /// (negative, reverse) the grip centre, m; -1.5 to 1.5 in.
    /// </summary>
    public double ForwardPitch { get; init => field = Check.Range(value, -1.5 * Inch, 1.5 * Inch, Quantity.Length, nameof(ForwardPitch)); }

    /// <summary>
    /// Distance by which the axis passes beside the centre sideways, m; -1.5 to 1.5 in, positive along the midline towards the side of the
    /// positive axis point.
    /// </summary>
    public double LateralPitch { get; init => field = Check.Range(value, -1.5 * Inch, 1.5 * Inch, Quantity.Length, nameof(LateralPitch)); }

    /// <summary>The measures in inches.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Diameter / Inch:0.###} in wide, {Depth / Inch:0.###} in deep, pitch {ForwardPitch / Inch:0.###} in forward, {LateralPitch / Inch:0.###} in lateral");
}
