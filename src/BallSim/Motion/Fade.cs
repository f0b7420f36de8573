using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>How the slip comes to its end, see <see cref="Slide{T,TSurface}.Fading"/>.</summary>
internal struct Fade<T>
    where T : struct, IReal<T>
{
    /// <summary>Flags: slip below pivoting's own scale; next to none left.</summary>
    public T Creeps, Ends;

    /// <summary>Longest step of an explicit method, s; what part of the time that is left at the present rate a step may take.</summary>
    public T Stable, Cap;
}
