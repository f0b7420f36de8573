using System.Globalization;
using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>
/// What a driller would measure on the finished ball with a tape and an angle gauge: arcs on the surface in m and angles in rad, from the
/// marks alone. Angles that
/// have no meaning on that ball are null.
/// </summary>
public sealed record LayoutMeasures
{
    private LayoutMeasures()
    {
    }

    /// <summary>Arc from the pin to the positive axis point, m.</summary>
    public required double PinToAxis { get; init; }

    /// <summary>
    /// Angle at the pin from its reference (see <see cref="Layout.AngleAtPin"/>) to the positive axis point, rad; null where pin and axis
    /// point coincide or are opposite.
    /// </summary>
    public required double? AngleAtPin { get; init; }

    /// <summary>Angle at the positive axis point from the vertical axis line to the pin, rad; null as above.</summary>
    public required double? AngleAtAxis { get; init; }

    /// <summary>Arc from the mass-bias mark to the positive axis point, m; null on a ball without the mark.</summary>
    public required double? MassBiasToAxis { get; init; }

    /// <summary>Arc from the pin to the grip centre, m.</summary>
    public required double PinToGripCentre { get; init; }

    /// <summary>Arc from the grip centre to the positive axis point, m.</summary>
    public required double GripCentreToAxis { get; init; }

    /// <summary>Height of the pin over the midline of the grip, as an arc square to it, m; negative below.</summary>
    public required double PinAboveMidline { get; init; }

    /// <summary>
    /// Distance of the pin from the vertical axis line, as an arc square to it, m; positive towards the grip; null where the axis point is
    /// the pole of the midline.
    /// </summary>
    public required double? PinToVerticalLine { get; init; }

    /// <summary>Radius of gyration about the positive axis, m.</summary>
    public required double RgAboutAxis { get; init; }

    /// <summary>The measures of a drilled ball.</summary>
    /// <exception cref="ArgumentException">The ball is not drilled.</exception>
    public static LayoutMeasures Of(Ball ball)
    {
        var marks = ball.Marks;
        if (marks is not { GripCentre: { } grip, GripUp: { } gripUp, PositiveAxis: { } axis })
        {
            throw new ArgumentException("the ball has no grip and positive axis point to measure from; drill it first", nameof(ball));
        }
        var pin = marks.Pin;
        double Arc(Vector3D a, Vector3D b) => ball.Radius * a.AngleTo(b);
        var side = marks.Hand == Hand.Right ? 1 : -1;
        // The vertical axis line at the axis point: from there towards the pole of the midline.
        var upAtAxis = Sphere.Towards(axis, gripUp);
        var toPin = Sphere.Towards(axis, pin);
        var toAxis = Sphere.Towards(pin, axis);
        return new()
        {
            PinToAxis = Arc(pin, axis),
            AngleAtPin = toAxis is { } a ? side * Sphere.Angle(pin, DrilledBalls.ReferenceAtPin(ball), a) : null,
            AngleAtAxis = toPin is { } p && upAtAxis is { } u ? side * Sphere.Angle(axis, u, p) : null,
            MassBiasToAxis = marks.MassBias is { } m ? Arc(m, axis) : null,
            PinToGripCentre = Arc(pin, grip),
            GripCentreToAxis = Arc(grip, axis),
            PinAboveMidline = ball.Radius * Math.Asin(Math.Clamp(pin.Dot(gripUp), -1, 1)),
            PinToVerticalLine = upAtAxis is { } v ? side * ball.Radius * Math.Asin(Math.Clamp(pin.Dot(axis.Cross(v)), -1, 1)) : null,
            RgAboutAxis = ball.RgAbout(axis),
        };
    }

    /// <summary>The measures in inches and degrees.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"pin to axis {PinToAxis / Inch:F3} in, angle at the pin {Angle(AngleAtPin)}, angle at the axis {Angle(AngleAtAxis)}, " +
        $"pin to grip centre {PinToGripCentre / Inch:F3} in, pin above the midline {PinAboveMidline / Inch:F3} in, " +
        $"pin to the vertical axis line {Arc(PinToVerticalLine)}, mark to axis {Arc(MassBiasToAxis)}, " +
        $"grip centre to axis {GripCentreToAxis / Inch:F3} in, RG about the axis {RgAboutAxis / Inch:F3} in");

    private static string Arc(double? arc) => arc is { } a ? string.Create(CultureInfo.InvariantCulture, $"{a / Inch:F3} in") : "undefined";

    private static string Angle(double? angle) => angle is { } a ? string.Create(CultureInfo.InvariantCulture, $"{a / Degree:F1}°") : "undefined";
}
