namespace BallSim.Lanes;

/// <summary>
/// Where the pins stand and how wide they are. The head pin stands at (0, <see cref="Lane.Length"/>); a shot ends where the ball first touches it, the pin
/// taken as a cylinder of its belly's radius (the ball meets it about 0.2 in below the belly, where it is a little thinner). Pins never move here.
/// </summary>
public static class PinDeck
{
    /// <summary>Greatest diameter of a pin, 4.766 in, m. Source: USBC.</summary>
    public const double BellyDiameter = 4.766 * Units.Inch;

    /// <summary>Height of the belly over the deck, 4.5 in, m. Source: USBC.</summary>
    public const double BellyHeight = 4.5 * Units.Inch;

    /// <summary>Distance between the centres of neighbouring pins, 12 in, m. Source: USBC.</summary>
    public const double Spacing = 12 * Units.Inch;
}
