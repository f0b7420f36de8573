namespace BallSim.Gpu;

/// <summary>Why a shot left its plain steps, or that it goes on.</summary>
internal enum Why
{
    /// <summary>Something rare: left to <see cref="Motion.Run{T,TSurface,TRecorder}"/>.</summary>
    Rare,

    /// <summary>Slip comes to its end.</summary>
    Sticks,

    /// <summary>An end of the run may be reached in the next step.</summary>
    MayEnd,

    /// <summary>In the next step of rolling the demand may pass the limit of grip.</summary>
    MaySlip,

    /// <summary>Rolling has come to the limit of grip, where slip begins.</summary>
    AtLimit,

    /// <summary>The row of the map just entered offers less grip than rolling asks.</summary>
    SlipsAtRow,

    /// <summary>Slip has come to its end, but rolling asks for more than the grip: it slips on at once.</summary>
    CannotRoll,

    /// <summary>Seen to; it goes on.</summary>
    Nothing,

    /// <summary>There is no shot.</summary>
    Waits,
}
