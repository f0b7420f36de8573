namespace BallSim.Ensembles;

/// <summary>The numbers an ensemble computes with.</summary>
public enum Precision
{
    /// <summary>Doubles: the steps of a shot by <see cref="Shots.Simulator"/> at the same options, to the last bit whatever the machine's vectors, the threads or the order.</summary>
    Double,

    /// <summary>
    /// Floats between events: twice the lanes, for tolerances of 1e-5 m and coarser. The places at the pins differ from those in doubles by some micrometres (6e-6 m at most over the 512 releases of the benchmark); a shot
    /// that just touches the pin, an edge or the limit of grip may take the other turn. A ball whose centre of mass is so far off that it may hop, and a shot that slips again and again, are thrown in doubles all the same: there a
    /// rounding would come back as another end.
    /// </summary>
    Single,
}
