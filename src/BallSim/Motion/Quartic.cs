using System.Runtime.CompilerServices;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>What changes smoothly along a step, as c0 + θ (c1 + θ (c2 + θ (c3 + θ c4))) of the part θ of it that is over.</summary>
internal struct Quartic<T>
    where T : struct, IReal<T>
{
    public T C0, C1, C2, C3, C4;

    /// <summary>Through the value at the start of a step and those at four of its stages, the third to the sixth.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Through(T start, T third, T fourth, T fifth, T sixth, out Quartic<T> q)
    {
        q.C0 = start;
        q.C1 = T.Fma(start, -8.908329062843562, T.Fma(third, 21.79108548269617, T.Fma(fourth, -15.363286233969262, T.Fma(fifth, 5.37531986645206, sixth * -2.894790052335433))));
        q.C2 = T.Fma(start, 27.06143449900073, T.Fma(third, -106.77829276328555, T.Fma(fourth, 98.27879715567052, T.Fma(fifth, -41.0926938198493, sixth * 22.53075492846359))));
        q.C3 = T.Fma(start, -33.314411644120625, T.Fma(third, 161.7051705675775, T.Fma(fourth, -168.94123773623514, T.Fma(fifth, 93.53783755131032, sixth * -52.98735873853205))));
        q.C4 = T.Fma(start, 14.311274621067147, T.Fma(third, -77.80430485576771, T.Fma(fourth, 87.55020836963054, T.Fma(fifth, -60.87824576557015, sixth * 36.82106763064017))));
    }

    /// <summary>Through the values at both ends of a step and those at three of its stages, the third to the fifth.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Along(T start, T third, T fourth, T fifth, T end, out Quartic<T> q)
    {
        q.C0 = start;
        q.C1 = T.Fma(start, -8.783208633830467, T.Fma(third, 20.88473780369219, T.Fma(fourth, -14.091393158296484, T.Fma(fifth, 2.8241758706745936, end * -0.8343118822398334))));
        q.C2 = T.Fma(start, 26.08759609563752, T.Fma(third, -99.72399968280976, T.Fma(fourth, 88.37938798778545, T.Fma(fifth, -21.236607845769615, end * 6.49362344515642))));
        q.C3 = T.Fma(start, -31.024158832077717, T.Fma(third, 145.1150314759802, T.Fma(fourth, -145.66001406913287, T.Fma(fifth, 46.84070938173784, end * -15.271567956507448))));
        q.C4 = T.Fma(start, 12.719771370270664, T.Fma(third, -66.27576959686263, T.Fma(fourth, 71.37201923964392, T.Fma(fifth, -28.42827740664282, end * 10.612256393590863))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T At(T θ) => T.Fma(T.Fma(T.Fma(T.Fma(C4, θ, C3), θ, C2), θ, C1), θ, C0);

    /// <summary>The derivative by θ.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T SlopeAt(T θ) => T.Fma(T.Fma(T.Fma(4.0 * C4, θ, 3.0 * C3), θ, 2.0 * C2), θ, C1);

    /// <summary>That at the end of the step, and the second one there.</summary>
    public readonly T SlopeAtEnd => C1 + 2.0 * C2 + 3.0 * C3 + 4.0 * C4;

    public readonly T BendAtEnd => 2.0 * C2 + 6.0 * C3 + 12.0 * C4;
}
