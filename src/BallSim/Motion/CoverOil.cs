using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>The oil on the cover over a whole step, for tolerances at which the stages of a step leave it alone (<see cref="Body{T}.HasDips"/>): the rates of <see cref="CoverContact{T}.Rates"/> with the lane's film and the fresh fraction at their means.</summary>
internal static class CoverOil<T>
    where T : struct, IReal<T>
{
    /// <summary>Brings the film on the cover and the oil taken from the start of a step to its end.</summary>
    /// <param name="body">Of the ball.</param>
    /// <param name="surface">The lane.</param>
    /// <param name="film">On the lane, its mean over the step, m.</param>
    /// <param name="bare">1 - φ, its mean over the step.</param>
    /// <param name="strip">Area of lane swept by the contact, m².</param>
    /// <param name="start">The state at the start.</param>
    /// <param name="end">That at the end.</param>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Carry<TSurface>(in Body<T> body, ref TSurface surface, T film, T bare, T strip, in State<T> start, ref State<T> end)
        where TSurface : struct, ISurface<T>
    {
        T one = 1.0, half = 0.5, tiny = 1e-30;
        var held = start.CoverFilm;
        var turns = end.Revolutions - start.Revolutions;
        var loss = (end.Time - start.Time) * body.Absorption;
        var clean = body.PickUp * surface.FilmInContact(film);
        var taken = body.PickUp * surface.FilmInContact(T.Fma(bare, held, film));
        // How much of what is held is taken again.
        var again = (taken - clean) / T.Max(held, tiny);
        // What is held goes exponentially to its balance: (1 - e^-b)/b = 1/(1 + b (1/2 + b/12)), but for b⁴/720.
        var rate = T.Fma(turns, one - again, loss);
        var part = T.Fma(rate, 1.0 / 12, half);
        var gain = T.Fms(turns, taken - held, loss * held) / T.Fma(rate, part, one);
        end.CoverFilm = held + gain;
        var mean = part * gain;
        end.OilTaken = T.Fma(strip, T.Fma(again, mean, taken) - bare * (held + mean), start.OilTaken);
    }
}
