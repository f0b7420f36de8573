using System.Globalization;
using static BallSim.Units;

namespace BallSim.Balls;

/// <summary>How far the marks of a made ball lie from the axes that they stand for, beside the tolerances of the governing body.</summary>
public sealed record MarkCheck
{
    /// <summary>Farthest that the pin may lie from the axis of lowest radius of gyration: 1 in (USBC release 2012).</summary>
    public const double PinTolerance = 1 * Inch;

    /// <summary>Farthest that the mass-bias mark may lie from the axis of highest radius of gyration: 1.5 in (USBC release 2012).</summary>
    public const double MassBiasTolerance = 1.5 * Inch;

    private MarkCheck()
    {
    }

    /// <summary>Arc on the surface from the pin to the nearer end of the axis of lowest radius of gyration, m.</summary>
    public required double PinToLowAxis { get; init; }

    /// <summary>Arc from the mass-bias mark to the nearer end of the axis of highest radius of gyration, m; null without a mark.</summary>
    public double? MassBiasToHighAxis { get; init; }

    /// <summary>Whether the pin lies within its tolerance.</summary>
    public bool PinIsWithin => PinToLowAxis <= PinTolerance;

    /// <summary>Whether the mass-bias mark lies within its tolerance; null without a mark.</summary>
    public bool? MassBiasIsWithin => MassBiasToHighAxis is { } arc ? arc <= MassBiasTolerance : null;

    /// <summary>The marks of a ball against a tensor that was measured on it.</summary>
    /// <param name="ball">The ball with its marks, undrilled.</param>
    /// <param name="measured">The tensor about the centre of mass in the same frame; only its axes count.</param>
    public static MarkCheck Of(Ball ball, InertiaTensor measured)
    {
        ArgumentNullException.ThrowIfNull(ball);
        var p = measured.Principal;
        return new()
        {
            PinToLowAxis = ball.Radius * Angle(ball.Marks.Pin, p.Least),
            MassBiasToHighAxis = ball.Marks.MassBias is { } mark ? ball.Radius * Angle(mark, p.Greatest) : null,
        };
    }

    /// <summary>
    /// Angle from the mass-bias mark to where a spin test settled, rad, 0 to π/2: an axis has no end of its own.
    /// </summary>
    /// <param name="ball">The ball with its mark.</param>
    /// <param name="settled">Direction in the ball frame about which it settled; any length but zero.</param>
    /// <exception cref="ArgumentException">The ball has no mass-bias mark.</exception>
    public static double SettledFromMark(Ball ball, Vector3D settled) => ball.Marks.MassBias is { } mark
        ? Angle(mark, Check.Direction(settled, nameof(settled)))
        : throw new ArgumentException("the ball has no mass-bias mark to compare the settling point with", nameof(ball));

    /// <summary>The distances in inches, with the tolerances.</summary>
    public override string ToString()
    {
        static string Line(string name, double arc, double limit) => string.Create(CultureInfo.InvariantCulture,
            $"{name} {arc / Inch:F2} in from its axis ({(arc <= limit ? "within" : "beyond")} {limit / Inch:0.##} in)");
        return Line("pin", PinToLowAxis, PinTolerance) + (MassBiasToHighAxis is { } arc ? "; " + Line("mass-bias mark", arc, MassBiasTolerance) : "");
    }

    private static double Angle(Vector3D mark, Vector3D axis) => mark.AngleTo(axis) is var angle && angle > Math.PI / 2 ? Math.PI - angle : angle;
}
