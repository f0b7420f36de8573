using BallSim.Spatial;

namespace BallSim.Tests.Integration;

/// <summary>
/// A number of twice the digits of a double, as the unevaluated sum of two (T. J. Dekker, Numer. Math. 18 (1971) 224): the equations are
/// generic over the number type, and with some 30
/// digits the order of the method shows below the rounding of doubles.
/// </summary>
internal readonly struct Twice(double high, double low) : IReal<Twice>
{
    private readonly double high = high, low = low;

    public static implicit operator Twice(double value) => new(value, 0);

    public static explicit operator double(Twice a) => a.high + a.low;

    public static Twice operator +(Twice a, Twice b)
    {
        var sum = a.high + b.high;
        var part = sum - a.high;
        var error = a.high - (sum - part) + (b.high - part);
        return Sum(sum, error + a.low + b.low);
    }

    public static Twice operator -(Twice a) => new(-a.high, -a.low);

    public static Twice operator -(Twice a, Twice b) => a + -b;

    public static Twice operator *(Twice a, Twice b)
    {
        var product = a.high * b.high;
        return Sum(product, Math.FusedMultiplyAdd(a.high, b.high, -product) + (a.high * b.low + a.low * b.high));
    }

    public static Twice operator /(Twice a, Twice b)
    {
        Twice first = a.high / b.high;
        var rest = a - first * b;
        Twice second = rest.high / b.high;
        rest -= second * b;
        return first + second + rest.high / b.high;
    }

    public static Twice Fma(Twice a, Twice b, Twice c) => a * b + c;

    public static Twice Sqrt(Twice a)
    {
        if (a.high == 0)
        {
            return a;
        }
        // One Newton step doubles the digits of a double's root.
        Twice root = Math.Sqrt(a.high);
        return root + (a - root * root) / (2.0 * root);
    }

    public static Twice Abs(Twice a) => a.high < 0 ? -a : a;

    public static Twice Min(Twice a, Twice b) => (a - b).high < 0 ? a : b;

    public static Twice Max(Twice a, Twice b) => (a - b).high < 0 ? b : a;

    public static Twice IfLess(Twice a, Twice b, Twice then, Twice otherwise) => (a - b).high < 0 ? then : otherwise;

    public static Twice Sliver => 1e-9;

    public static bool Any(Twice flag) => flag.high > 0;

    public static Twice InverseCubeRootGuess(Twice a) => Math.Pow(a.high, -1.0 / 3);

    public static Twice InverseFourthRootGuess(Twice a) => Math.Pow(a.high, -1.0 / 4);

    public static Twice InverseSixthRootGuess(Twice a) => Math.Pow(a.high, -1.0 / 6);

    public static Twice Coarse(Twice a) => (double)Real.Coarse(a.high);

    private static Twice Sum(double a, double b)
    {
        var sum = a + b;
        return new(sum, b - (sum - a));
    }
}
