using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>
/// The friction law µ(h, s) of film h and slip speed s:
/// </summary>
/// <remarks>
/// <code>
/// (F1)  h   = h_L + (1 - φ) h_B                    the oil offered to the contact; the caller adds it up
/// (F2)  h_c = h / √(1 + (h/h_ff)²)                 starved film (after Chevalier et al. 1998)
/// (F3)  h_s = c_s · 1.25 √(Ra_ball² + Ra_lane²) + h_p
/// (F4)  l = h_c/h_s,  w = 1 + l √l,  X = w^(-4/3)  share of the load on bare asperities
/// (F5)  z = η s / ((h_c + h_g) p_c)                viscous shear stress over mean pressure
/// (F6)  µ_f = µ_0 + µ_L z/(µ_L + z)
/// (F7)  µ = µ_d X + µ_f (1 - X)
/// </code>
/// (F5) and (F6) are evaluated together as µ_0 + µ_L (η/p_c) s / (µ_L (h_c + h_g) + (η/p_c) s), one division fewer. No iteration, no power, no exponential; C1 in h, at h = 0 too
/// (where it is not C2). A film below zero, which only rounding or a plane for study yields, counts as none.
/// </remarks>
internal readonly struct FilmLaw<T>
    where T : struct, IReal<T>
{
    private readonly T perFloodedFilm;
    private readonly T perFilmScale;
    private readonly T dry;
    private readonly T floor;
    private readonly T ceiling;
    private readonly T ceilingGap;
    private readonly T shear;
    private readonly T ceilingShear;

    public FilmLaw(Contact contact, FrictionCalibration calibration)
    {
        calibration.CheckWhole();
        perFloodedFilm = 1 / contact.FloodedFilm(calibration.EntrainmentSpeed);
        perFilmScale = 1 / contact.FilmScale(calibration.FilmScale);
        dry = calibration.Dry;
        floor = calibration.Floor;
        ceiling = calibration.ViscousCeiling;
        ceilingGap = calibration.ViscousCeiling * calibration.GapFloor;
        shear = contact.Viscosity / contact.MeanPressure;
        ceilingShear = ceiling * shear;
    }

    /// <summary>The law with numbers of its own in place of the calibration's and the contact's: those that a fit moves. h_ff goes as η^0.64, and <paramref name="perFloodedFilm"/> is its inverse at η.</summary>
    public FilmLaw(Contact contact, FrictionCalibration calibration, T dry, T floor, T filmScale, T perFloodedFilm, T viscosity)
        : this(contact, calibration)
    {
        (this.dry, this.floor, this.perFloodedFilm) = (dry, floor, perFloodedFilm);
        T one = 1.0;
        perFilmScale = one / filmScale;
        shear = viscosity / contact.MeanPressure;
        ceilingShear = ceiling * shear;
    }

    /// <summary>h_c (F2) for a film h ≥ 0, m.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T FilmInContact(T film)
    {
        // The root and the division side by side: √a/a for 1/√a.
        T one = 1.0, ratio = film * perFloodedFilm;
        var a = T.Fma(ratio, ratio, one);
        return film * (one / a) * T.Sqrt(a);
    }

    /// <summary>µ (F7) for the film h offered to the contact, m, and the slip speed s ≥ 0, m/s.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Friction(T film, T slip) => Friction(film, slip, out _);

    /// <summary>The same, and h_c (F2) on the way.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Friction(T film, T slip, out T inContact)
    {
        var bare = BareShare(film, out inContact);
        return Friction(bare, inContact, slip);
    }

    /// <summary>X (F4), the share of the load on bare asperities, for the film h offered to the contact, m, and h_c (F2): what does not ask for the slip.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T BareShare(T film, out T inContact)
    {
        inContact = FilmInContact(T.Max(film, 0.0));
        var l = inContact * perFilmScale;
        return Elementary<T>.InverseFourThirdsPower(T.Fma(l, T.Sqrt(l), 1.0));
    }

    /// <summary>µ (F7) for a share X and a film h_c in the contact, m, and the slip speed s ≥ 0, m/s.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Friction(T bare, T inContact, T slip)
    {
        // X comes last, at the end of its chain of roots.
        var lubricated = floor + ceilingShear * slip / T.Fma(shear, slip, T.Fma(ceiling, inContact, ceilingGap));
        return T.Fma(bare, dry - lubricated, lubricated);
    }
}
