namespace BallSim.Spatial;

/// <summary>A number as an unevaluated sum of two doubles, about 32 digits: for the few differences that cancel.</summary>
/// <remarks>T. J. Dekker, Numer. Math. 18 (1971) 224, with fused multiply-add.</remarks>
internal readonly struct Exact(double high, double low)
{
    private readonly double high = high, low = low;

    public static implicit operator Exact(double a) => new(a, 0);

    public static explicit operator double(Exact a) => a.high + a.low;

    public static Exact operator +(Exact a, Exact b)
    {
        var s = a.high + b.high;
        var part = s - a.high;
        var rest = a.high - (s - part) + (b.high - part) + (a.low + b.low);
        return Sum(s, rest);
    }

    public static Exact operator -(Exact a, Exact b) => a + new Exact(-b.high, -b.low);

    public static Exact operator *(Exact a, Exact b)
    {
        var p = a.high * b.high;
        return Sum(p, Math.FusedMultiplyAdd(a.high, b.high, -p) + (a.high * b.low + a.low * b.high));
    }

    private static Exact Sum(double large, double small)
    {
        var s = large + small;
        return new(s, large - s + small);
    }
}
