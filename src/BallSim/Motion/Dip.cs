using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>What the fresh cover does at an instant of sliding, see <see cref="Dips{T}"/>. Rates are per unit of the independent variable.</summary>
internal struct Dip<T>
    where T : struct, IReal<T>
{
    /// <summary>How far the track shifts in a turn, in widths of the contact.</summary>
    public T Shift;

    /// <summary>The friction as it was taken less that of a fresh cover.</summary>
    public T Lost;

    /// <summary>Per unit of friction: acceleration, moment about Bcm, power.</summary>
    public T PushX, PushY, TurnX, TurnY, TurnZ, Work;

    /// <summary>Film on the lane, m; friction of a fresh cover; slip, m/s.</summary>
    public T Film, WhenFresh, Slip;

    /// <summary>Seconds, and area of lane swept by the contact.</summary>
    public T Scale, Strip;

    /// <summary>The friction that is lost by not being fresh, as x (c1 + x (c2 + x c3)) of x = 1 - φ.</summary>
    public T Curve1, Curve2, Curve3;
}
