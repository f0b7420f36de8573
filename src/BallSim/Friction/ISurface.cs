using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>
/// What the lane's surface does to the ball: a value at the place (the film, or a given coefficient), and the coefficient of friction from the value and the slip speed. They are apart
/// because the oil on the cover adds to the film between the two.
/// </summary>
internal interface ISurface<T>
    where T : struct, IReal<T>
{
    /// <summary>Whether the lane's slope varies with the place; a constant of the type, so that a lane of one slope asks for nothing at run time.</summary>
    static abstract bool HasSlopes { get; }

    /// <summary>∂h/∂x and ∂h/∂y of the lane's height at a place; asked only where <see cref="HasSlopes"/>.</summary>
    void Slopes(T x, T y, out T across, out T along);

    /// <summary>Reads one row of the map, the one a step from y down-lane lies in, until told otherwise; answers where the row ends, +∞ if nowhere.</summary>
    T Enter(T y);

    /// <summary>Whether no value and no slope jumps from row to row: what was seen at the end of one is what the next begins with.</summary>
    bool Joins { get; }

    /// <summary>Looks the row up at every evaluation again: for steps in time, which may leave a row.</summary>
    void Roam();

    /// <summary>The lane's film h_L in m, or the given coefficient.</summary>
    T Value(T x, T y);

    /// <summary>The law of film and slip; no law that could be asked on a lane of given friction.</summary>
    FilmLaw<T> Law { get; }

    /// <summary>h_c, the film that is drawn into the contact where the film h is offered to it, m; zero on a lane of given friction.</summary>
    T FilmInContact(T film);

    /// <summary>µ, from the film offered to the contact (or the given coefficient) and the slip speed in m/s; at rolling the slip is 0.</summary>
    T Friction(T value, T slip);

    /// <summary>The same, with <see cref="FilmInContact"/> of the film beside it, which the law works out anyway.</summary>
    T Friction(T value, T slip, out T inContact);

    /// <summary>The part of it that does not ask for the slip and can be begun before that is known: the share of the load on bare asperities, and the film in the contact, m; zero on a lane of given friction.</summary>
    T BareShare(T value, out T inContact);

    /// <summary>µ from what <see cref="BareShare"/> found for a value, and the slip speed.</summary>
    T Friction(T value, T bare, T inContact, T slip);
}
