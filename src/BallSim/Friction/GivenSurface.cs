using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>A given coefficient of friction, whatever the slip. Mutable in its row alone: pass it by reference.</summary>
internal struct GivenSurface<T, TMap>(TMap map) : ISurface<T>
    where T : struct, IReal<T>
    where TMap : struct, IMap<T>
{
    public TMap Map = map;

    public static bool HasSlopes => false;

    public readonly void Slopes(T x, T y, out T across, out T along) => across = along = 0.0;

    public T Enter(T y) => Map.Enter(y);

    public readonly bool Joins => Map.Joins;

    public void Roam() => Map.Roam();

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Value(T x, T y) => Map.At(x, y);

    public readonly FilmLaw<T> Law => default;

    public readonly T FilmInContact(T film) => 0.0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Friction(T value, T slip) => value;

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
