using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>The lane under a kernel's shots: gives the surface for the law of one shot.</summary>
internal interface IGround<T, TSurface>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    TSurface Under(in FilmLaw<T> law);
}

/// <summary>How a lane is handed to a kernel.</summary>
internal interface IGroundOn<TSelf, T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
    where TSelf : struct, IGroundOn<TSelf, T>
{
    static abstract TSelf On(DeviceGrid<T> map, DeviceGrid<T> heights);
}

internal readonly struct GivenGround<T, TMap>(DeviceGrid<T> friction) : IGround<T, GivenSurface<T, TMap>>, IGroundOn<GivenGround<T, TMap>, T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
    where TMap : struct, IMapOn<TMap, T>
{
    private readonly DeviceGrid<T> friction = friction;

    public static GivenGround<T, TMap> On(DeviceGrid<T> map, DeviceGrid<T> heights) => new(map);

    public GivenSurface<T, TMap> Under(in FilmLaw<T> law) => new(TMap.On(friction));
}

internal readonly struct FilmGround<T, TMap>(DeviceGrid<T> film) : IGround<T, FilmSurface<T, TMap>>, IGroundOn<FilmGround<T, TMap>, T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
    where TMap : struct, IMapOn<TMap, T>
{
    private readonly DeviceGrid<T> film = film;

    public static FilmGround<T, TMap> On(DeviceGrid<T> map, DeviceGrid<T> heights) => new(map);

    public FilmSurface<T, TMap> Under(in FilmLaw<T> law) => new(law, TMap.On(film));
}

/// <summary>A ground with heights.</summary>
internal readonly struct SlopedGround<T, TGround, TSurface>(TGround ground, DeviceGrid<T> heights) : IGround<T, SlopedSurface<T, TSurface, DeviceSlopes<T>>>, IGroundOn<SlopedGround<T, TGround, TSurface>, T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
    where TGround : struct, IGround<T, TSurface>, IGroundOn<TGround, T>
    where TSurface : struct, ISurface<T>
{
    private readonly TGround ground = ground;
    private readonly DeviceGrid<T> heights = heights;

    public static SlopedGround<T, TGround, TSurface> On(DeviceGrid<T> map, DeviceGrid<T> heights) => new(TGround.On(map, heights), heights);

    public SlopedSurface<T, TSurface, DeviceSlopes<T>> Under(in FilmLaw<T> law) => new(ground.Under(law), new(heights));
}
