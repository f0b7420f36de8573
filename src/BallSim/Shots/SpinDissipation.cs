namespace BallSim.Shots;

/// <summary>
/// What takes energy from a ball that spins on the spot. Several may act at once; the default is none, and then nothing migrates: the spin
/// axis goes round and round its closed polhode for ever. Migration to the preferred axis is the work of dissipation alone.
/// </summary>
/// <remarks>
/// <code>
/// inside      the rotor: c (ω_r - ω) on the ball, the opposite on a round rotor of moment J      total momentum constant
/// square      -p (ω - (ω·l^) l^), l^ the direction of the ball's momentum                         |momentum| constant
/// support     -c_h (ω - (ω·z) z) - c_v (ω·z) z, z up                                              momentum about z constant if c_v = 0
/// air         -a ω
/// slowing     -k L
/// </code>
/// The first three bring the spin to the axis of greatest inertia. The last two slow it down: with air it migrates in principle, but the
/// spin is gone long before one could see it; with slowing not at all, ω(t) = exp(-kt) ω_free((1 - exp(-kt))/k). Every coefficient is a fit
/// to one support and one ball; no published values were found. Flaw: all are proportional to the spin, but a
/// real support rubs dry, and more or less with the load and the place under the ball. Source: Bloch, Krishnaprasad, Marsden and Ratiu, Commun. Math. Phys. 175 (1996) 1; the rotor
/// after Chernousko (from memory).
/// </remarks>
public sealed record SpinDissipation
{
    private static readonly Quantity Viscous = Quantity.Of("N m s");

    /// <summary>No dissipation: nothing migrates.</summary>
    public static SpinDissipation None { get; } = new();

    /// <summary>Coupling c of a viscous rotor inside the ball, N m s, 0 to 100; needs <see cref="RotorMoment"/>.</summary>
    public double RotorCoupling { get; init => field = Check.Range(value, 0, 100, Viscous, nameof(RotorCoupling)); }

    /// <summary>
    /// Moment of inertia J of the rotor, a round body turning freely about the ball's centre of mass, kg m², 0 to 100; it comes on top of
    /// the ball's own tensor and turns with the ball at first.
    /// </summary>
    public double RotorMoment { get; init => field = Check.Range(value, 0, 100, Quantity.Inertia, nameof(RotorMoment)); }

    /// <summary>Coefficient p of the torque against the part of ω square to the momentum, N m s, 0 to 100.</summary>
    public double SquareToMomentum { get; init => field = Check.Range(value, 0, 100, Viscous, nameof(SquareToMomentum)); }

    /// <summary>Coefficient a of the air's torque -a ω, N m s, 0 to 100.</summary>
    public double Air { get; init => field = Check.Range(value, 0, 100, Viscous, nameof(Air)); }

    /// <summary>Rate k of the torque -k L, 1/s, 0 to 100.</summary>
    public double Slowing { get; init => field = Check.Range(value, 0, 100, Quantity.Of("1/s"), nameof(Slowing)); }

    /// <summary>
    /// Coefficient c_h of the support under the ball against the level part of ω, N m s, 0 to 100: there the contact rubs. The support is
    /// taken to hold the ball in place and to push through its centre of mass.
    /// </summary>
    public double SupportLevel { get; init => field = Check.Range(value, 0, 100, Viscous, nameof(SupportLevel)); }

    /// <summary>
    /// Coefficient c_v of the support against the upright part of ω, N m s, 0 to 100: there the contact only pivots, so that it is small.
    /// </summary>
    public double SupportUpright { get; init => field = Check.Range(value, 0, 100, Viscous, nameof(SupportUpright)); }

    /// <summary>
    /// True if any of the parts acts that bring the spin to the preferred axis in the time of a test: rotor, square part, support against
    /// the level part.
    /// </summary>
    public bool Migrates => RotorCoupling > 0 || SquareToMomentum > 0 || SupportLevel > 0;

    /// <summary>True if the spin is slowed at all, or brought to another axis.</summary>
    public bool Acts => Migrates || Air > 0 || Slowing > 0 || SupportUpright > 0;

    /// <summary>The parts that act, with their coefficients.</summary>
    public override string ToString()
    {
        List<string> parts = [];
        void Part(string name, double value, string unit)
        {
            if (value > 0)
            {
                parts.Add($"{name} {Check.Text(value)} {unit}");
            }
        }
        Part("rotor coupling", RotorCoupling, $"N m s on {Check.Text(RotorMoment)} kg m²");
        Part("square to momentum", SquareToMomentum, "N m s");
        Part("support level", SupportLevel, "N m s");
        Part("support upright", SupportUpright, "N m s");
        Part("air", Air, "N m s");
        Part("slowing", Slowing, "1/s");
        return parts.Count == 0 ? "no dissipation" : string.Join(", ", parts);
    }
}
