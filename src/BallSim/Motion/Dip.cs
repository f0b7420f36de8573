using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>What the fresh fraction does at an instant of sliding, see <see cref="Dips{T}"/>. Rates are per unit of the independent variable.</summary>
internal struct Dip<T>
    where T : struct, IReal<T>
{
    /// <summary>How far the track shifts in a turn, in widths of the contact.</summary>
    public T Shift;

    /// <summary>The friction as it was taken less that of a fresh cover; 1 - φ as it was taken.</summary>
    public T Lost, Bare;

    /// <summary>Per unit of friction: acceleration, moment about Bcm, power.</summary>
    public T PushX, PushY, TurnX, TurnY, TurnZ, Work;

    /// <summary>Film on the lane and on the cover, m; friction of a fresh cover; slip, m/s.</summary>
    public T Film, CoverFilm, WhenFresh, Slip;

    /// <summary>Seconds, turns, and area of lane passed over.</summary>
    public T Scale, Turns, Strip;
}
