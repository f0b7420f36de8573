using System.Globalization;
using BallSim.Friction;

namespace BallSim.Shots;

/// <summary>How exactly a shot is computed, which of the small forces act, and when it ends at the latest. A value; change it by <c>with</c>.</summary>
public sealed record SimulatorOptions
{
    /// <summary>The defaults: path within 1e-6 m, air drag on, the other small forces off.</summary>
    public static SimulatorOptions Default { get; } = new();

    /// <summary>
    /// Tolerance of the path, m, 1e-13 to 1e-2; 1e-6. The error of the whole path is held to it on the release set of the benchmark (maximum, not mean); it is kept by experience, not a proven
    /// bound. On a lane with oil, where the track moves onto fresh cover, half of the same releases err by less than 1.2e-6 m at the default, nine of ten by less than 4.3e-6 m and the most sensitive by 5.5e-5 m.
    /// </summary>
    public double Tolerance
    {
        get;
        init => field = Check.Range(value, 1e-13, 1e-2, Quantity.Length, nameof(Tolerance));
    } = 1e-6;

    /// <summary>
    /// Air drag ½ ρ C_d π R² |v| v against the velocity of the centre. At 8 m/s it equals a friction of 0.0106, a quarter of the friction in oil: leave it on.
    /// Neglected: the effect of spin on the drag.
    /// </summary>
    public bool AirDrag { get; init; } = true;

    /// <summary>Drag coefficient of a smooth sphere at the Reynolds numbers of a lane, a number in [0, 2]; 0.5 (handbook value below the drag crisis, from memory).</summary>
    public double DragCoefficient
    {
        get;
        init => field = Check.Range(value, 0, 2, Quantity.Number, nameof(DragCoefficient));
    } = 0.5;

    /// <summary>Magnus force C_L π R² ρ/2 · R ω × v. Off: its size is uncertain (C_L 1 is the inviscid order of magnitude), and it moves the ball by less than the drag does.</summary>
    public bool MagnusForce { get; init; }

    /// <summary>Lift coefficient of the Magnus force, a number in [0, 2]; 1, assumed.</summary>
    public double LiftCoefficient
    {
        get;
        init => field = Check.Range(value, 0, 2, Quantity.Number, nameof(LiftCoefficient));
    } = 1;

    /// <summary>Rolling resistance, a moment c_rr N R against the horizontal part of the spin. Off: less than a tenth of a board at the pins.</summary>
    public bool RollingResistance { get; init; }

    /// <summary>c_rr, a number in [0, 0.1]; 0.0006, assumed.</summary>
    public double RollingResistanceCoefficient
    {
        get;
        init => field = Check.Range(value, 0, 0.1, Quantity.Number, nameof(RollingResistanceCoefficient));
    } = 0.0006;

    /// <summary>
    /// Pivoting friction: the moment of a contact spot that turns about the normal, and the grip that the turning takes from sliding. Off: less than a tenth of a board. Its
    /// contact radius is that of Hertz under the ball's weight.
    /// </summary>
    public bool PivotingFriction { get; init; }

    /// <summary>
    /// The cover picks up oil and carries it round to the contact, h_B. On. Off: every turn meets a wiped cover. Neglected: oil that runs along the cover, and rings older than one turn.
    /// </summary>
    public bool CoverOil { get; init; } = true;

    /// <summary>
    /// Track flare brings fresh cover under the contact, which carries no oil. On. Off: the cover is never fresh, as if the ball did not flare at all: many boards. It matters only with <see cref="CoverOil"/>.
    /// </summary>
    public bool FreshCover { get; init; } = true;

    /// <summary>The numbers of the friction law that belong neither to ball nor lane alone.</summary>
    public FrictionCalibration Friction { get; init; } = new();

    /// <summary>Time after which the shot is ended, s, 0.001 to 3600; 30.</summary>
    public double MaxTime
    {
        get;
        init => field = Check.Range(value, 1e-3, 3600, Quantity.Time, nameof(MaxTime));
    } = 30;

    /// <summary>Steps, accepted and rejected, after which the shot is ended, 10 to 100 million; 200 000. A shot at the default tolerance takes some hundreds, one that slips again many times on oil a thousand and more.</summary>
    public int MaxSteps
    {
        get;
        init => field = (int)Check.Range(value, 10, 100_000_000, Quantity.Number, nameof(MaxSteps));
    } = 200_000;

    /// <summary>Changes between sliding and rolling after which the shot is ended, 1 to 100 000; 500. An ordinary shot changes 1 to 20 times.</summary>
    public int MaxTransitions
    {
        get;
        init => field = (int)Check.Range(value, 1, 100_000, Quantity.Number, nameof(MaxTransitions));
    } = 500;

    /// <summary>The tolerance, and what acts.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"path within {Tolerance:0.#E+0} m; ") + string.Join(", ", new (bool On, string What)[]
    {
        (AirDrag, "drag"), (MagnusForce, "Magnus force"), (RollingResistance, "rolling resistance"), (PivotingFriction, "pivoting friction"), (CoverOil, "oil on the cover"), (CoverOil && FreshCover, "fresh cover"),
    }.Where(force => force.On).Select(force => force.What).DefaultIfEmpty("no small forces"));
}
