using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>x = 1 - φ at the middles of twelve equal parts of a step, and sums over them. One shot looks at four of them side by side.</summary>
internal struct DipSums<T> : IFourfold
    where T : struct, IReal<T>
{
    private const int Samples = 12;

    private T x0, x1, x2, x3, x4, x5, x6, x7, x8, x9, x10, x11;

    /// <summary>Looks along a step with this shift of the track.</summary>
    public static void Over(in Quartic<T> shift, ref DipSums<T> x)
    {
        if (T.DoesFour(shift.C0, shift.C1, shift.C2, shift.C3, shift.C4, ref x))
        {
            return;
        }
        Three(shift, 0, ref x.x0, ref x.x1, ref x.x2);
        Three(shift, 3, ref x.x3, ref x.x4, ref x.x5);
        Three(shift, 6, ref x.x6, ref x.x7, ref x.x8);
        Three(shift, 9, ref x.x9, ref x.x10, ref x.x11);
    }

    public void Do(Doubles4 a, Doubles4 b, Doubles4 c, Doubles4 d, Doubles4 e)
    {
        var shift = new Quartic<Doubles4> { C0 = a, C1 = b, C2 = c, C3 = d, C4 = e };
        var r0 = FreshCover<Doubles4>.Begin(shift.At(Doubles4.Of(0.5 / Samples, 1.5 / Samples, 2.5 / Samples, 3.5 / Samples)), out var q0, out var b0);
        var r1 = FreshCover<Doubles4>.Begin(shift.At(Doubles4.Of(4.5 / Samples, 5.5 / Samples, 6.5 / Samples, 7.5 / Samples)), out var q1, out var b1);
        var r2 = FreshCover<Doubles4>.Begin(shift.At(Doubles4.Of(8.5 / Samples, 9.5 / Samples, 10.5 / Samples, 11.5 / Samples)), out var q2, out var b2);
        for (var i = 0; i < 2; i++)
        {
            Elementary<Doubles4>.CloserFourthRoot(b0, ref r0);
            Elementary<Doubles4>.CloserFourthRoot(b1, ref r1);
            Elementary<Doubles4>.CloserFourthRoot(b2, ref r2);
        }
        // One shot's numbers are doubles, four of them a vector.
        Doubles4 one = 1.0;
        ref var places = ref Unsafe.As<T, Doubles4>(ref x0);
        places = Doubles4.Fnma(q0, r0, one);
        Unsafe.Add(ref places, 1) = Doubles4.Fnma(q1, r1, one);
        Unsafe.Add(ref places, 2) = Doubles4.Fnma(q2, r2, one);
    }

    /// <summary>The mean of x.</summary>
    public readonly T Mean => (x0 + x1 + (x2 + x3) + (x4 + x5 + (x6 + x7)) + (x8 + x9 + (x10 + x11))) * (1.0 / Samples);

    /// <summary>The means over the step of the lost friction, whose curve goes in a line from that at the start to that at the end, and of it times the part of the step that is over and its square.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public readonly void Lost(in Dip<T> start, in Dip<T> end, out T whole, out T late, out T last)
    {
        T a1 = start.Curve1, a2 = start.Curve2, a3 = start.Curve3, b1 = end.Curve1 - a1, b2 = end.Curve2 - a2, b3 = end.Curve3 - a3;
        T w0 = 0.0, l0 = 0.0, s0 = 0.0, w1 = 0.0, l1 = 0.0, s1 = 0.0;
        Add(x0, 0.5 / Samples, a1, a2, a3, b1, b2, b3, ref w0, ref l0, ref s0);
        Add(x1, 1.5 / Samples, a1, a2, a3, b1, b2, b3, ref w1, ref l1, ref s1);
        Add(x2, 2.5 / Samples, a1, a2, a3, b1, b2, b3, ref w0, ref l0, ref s0);
        Add(x3, 3.5 / Samples, a1, a2, a3, b1, b2, b3, ref w1, ref l1, ref s1);
        Add(x4, 4.5 / Samples, a1, a2, a3, b1, b2, b3, ref w0, ref l0, ref s0);
        Add(x5, 5.5 / Samples, a1, a2, a3, b1, b2, b3, ref w1, ref l1, ref s1);
        Add(x6, 6.5 / Samples, a1, a2, a3, b1, b2, b3, ref w0, ref l0, ref s0);
        Add(x7, 7.5 / Samples, a1, a2, a3, b1, b2, b3, ref w1, ref l1, ref s1);
        Add(x8, 8.5 / Samples, a1, a2, a3, b1, b2, b3, ref w0, ref l0, ref s0);
        Add(x9, 9.5 / Samples, a1, a2, a3, b1, b2, b3, ref w1, ref l1, ref s1);
        Add(x10, 10.5 / Samples, a1, a2, a3, b1, b2, b3, ref w0, ref l0, ref s0);
        Add(x11, 11.5 / Samples, a1, a2, a3, b1, b2, b3, ref w1, ref l1, ref s1);
        T per = 1.0 / Samples;
        (whole, late, last) = (per * (w0 + w1), per * (l0 + l1), per * (s0 + s1));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add(T x, T θ, T a1, T a2, T a3, T b1, T b2, T b3, ref T whole, ref T late, ref T last)
    {
        var lost = x * T.Fma(x, T.Fma(x, T.Fma(θ, b3, a3), T.Fma(θ, b2, a2)), T.Fma(θ, b1, a1));
        var part = θ * lost;
        whole = whole + lost;
        late = late + part;
        last = T.Fma(θ, part, last);
    }

    // Three of them from one on: each is a long chain, and side by side in the code they fill each other's gaps. Six would, too, but for the numbers that no register is left for.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Three(in Quartic<T> shift, int first, ref T x0, ref T x1, ref T x2)
    {
        var r0 = FreshCover<T>.Begin(shift.At((first + 0.5) / Samples), out var q0, out var a0);
        var r1 = FreshCover<T>.Begin(shift.At((first + 1.5) / Samples), out var q1, out var a1);
        var r2 = FreshCover<T>.Begin(shift.At((first + 2.5) / Samples), out var q2, out var a2);
        for (var i = 0; i < 2; i++)
        {
            Elementary<T>.CloserFourthRoot(a0, ref r0);
            Elementary<T>.CloserFourthRoot(a1, ref r1);
            Elementary<T>.CloserFourthRoot(a2, ref r2);
        }
        T one = 1.0;
        x0 = T.Fnma(q0, r0, one);
        x1 = T.Fnma(q1, r1, one);
        x2 = T.Fnma(q2, r2, one);
    }
}
