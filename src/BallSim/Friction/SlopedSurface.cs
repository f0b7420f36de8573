using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>A surface whose slope varies from place to place: what the ball touches, and the slopes beside it. Steps end on the rows of both.</summary>
internal struct SlopedSurface<T, TSurface, TSlopes>(TSurface surface, TSlopes slopes) : ISurface<T>
    where T : struct, IReal<T>
    where TSurface : struct, ISurface<T>
    where TSlopes : struct, ISlopes<T>
{
    private TSurface surface = surface;
    private TSlopes slopes = slopes;

    public static bool HasSlopes => true;

    public T Enter(T y) => T.Min(surface.Enter(y), slopes.Enter(y));

    public readonly bool Joins => surface.Joins && slopes.Joins;

    public void Roam()
    {
        surface.Roam();
        slopes.Roam();
    }

    public void Slopes(T x, T y, out T across, out T along) => slopes.At(x, y, out across, out along);

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
