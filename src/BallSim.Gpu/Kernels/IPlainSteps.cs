using BallSim.Friction;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>Plain steps of one phase, for a kernel to take.</summary>
internal interface IPlainSteps<T, TSurface>
    where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    /// <summary>True for sliding, false for rolling.</summary>
    static abstract bool Slide { get; }

    /// <summary>See <see cref="PlainSteps{T,TSurface}"/>.</summary>
    static abstract Why Take(ref Moving<T> shot, in Body<T> body, ref TSurface surface, in Bounds<T> bounds, in Control<T> control);
}

internal readonly struct Sliding<T, TSurface> : IPlainSteps<T, TSurface>
    where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    public static bool Slide => true;

    public static Why Take(ref Moving<T> shot, in Body<T> body, ref TSurface surface, in Bounds<T> bounds, in Control<T> control) => PlainSteps<T, TSurface>.Slide(ref shot, body, ref surface, bounds, control);
}

internal readonly struct Rolling<T, TSurface> : IPlainSteps<T, TSurface>
    where T : unmanaged, IDeviceReal<T>, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    public static bool Slide => false;

    public static Why Take(ref Moving<T> shot, in Body<T> body, ref TSurface surface, in Bounds<T> bounds, in Control<T> control) => PlainSteps<T, TSurface>.Roll(ref shot, body, ref surface, bounds, control);
}
