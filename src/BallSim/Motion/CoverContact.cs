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

    /// <summary>(F1) h, the film offered, and (F2) h_c, the film drawn in, m; set where the cover carries oil.</summary>
    public T Offered, InContact;

    /// <summary>μ.</summary>
    public T Friction;

    /// <summary>dh_B/dt = (|ω|/2π)(φ_s h_c - h_B) - k_abs h_B: every turn the cover takes its share of the film and gives back what it carried.</summary>
    public readonly T Rate(in Body<T> body, Vec3<T> ω, T coverFilm)
    {
        T zero = 0.0;
        if (!body.HasCoverOil)
        {
            return zero;
        }
        var turns = T.Sqrt(ω.Dot(ω)) * (1 / (2 * Math.PI));
        return T.Fma(turns, T.Fma(body.PickUp, InContact, -coverFilm), -(body.Absorption * coverFilm));
    }
}
