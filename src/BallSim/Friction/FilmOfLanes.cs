using System.Runtime.CompilerServices;
using BallSim.Lanes;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>A film of oil under several shots at a time.</summary>
internal struct FilmOfLanes<T>(PiecewiseBicubic map) : ISurfaceOfLanes<T, FilmSurface<Real, MapOfReal>>
    where T : struct, ILanes<T>, IReal<T>
{
    private FilmSurface<T, MapOfLanes<T>> surface = new(default, new(map));

    public void SetLane(int lane, in FilmSurface<Real, MapOfReal> one) => LaneCopy<T>.Set(ref surface.Law, lane, one.Law);

    public double Enter(int lane, double y) => surface.Map.Enter(lane, y);

    public static bool HasSlopes => false;

    public readonly void Slopes(T x, T y, out T across, out T along) => across = along = 0.0;

    public T Enter(T y) => surface.Enter(y);

    public readonly bool Joins => surface.Joins;

    public void Roam() => surface.Roam();

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Value(T x, T y) => surface.Value(x, y);

    public readonly FilmLaw<T> Law => surface.Law;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T FilmInContact(T film) => surface.FilmInContact(film);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Friction(T value, T slip) => surface.Friction(value, slip);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Friction(T value, T slip, out T inContact) => surface.Friction(value, slip, out inContact);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T BareShare(T value, out T inContact) => surface.BareShare(value, out inContact);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Friction(T value, T bare, T inContact, T slip) => surface.Friction(value, bare, inContact, slip);
}
