using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>The oil between cover and lane at an instant, and the friction that follows.</summary>
internal struct CoverContact<T>
    where T : struct, IReal<T>
{
    /// <summary>h_L, the lane's film (or the given coefficient).</summary>
    public T Film;

    /// <summary>φ, the fresh fraction of the cover under the contact.</summary>
    public T Fresh;

    /// <summary>How far the track shifts in a turn, in widths of the contact; μ of a fresh cover. Set where the track moves onto fresh cover.</summary>
    public T Shift, WhenFresh;

    /// <summary>(F2) h_c, the film drawn in, m; set where the cover carries oil.</summary>
    public T InContact;

    /// <summary>(F4) X, the share of the load on bare asperities, of a fresh cover.</summary>
    public T BareShare;

    /// <summary>μ.</summary>
    public T Friction;

    /// <summary>
    /// Sets the rates of the film on the cover and of the oil that leaves the lane, both times a scale. dh_B/dt = (|ω|/2π)(φ_s h_c - h_B) - k_abs h_B: every turn the cover takes its share of the film and gives
    /// back what it carried. Over a strip 2 r_c wide the lane loses (v_b/v)(φ_s h_c - (1 - φ) h_B) of its film, v_b the speed of the cover at the contact against the centre, v that of the centre: in m³/s the v cancels;
    /// negative where the cover gives back more than it takes. rates.Revolutions must be set.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public readonly void Rates(in Body<T> body, T coverFilm, T coverX, T coverY, T scale, ref State<T> rates)
    {
        var taken = body.PickUp * InContact;
        rates.CoverFilm = T.Fms(rates.Revolutions, taken - coverFilm, scale * body.Absorption * coverFilm);
        var speed = T.Sqrt(T.Fma(coverX, coverX, coverY * coverY));
        rates.OilTaken = scale * (body.ContactRadius + body.ContactRadius) * speed * T.Fma(Fresh - 1.0, coverFilm, taken);
    }
}
