using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>The mean of 1 - φ over a step, and that of it times the part of the step that is over, at the middles of eight equal parts: roughly, to foresee a step by. Each is the sum of four, over every fourth of the parts: one shot does those side by side.</summary>
internal struct BareSums<T> : IFourfold
    where T : struct, IReal<T>
{
    private const int Samples = 8;

    public T Mean, Late;

    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Over(in Quartic<T> shift, out BareSums<T> sums)
    {
        Unsafe.SkipInit(out sums);
        if (T.DoesFour(shift.C0, shift.C1, shift.C2, shift.C3, shift.C4, ref sums))
        {
            return;
        }
        // A loop: a card fetches what is written out four times as often.
        sums.Mean = sums.Late = 0.0;
        for (var i = 0; i < 4; i++)
        {
            var part = EveryFourth(shift, (i + 0.5) / Samples);
            sums.Mean = sums.Mean + part.Mean;
            sums.Late = sums.Late + part.Late;
        }
    }

    public void Do(Doubles4 a, Doubles4 b, Doubles4 c, Doubles4 d, Doubles4 e)
    {
        var s = BareSums<Doubles4>.EveryFourth(new Quartic<Doubles4> { C0 = a, C1 = b, C2 = c, C3 = d, C4 = e }, Doubles4.Of(0.5 / Samples, 1.5 / Samples, 2.5 / Samples, 3.5 / Samples));
        (Mean, Late) = (s.Mean.Sum, s.Late.Sum);
    }

    private static BareSums<T> EveryFourth(in Quartic<T> shift, T first)
    {
        T θ1 = first + 4.0 / Samples, per = 1.0 / Samples, one = 1.0;
        var r0 = FreshCover<T>.Begin(shift.At(first), out var q0, out var a0);
        var r1 = FreshCover<T>.Begin(shift.At(θ1), out var q1, out var a1);
        for (var i = 0; i < 2; i++)
        {
            Elementary<T>.CloserFourthRoot(a0, ref r0);
            Elementary<T>.CloserFourthRoot(a1, ref r1);
        }
        T x0 = one - q0 * r0, x1 = one - q1 * r1;
        BareSums<T> s;
        s.Mean = per * (x0 + x1);
        s.Late = per * T.Fma(θ1, x1, first * x0);
        return s;
    }
}
