using BallSim.Spatial;

namespace BallSim.Tests.Spatial;

public class JacobiEllipticTests
{
    // m1 = 1 - m, u; K, sn, cn, dn, ∫ dv/(1 + 3 sn² v): mpmath 40 digits (ellipk, ellipfun, quad), an implementation by theta series and
    // quadrature.
    [Theory]
    [InlineData(0.5, 0.7, 1.8540746773013719184, 0.62434009096621737623, 0.78115264245363428956, 0.89727349532132492713, 0.5212342500794991163)]
    [InlineData(0.9, 1.2, 1.6124413487202193982, 0.92401196987938541842, 0.38236354365919580207, 0.95635777194100418594, 0.69196277219153766226)]
    [InlineData(1e-3, 2.0, 4.8411325605502970303, 0.96423296393829188407, 0.26505620395451358505, 0.2668043036825341885, 0.94642767741232822349)]
    [InlineData(1e-3, 4.5, 4.8411325605502970303, 0.99993952491587367701, 0.010997568413828845004, 0.033478733018228587856, 1.5780968952301093093)]
    [InlineData(1e-10, 6, 12.899219826387599535, 0.99998771167579156416, 0.0049574688515370248722, 0.0049574789370709562918, 1.9534475369259485215)]
    [InlineData(1e-10, 12.5, 12.899219826387599535, 0.9999999999915987295, 4.0990902658388324451e-6, 0.000010807522426801362689, 3.578449840947569366)]
    [InlineData(1, 1.1, 1.5707963267948966192, 0.89120736006143533995, 0.45359612142557738777, 1, 0.66080092591691039777)]
    public void Values_agree_to_rounding(double m1, double u, double k, double sn, double cn, double dn, double third)
    {
        Relative(k, JacobiElliptic.QuarterPeriod(m1));
        var got = JacobiElliptic.InQuarter(u, m1);
        Relative(sn, got.Sn);
        // Around half a quarter period cn and dn are about the fourth root of m1, the cosine of an angle known to its last bit.
        Relative(cn, got.Cn, 1e-13);
        Relative(dn, got.Dn, 1e-13);
        // So are the integrals, given those two.
        Relative(third, JacobiElliptic.Third(u, 3, got.Sn, got.Cn, got.Dn), 1e-13);
        Relative(u, JacobiElliptic.First(got.Sn, got.Cn, m1), 1e-13);
    }

    [Fact]
    public void The_separatrix_is_hyperbolic()
    {
        var (sn, cn, dn) = JacobiElliptic.InQuarter(2, 0);
        Assert.Equal((Math.Tanh(2), 1 / Math.Cosh(2), 1 / Math.Cosh(2)), (sn, cn, dn));
        // The limit is reached smoothly: m1 = 1e-14 differs by terms of that order times sinh cosh.
        var near = JacobiElliptic.InQuarter(2, 1e-14);
        Assert.Equal(sn, near.Sn, 1e-12);
        Assert.Equal(dn, near.Dn, 1e-12);
    }

    private static void Relative(double expected, double actual, double within = 4e-15) =>
        Assert.True(Math.Abs(actual / expected - 1) <= within, $"expected {expected:R}, got {actual:R}, off by {actual / expected - 1:E1}");
}
