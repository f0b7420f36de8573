namespace BallSim.Shots;

/// <summary>
/// What passes between lane and cover at one instant. With v_b = |v - s| the speed at which the contact runs over the cover, the ball takes off the lane, over a strip 2 r_c wide,
/// <code>
/// 2 r_c v_b (φ_s h_c - (1 - φ) h_B)                                     m³/s
/// </code>
/// The ring that the contact draws on the cover has the area A = 2 r_c · 2π v_b/|ω|, and with dh_B/dt = (|ω|/2π)(φ_s h_c - h_B) - k_abs h_B the same is
/// <code>
/// A dh_B/dt + k_abs A h_B + 2 r_c v_b φ h_B
/// </code>
/// gained by the ring, absorbed by the cover, left on rings that the contact has moved away from.
/// </summary>
internal readonly struct OilExchange
{
    /// <summary>A ball that hardly moves down-lane draws its strip across; the strip is cut along x at no more than this many times its width.</summary>
    public const double MostAcross = 10;

    /// <summary>The contact point, m, and half the width of its strip along x, m.</summary>
    public double X { get; init; }
    public double Y { get; init; }
    public double HalfStrip { get; init; }

    /// <summary>Taken off the lane, m³/s; below zero: laid down.</summary>
    public double FromLane { get; init; }

    /// <summary>A, m².</summary>
    public double Ring { get; init; }

    /// <summary>k_abs A h_B and 2 r_c v_b φ h_B, m³/s.</summary>
    public double Absorbed { get; init; }
    public double LeftOnOldRings { get; init; }
}
