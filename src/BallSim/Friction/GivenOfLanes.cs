using System.Runtime.CompilerServices;
using BallSim.Lanes;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>A given coefficient of friction under several shots at a time.</summary>
internal struct GivenOfLanes<T>(PiecewiseBicubic map) : ISurfaceOfLanes<T, GivenSurface<Real, MapOfReal>>
    where T : struct, ILanes<T>, IReal<T>
{
    private MapOfLanes<T> map = new(map);

    public readonly void SetLane(int lane, in GivenSurface<Real, MapOfReal> one)
    {
        // The map is all there is, and it is the same for all.
    }

    public double Enter(int lane, double y) => map.Enter(lane, y);

    public static bool HasSlopes => false;

    public readonly void Slopes(T x, T y, out T across, out T along) => across = along = 0.0;

    public T Enter(T y) => map.Enter(y);

    public readonly bool Joins => map.Joins;

    public void Roam() => map.Roam();

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Value(T x, T y) => map.At(x, y);

    public readonly FilmLaw<T> Law => default;

    public readonly T FilmInContact(T film) => 0.0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Friction(T value, T slip) => value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Friction(T value, T slip, out T inContact)
    {
        inContact = 0.0;
        return value;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T BareShare(T value, out T inContact) => inContact = 0.0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T Friction(T value, T bare, T inContact, T slip) => value;
}
