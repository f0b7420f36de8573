using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>A film of oil and the law of film and slip. Mutable in its row alone: pass it by reference.</summary>
internal struct FilmSurface<T, TMap>(FilmLaw<T> law, TMap map) : ISurface<T>
    where T : struct, IReal<T>
    where TMap : struct, IMap<T>
{
    public TMap Map = map;

    public FilmLaw<T> Law = law;

    readonly FilmLaw<T> ISurface<T>.Law => Law;

    public static bool HasSlopes => false;

    public readonly void Slopes(T x, T y, out T across, out T along) => across = along = 0.0;

    public T Enter(T y) => Map.Enter(y);

    public readonly bool Joins => Map.Joins;

    public void Roam() => Map.Roam();

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Value(T x, T y) => Map.At(x, y);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T FilmInContact(T film) => Law.FilmInContact(T.Max(film, 0.0));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Friction(T value, T slip) => Law.Friction(value, slip);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Friction(T value, T slip, out T inContact) => Law.Friction(value, slip, out inContact);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T BareShare(T value, out T inContact) => Law.BareShare(value, out inContact);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Friction(T value, T bare, T inContact, T slip) => Law.Friction(bare, inContact, slip);
}
