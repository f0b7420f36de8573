using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>A surface under several shots at a time. Each lane has its own law and reads its own row of one map.</summary>
internal interface ISurfaceOfLanes<T, TOne> : ISurface<T>
    where T : struct, ILanes<T>, IReal<T>
    where TOne : struct, ISurface<Real>
{
    /// <summary>Gives a lane the surface of one shot, but for the row.</summary>
    void SetLane(int lane, in TOne one);

    /// <summary>As <see cref="ISurface{T}.Enter"/>, for one lane.</summary>
    double Enter(int lane, double y);
}
