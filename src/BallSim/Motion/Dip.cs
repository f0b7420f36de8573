using BallSim.Integration;
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

    /// <summary>To foresee the next dip, where <see cref="Body{T}.HasFineDips"/>: first and second derivative of the shift by time, 1/s and 1/s²; the square of the angular velocity; the friction that the last dips lost for each part of the cover that was not fresh.</summary>
    public T Rise, Bend, Swing, Depth;

    /// <summary>From what was seen at the start of a step and here, at its last stage, to its end: in a line.</summary>
    public void ToEnd(in Dip<T> start)
    {
        T on = 1 / RungeKutta5.Place6 - 1;
        PushX = T.Fma(on, PushX - start.PushX, PushX);
        PushY = T.Fma(on, PushY - start.PushY, PushY);
        TurnX = T.Fma(on, TurnX - start.TurnX, TurnX);
        TurnY = T.Fma(on, TurnY - start.TurnY, TurnY);
        TurnZ = T.Fma(on, TurnZ - start.TurnZ, TurnZ);
        Work = T.Fma(on, Work - start.Work, Work);
        Film = T.Fma(on, Film - start.Film, Film);
        WhenFresh = T.Fma(on, WhenFresh - start.WhenFresh, WhenFresh);
        Slip = T.Fma(on, Slip - start.Slip, Slip);
        Scale = T.Fma(on, Scale - start.Scale, Scale);
        Strip = T.Fma(on, Strip - start.Strip, Strip);
        Curve1 = T.Fma(on, Curve1 - start.Curve1, Curve1);
        Curve2 = T.Fma(on, Curve2 - start.Curve2, Curve2);
        Curve3 = T.Fma(on, Curve3 - start.Curve3, Curve3);
    }
}
