namespace BallSim.Lanes;

/// <summary>
/// The shape of the lane's surface as two constant slopes. It acts as the force -m g grad h; the lane's normal stays vertical and height and curvature are
/// neglected, which costs a relative error of the order of the slope squared (1e-5 at the steepest slope that the rules let pass).
/// </summary>
/// <remarks>The rules allow 0.040 in of cross tilt over the lane's width, a slope of 0.001 (USBC).</remarks>
public sealed record Topography
{
    private Topography(double crossSlope, double lengthSlope) => (CrossSlope, LengthSlope) = (crossSlope, lengthSlope);

    /// <summary>A level lane.</summary>
    public static Topography Flat { get; } = new(0, 0);

    /// <summary>A lane tilted as a whole.</summary>
    /// <param name="crossSlope">dh/dx, a number in [-0.05, 0.05]; positive: the right side is higher.</param>
    /// <param name="lengthSlope">dh/dy, a number in [-0.05, 0.05]; positive: the pins are higher than the foul line.</param>
    public static Topography Tilted(double crossSlope, double lengthSlope = 0) => new(
        Check.Range(crossSlope, -Steepest, Steepest, Quantity.Number),
        Check.Range(lengthSlope, -Steepest, Steepest, Quantity.Number));

    /// <summary>dh/dx, a number; positive: the right side is higher.</summary>
    public double CrossSlope { get; }

    /// <summary>dh/dy, a number; positive: the pins are higher than the foul line.</summary>
    public double LengthSlope { get; }

    /// <summary>Both slopes are zero.</summary>
    public bool IsFlat => CrossSlope == 0 && LengthSlope == 0;

    // Beyond this the small-slope form is no longer good to 0.3 %; an inclined plane is better given by Lane.Gravity, which is exact.
    private const double Steepest = 0.05;
}
