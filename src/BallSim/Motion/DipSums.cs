using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// Sums of x^k θ^j over a step, k = 1 to 3 and j = 0 to 3 in that order in the names, of x = 1 - φ and the part θ of the step that is over, at the middles of <see cref="Samples"/> equal parts. Each is the sum of four, over every fourth of
/// the parts: one shot does those side by side.
/// </summary>
internal struct DipSums<T> : IFourfold
    where T : struct, IReal<T>
{
    public const int Samples = 12;

    public T X10, X11, X12, X13, X20, X21, X22, X23, X30, X31, X32, X33;

    /// <summary>The sums for a shift of c0 + θ (c1 + θ (c2 + θ (c3 + θ c4))).</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Over(T c0, T c1, T c2, T c3, T c4, out DipSums<T> sums)
    {
        Unsafe.SkipInit(out sums);
        if (T.DoesFour(c0, c1, c2, c3, c4, ref sums))
        {
            return;
        }
        Unsafe.SkipInit(out DipSums<T> part);
        sums.EveryFourth(c0, c1, c2, c3, c4, 0.5 / Samples);
        part.EveryFourth(c0, c1, c2, c3, c4, 1.5 / Samples);
        sums.Add(part);
        part.EveryFourth(c0, c1, c2, c3, c4, 2.5 / Samples);
        sums.Add(part);
        part.EveryFourth(c0, c1, c2, c3, c4, 3.5 / Samples);
        sums.Add(part);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Do(Doubles4 a, Doubles4 b, Doubles4 c, Doubles4 d, Doubles4 e)
    {
        Unsafe.SkipInit(out DipSums<Doubles4> s);
        s.EveryFourth(a, b, c, d, e, Doubles4.Of(0.5 / Samples, 1.5 / Samples, 2.5 / Samples, 3.5 / Samples));
        X10 = s.X10.Sum;
        X11 = s.X11.Sum;
        X12 = s.X12.Sum;
        X13 = s.X13.Sum;
        X20 = s.X20.Sum;
        X21 = s.X21.Sum;
        X22 = s.X22.Sum;
        X23 = s.X23.Sum;
        X30 = s.X30.Sum;
        X31 = s.X31.Sum;
        X32 = s.X32.Sum;
        X33 = s.X33.Sum;
    }

    // This and the next are not inlined: four copies of them in one method exceed what the compiler is willing to inline, and every sum becomes a call.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Add(in DipSums<T> part)
    {
        X10 = X10 + part.X10;
        X11 = X11 + part.X11;
        X12 = X12 + part.X12;
        X13 = X13 + part.X13;
        X20 = X20 + part.X20;
        X21 = X21 + part.X21;
        X22 = X22 + part.X22;
        X23 = X23 + part.X23;
        X30 = X30 + part.X30;
        X31 = X31 + part.X31;
        X32 = X32 + part.X32;
        X33 = X33 + part.X33;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void EveryFourth(T c0, T c1, T c2, T c3, T c4, T first)
    {
        T θ0 = first, θ1 = first + 4.0 / Samples, θ2 = first + 8.0 / Samples;
        T x0 = Bare(c0, c1, c2, c3, c4, θ0), x1 = Bare(c0, c1, c2, c3, c4, θ1), x2 = Bare(c0, c1, c2, c3, c4, θ2);
        T y0 = x0 * x0, y1 = x1 * x1, y2 = x2 * x2, z0 = y0 * x0, z1 = y1 * x1, z2 = y2 * x2;
        T square0 = θ0 * θ0, square1 = θ1 * θ1, square2 = θ2 * θ2, cube0 = square0 * θ0, cube1 = square1 * θ1, cube2 = square2 * θ2;
        X10 = x0 + x1 + x2;
        X11 = T.Fma(θ2, x2, T.Fma(θ1, x1, θ0 * x0));
        X12 = T.Fma(square2, x2, T.Fma(square1, x1, square0 * x0));
        X13 = T.Fma(cube2, x2, T.Fma(cube1, x1, cube0 * x0));
        X20 = y0 + y1 + y2;
        X21 = T.Fma(θ2, y2, T.Fma(θ1, y1, θ0 * y0));
        X22 = T.Fma(square2, y2, T.Fma(square1, y1, square0 * y0));
        X23 = T.Fma(cube2, y2, T.Fma(cube1, y1, cube0 * y0));
        X30 = z0 + z1 + z2;
        X31 = T.Fma(θ2, z2, T.Fma(θ1, z1, θ0 * z0));
        X32 = T.Fma(square2, z2, T.Fma(square1, z1, square0 * z0));
        X33 = T.Fma(cube2, z2, T.Fma(cube1, z1, cube0 * z0));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Bare(T c0, T c1, T c2, T c3, T c4, T θ)
    {
        T one = 1.0;
        return one - FreshCover<T>.Fraction(T.Fma(T.Fma(T.Fma(T.Fma(c4, θ, c3), θ, c2), θ, c1), θ, c0));
    }
}
