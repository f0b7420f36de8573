using System.Globalization;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>
/// Where the grip goes relative to pin and mass-bias mark, by three numbers: the arc from the pin to the bowler's positive axis point, an
/// angle at the pin
/// and an angle at that point.
/// </summary>
public readonly record struct Layout
{
    /// <summary>A layout from its three numbers.</summary>
    /// <param name="pinToAxis">Arc from the pin to the positive axis point, m; 0.01 to 13.5 in, and less than half the circumference of
    /// the ball.</param>
    /// <param name="angleAtPin">Angle at the pin, rad; -180 to 180 degrees, usually 0 to 90.</param>
    /// <param name="angleAtAxis">Angle at the positive axis point, rad; -180 to 180 degrees, usually 0 to 90.</param>
    public Layout(double pinToAxis, double angleAtPin, double angleAtAxis) =>
        (PinToAxis, AngleAtPin, AngleAtAxis) = (pinToAxis, angleAtPin, angleAtAxis);

    /// <summary>
    /// Arc from the pin to the positive axis point, m; 0.01 to 13.5 in. At zero and at half the circumference the arc has no direction,
    /// neither angle means
    /// anything, and the layout is refused.
    /// </summary>
    public double PinToAxis
    {
        get;
        init
        {
            Check.That(value != 0, "PinToAxis = 0: pin and axis point coincide, the arc between them has no direction and neither angle means anything; " +
                "lay such a ball out by plain positions", nameof(PinToAxis));
            field = Check.Range(value, 0.01 * Inch, 13.5 * Inch, Quantity.Length, nameof(PinToAxis));
        }
    }

    /// <summary>
    /// Angle at the pin from the arc pin → mass-bias mark to the arc pin → positive axis point, rad; counter-clockwise as seen from
    /// outside for a right-hander,
    /// clockwise for a left-hander.
    /// </summary>
    /// <remarks>
    /// Only the direction of the arc to the mark counts: a mark that is not a quarter circumference from the pin is projected on the
    /// tangent plane at the pin.
    /// Without a mark the arc pin → centre of gravity is the reference (common practice, no source); with neither, the ball is the same
    /// all round and the angle has
    /// no physical meaning: it is then counted from the y axis of the ball frame.
    /// </remarks>
    public double AngleAtPin { get; init => field = Check.Range(value, -Math.PI, Math.PI, Quantity.Angle, nameof(AngleAtPin)); }

    /// <summary>
    /// Angle at the positive axis point from the upper half of the vertical axis line (the great circle through that point square to the
    /// midline of the grip) to the
    /// arc towards the pin, rad; positive towards the grip for either hand.
    /// </summary>
    public double AngleAtAxis { get; init => field = Check.Range(value, -Math.PI, Math.PI, Quantity.Angle, nameof(AngleAtAxis)); }

    /// <summary>The three numbers in inches and degrees.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"pin to axis {PinToAxis / Inch:0.###} in, {AngleAtPin / Degree:0.#}° at the pin, {AngleAtAxis / Degree:0.#}° at the axis");
}
