using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>The moving part of a run between two steps: what must be kept of it where another driver goes on, in numbers alone.</summary>
internal struct Moving<T>
    where T : struct, IReal<T>
{
    /// <summary>State, the orientation it is relative to, and its slopes.</summary>
    public State<T> y, K1;
    public Quat<T> q;

    /// <summary>The next step in time, s; the error norm of the last; where the row of the map ends, m.</summary>
    public T dt, lastNorm, rowEnd;

    /// <summary>What was last seen of the contact: while sliding, while rolling.</summary>
    public Seen<T> Seen;
    public Dip<T> Dip;
    public Grip<T> Grip;

    public Tally<T> Tally;

    public int Steps, Rejected, Transitions;

    public Phase Phase;

    /// <summary>Flag: slip has just begun and is stiff. A step then begins with the slopes at its start, whatever was kept of them.</summary>
    public T Stiff;

    public Ending Ended;
}
