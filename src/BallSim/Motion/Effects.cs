namespace BallSim.Motion;

/// <summary>What acts on a ball beside weight, friction and drag.</summary>
[Flags]
internal enum Effects
{
    None = 0,

    /// <summary>The Magnus force.</summary>
    Lift = 1,

    /// <summary>Moments that grow with the normal force: rolling resistance, pivoting friction.</summary>
    SmallMoments = 2,

    /// <summary>Oil stays on the cover.</summary>
    CoverOil = 4,

    /// <summary>The track moves onto fresh cover.</summary>
    FreshCover = 8,

    /// <summary>The dips of the fresh fraction are left out of the stages of a step of sliding and made whole at its end, see <see cref="Dips{T}"/>; the oil on the cover is brought from end to end of a step, see <see cref="CoverOil{T}"/>.</summary>
    Dips = 16,

    /// <summary>With <see cref="Dips"/>: they are foreseen by the stages as well, and summed from the law itself.</summary>
    FineDips = 32,
}
