using System.Runtime.CompilerServices;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// What a look at the contact asks of the state inside an explicit step of which its slopes tell all: place, momentum, turn and film on the cover as <see cref="Dense{TState,T}.Between"/> has them, to the last bit, and nothing of the rest.
/// </summary>
internal static class Inside<T>
    where T : struct, IReal<T>
{
    /// <summary>At the fraction θ of a step of length h.</summary>
    // Not inlined: each of its callers would exceed what the compiler is willing to inline.
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void At(in Step<State<T>> s, T h, T θ, out State<T> y)
    {
        Unsafe.SkipInit(out y);
        Dense<State<T>, T>.Weights(h, θ, out var w1, out var w3, out var w4, out var w5, out var w6, out var w7);
        ref readonly var a = ref s.Start;
        ref readonly var k1 = ref s.K1;
        ref readonly var k3 = ref s.K3;
        ref readonly var k4 = ref s.K4;
        ref readonly var k5 = ref s.K5;
        ref readonly var k6 = ref s.K6;
        ref readonly var k7 = ref s.K7;
        y.X = T.Fma(w7, k7.X, T.Fma(w6, k6.X, T.Fma(w5, k5.X, T.Fma(w4, k4.X, T.Fma(w3, k3.X, T.Fma(w1, k1.X, a.X))))));
        y.Y = T.Fma(w7, k7.Y, T.Fma(w6, k6.Y, T.Fma(w5, k5.Y, T.Fma(w4, k4.Y, T.Fma(w3, k3.Y, T.Fma(w1, k1.Y, a.Y))))));
        y.MomentumX = T.Fma(w7, k7.MomentumX, T.Fma(w6, k6.MomentumX, T.Fma(w5, k5.MomentumX, T.Fma(w4, k4.MomentumX, T.Fma(w3, k3.MomentumX, T.Fma(w1, k1.MomentumX, a.MomentumX))))));
        y.MomentumY = T.Fma(w7, k7.MomentumY, T.Fma(w6, k6.MomentumY, T.Fma(w5, k5.MomentumY, T.Fma(w4, k4.MomentumY, T.Fma(w3, k3.MomentumY, T.Fma(w1, k1.MomentumY, a.MomentumY))))));
        y.MomentumZ = T.Fma(w7, k7.MomentumZ, T.Fma(w6, k6.MomentumZ, T.Fma(w5, k5.MomentumZ, T.Fma(w4, k4.MomentumZ, T.Fma(w3, k3.MomentumZ, T.Fma(w1, k1.MomentumZ, a.MomentumZ))))));
        y.TurnX = T.Fma(w7, k7.TurnX, T.Fma(w6, k6.TurnX, T.Fma(w5, k5.TurnX, T.Fma(w4, k4.TurnX, T.Fma(w3, k3.TurnX, T.Fma(w1, k1.TurnX, a.TurnX))))));
        y.TurnY = T.Fma(w7, k7.TurnY, T.Fma(w6, k6.TurnY, T.Fma(w5, k5.TurnY, T.Fma(w4, k4.TurnY, T.Fma(w3, k3.TurnY, T.Fma(w1, k1.TurnY, a.TurnY))))));
        y.TurnZ = T.Fma(w7, k7.TurnZ, T.Fma(w6, k6.TurnZ, T.Fma(w5, k5.TurnZ, T.Fma(w4, k4.TurnZ, T.Fma(w3, k3.TurnZ, T.Fma(w1, k1.TurnZ, a.TurnZ))))));
        y.CoverFilm = T.Fma(w7, k7.CoverFilm, T.Fma(w6, k6.CoverFilm, T.Fma(w5, k5.CoverFilm, T.Fma(w4, k4.CoverFilm, T.Fma(w3, k3.CoverFilm, T.Fma(w1, k1.CoverFilm, a.CoverFilm))))));
    }
}
