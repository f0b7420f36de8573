using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Spatial;
using static BallSim.Units;
using static System.FormattableString;

namespace BallSim.Friction;

/// <summary>
/// The numbers of the friction law that belong neither to the ball nor to the lane. Most are assumed: lubrication theory with literature values alone gives less friction in oil than
/// is measured (about 0.04, literature), and <see cref="Floor"/> together with the drag of the air makes up for it. A calibration from tracked shots replaces <see cref="Dry"/>, <see cref="Floor"/> and <see cref="FilmScale"/>.
/// </summary>
/// <remarks>Floor + ViscousCeiling must stay below Dry; that is checked where the law is made, because a <c>with</c> may set them one after the other.</remarks>
public sealed record FrictionCalibration
{
    private readonly double dry = 0.20;
    private readonly double floor = 0.020;
    private readonly double viscousCeiling = 0.08;
    private readonly double filmScale = 1;
    private readonly double gapFloor = 0.25e-6;
    private readonly double entrainmentSpeed = 6.5;
    private readonly double pickUp = 0.5;

    /// <summary>The default numbers.</summary>
    public static FrictionCalibration Default { get; } = new();

    /// <summary>µ_d, friction of the dry contact, a number in [0.01, 1]; 0.20, from the literature (0.12 to 0.32), to be fitted. The rules allow at most 0.320 in the laboratory (USBC manual 2012).</summary>
    public double Dry
    {
        get => dry;
        init => dry = Check.Range(value, 0.01, 1, Quantity.Number, nameof(Dry));
    }

    /// <summary>µ_0, floor of the friction in oil, a number in [0, 0.5]; 0.020, assumed (0 to 0.04), to be fitted.</summary>
    public double Floor
    {
        get => floor;
        init => floor = Check.Range(value, 0, 0.5, Quantity.Number, nameof(Floor));
    }

    /// <summary>µ_L, ceiling of the viscous part, a number in [0.001, 0.5]; 0.08, assumed (0.03 to 0.08).</summary>
    public double ViscousCeiling
    {
        get => viscousCeiling;
        init => viscousCeiling = Check.Range(value, 0.001, 0.5, Quantity.Number, nameof(ViscousCeiling));
    }

    /// <summary>c_s, multiplier of the roughness part of the film scale, a number in [0.05, 20]; 1, to be fitted (0.5 to 3). Only the whole scale h_s can be identified from shots.</summary>
    public double FilmScale
    {
        get => filmScale;
        init => filmScale = Check.Range(value, 0.05, 20, Quantity.Number, nameof(FilmScale));
    }

    /// <summary>h_g, the gap that remains sheared when the film is thin, m, 0.01 to 10 µm; 0.25 µm, assumed (0.1 to 0.5 µm).</summary>
    public double GapFloor
    {
        get => gapFloor;
        init => gapFloor = Check.Range(value, 0.01e-6, 10e-6, Quantity.Film, nameof(GapFloor));
    }

    /// <summary>u_e, entrainment speed at which the flooded film is taken, m/s, 0.1 to 20; 6.5, assumed: typical of a shot and held constant, for the film depends on it but weakly where it is starved.</summary>
    public double EntrainmentSpeed
    {
        get => entrainmentSpeed;
        init => entrainmentSpeed = Check.Range(value, 0.1, 20, Quantity.Speed, nameof(EntrainmentSpeed));
    }

    /// <summary>
    /// The law itself: the coefficient of friction of a ball on a lane, a number, for a film offered to the contact and a slip speed. It falls with the film and rises with slip, roughness and
    /// pores; in viscosity and modulus it is not monotone. A friction that the lane is given (<see cref="Lane.GivenFriction"/>) does not enter.
    /// </summary>
    /// <param name="ball">The ball: mass, radius, finish and cover enter.</param>
    /// <param name="lane">The lane: roughness, elasticity and the viscosity of its oil enter, its map does not.</param>
    /// <param name="film">Film of oil offered to the contact, m, 0 to 1 mm.</param>
    /// <param name="slip">Speed at which the ball's surface slips over the lane, m/s, 0 to 100; 0 in rolling.</param>
    public double Coefficient(Ball ball, Lane lane, double film, double slip) => Contact.Of(ball, lane).Law<Real>(this).Friction(
        Check.Range(film, 0, 1e-3, Quantity.Film),
        Check.Range(slip, 0, 100, Quantity.Speed));

    /// <summary>φ_s, share of the film in the contact that stays on the cover behind it, a number in [0, 1]; 0.5, assumed: the film splits evenly.</summary>
    public double PickUp
    {
        get => pickUp;
        init => pickUp = Check.Range(value, 0, 1, Quantity.Number, nameof(PickUp));
    }

    /// <summary>Refuses a lubricated contact that could grip better than a dry one: µ would then rise with oil.</summary>
    internal void CheckWhole() => Check.That(Floor + ViscousCeiling < Dry,
        $"Floor + ViscousCeiling = {Check.Text(Floor + ViscousCeiling)} is not below Dry = {Check.Text(Dry)}: oil would then grip better than the dry lane at high slip; lower Floor or ViscousCeiling, or raise Dry",
        nameof(FrictionCalibration));

    /// <summary>The numbers of the law.</summary>
    public override string ToString() => Invariant($"dry {Dry:G4}, floor {Floor:G4}, shear at most {ViscousCeiling:G4}, film scale {FilmScale:G4}, gap {GapFloor / Micrometre:G4} µm, ")
        + Invariant($"entrainment at {EntrainmentSpeed / MilesPerHour:G4} mph, picks up {PickUp:G4}");
}
