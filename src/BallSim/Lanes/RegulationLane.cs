namespace BallSim.Lanes;

/// <summary>The measures of the lane that the rules fix; the one place they stand. Source: USBC, as quoted in the project's table of facts.</summary>
internal static class RegulationLane
{
    /// <summary>41.5 in (± 0.5 in), m.</summary>
    public const double Width = 41.5 * Units.Inch;

    /// <summary>Foul line to head pin, 60 ft (± ½ in), m.</summary>
    public const double Length = 60 * Units.Foot;

    /// <summary>The tolerance of <see cref="Length"/>, m.</summary>
    public const double LengthTolerance = 0.5 * Units.Inch;

    /// <summary>The tolerance of <see cref="Width"/>, m.</summary>
    public const double WidthTolerance = 0.5 * Units.Inch;

    /// <summary>Boards across; the usual number, which the rules do not fix.</summary>
    public const int Boards = 39;

    /// <summary>x of a continuous board (1 is the centre of the rightmost board), m: W/2 - (b - ½) W/39.</summary>
    public static double PlaceOf(double board) => Width / 2 - (board - 0.5) * Width / Boards;
}
