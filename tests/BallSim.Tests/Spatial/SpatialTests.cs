using BallSim.Spatial;

namespace BallSim.Tests.Spatial;

/// <summary>Vectors, rotations and tensors against plain definitions and against the mathematics library of the platform.</summary>
public class SpatialTests
{
    private static readonly Vec3<Real>[] Turns = [new(0, 0, 0), new(1e-9, 0, 0), new(0.1, -0.2, 0.3), new(1.5, 1, -1.2), new(-2.4, 0.5, 0.3), new(0, 0, 3.1)];

    private static double Off(Vec3<Real> a, Vec3<Real> b) => Math.Max(Math.Abs(a.X - b.X), Math.Max(Math.Abs(a.Y - b.Y), Math.Abs(a.Z - b.Z)));

    private static Quat<Real> Turn(Vec3<Real> θ) => new Quat<Real>(1, 0, 0, 0).Turned(θ);

    private static double Length(Vec3<Real> a) => Math.Sqrt(a.Dot(a));

    [Fact]
    public void Cosine_and_sine_of_half_a_turn_over_the_whole_range()
    {
        // To a turn of 4.2 rad the rounding of the last sum is all; beyond, the error grows to 3e-13 at 5 rad.
        for (var x = 0.0; x <= 2.5; x += 1 / 1024.0)
        {
            Elementary<Real>.HalfTurn(4 * x * x, out var cos, out var part);
            var within = 2 * x <= 4.2 ? 1e-15 : 6e-13;
            Assert.Equal(Math.Cos(x), cos, within);
            Assert.Equal(x == 0 ? 0.5 : Math.Sin(x) / (2 * x), part, within / 2);
        }
    }

    [Fact]
    public void Series_of_floats_are_shorter_and_good_to_their_rounding()
    {
        double half = 0, rate = 0;
        for (var x = 0.0; x <= 3.8; x += 1 / 256.0)
        {
            Elementary<Real>.HalfTurn(x * x, out var cos, out var part);
            Elementary<Floats8>.HalfTurn(x * x, out var roughCos, out var roughPart);
            half = Math.Max(half, Math.Max(Math.Abs(Floats8.Lane(roughCos, 5) - cos), 2 * Math.Abs(Floats8.Lane(roughPart, 5) - part)));
            rate = Math.Max(rate, x * x * Math.Abs(Floats8.Lane(Quat<Floats8>.TurnSeries(x * x), 5) - Quat<Real>.TurnSeries(x * x)));
        }
        Assert.InRange(half, 1e-9, 3e-7);
        Assert.InRange(rate, 1e-9, 5e-7);
    }

    [Fact]
    public void The_exponential_turns_about_the_axis_by_the_angle()
    {
        foreach (var θ in Turns)
        {
            // Rodrigues' formula.
            var angle = Length(θ);
            var axis = angle > 0 ? (1 / angle) * θ : θ;
            var v = new Vec3<Real>(0.3, -1.1, 0.7);
            var turned = Math.Cos(angle) * v + Math.Sin(angle) * axis.Cross(v) + (1 - Math.Cos(angle)) * axis.Dot(v) * axis;
            Assert.True(Off(turned, Turn(θ).Matrix() * v) < 3e-15);
        }
    }

    [Fact]
    public void A_product_is_one_rotation_after_the_other()
    {
        var v = new Vec3<Real>(0.3, -1.1, 0.7);
        foreach (var a in Turns.Select(Turn))
        {
            foreach (var b in Turns.Select(Turn))
            {
                Assert.True(Off((a * b).Matrix() * v, a.Matrix() * (b.Matrix() * v)) < 1e-14);
            }
        }
    }

    [Fact]
    public void A_matrix_is_orthogonal_keeps_the_hand_and_comes_back()
    {
        var v = new Vec3<Real>(0.3, -1.1, 0.7);
        foreach (var r in Turns.Select(θ => Turn(θ).Matrix()))
        {
            Assert.True(Off(r.Back(r * v), v) < 1e-15 * 4);
            Assert.Equal(1, (double)r.Row0.Cross(r.Row1).Dot(r.Row2), 1e-14);
        }
    }

    [Fact]
    public void Normalising_brings_the_length_to_one_and_keeps_the_rotation()
    {
        var q = Turn(new(0.4, -1, 2));
        var n = new Quat<Real>(1.001 * q.W, 1.001 * q.X, 1.001 * q.Y, 1.001 * q.Z).Normalised();
        Assert.Equal(q.W, n.W, 1e-15);
        Assert.Equal(q.Z, n.Z, 1e-15);
    }

    [Theory]
    // Turn in rad, and the error that the cut series may have there relative to |ω|; the difference quotient itself is good to some 1e-12.
    [InlineData(0.01, 1e-11)]
    [InlineData(0.5, 1e-11)]
    [InlineData(1.0, 1e-11)]
    [InlineData(2.5, 3e-8)]
    [InlineData(3.7, 3e-8)]
    public void The_rate_of_the_turn_vector_against_finite_differences(double size, double within)
    {
        // exp(θ(t)) q with θ' = TurnRate(θ, ω) must turn with ω: ω = the vector part of 2 q' q*, q' by a central difference of fourth
        // order.
        var θ = size * new Vec3<Real>(0.48, -0.6, 0.64);
        var ω = new Vec3<Real>(1.3, 0.4, -0.9);
        var rate = Quat<Real>.TurnRate(θ, ω);
        const double h = 1e-3;
        Quat<Real> At(double t) => Turn(Vec3<Real>.AddScaled(θ, t, rate));
        double Slope(Func<Quat<Real>, double> part) => (8 * (part(At(h)) - part(At(-h))) - (part(At(2 * h)) - part(At(-2 * h)))) / (12 * h);
        var q = At(0);
        var dq = new Quat<Real>(Slope(p => p.W), Slope(p => p.X), Slope(p => p.Y), Slope(p => p.Z));
        var product = dq * new Quat<Real>(q.W, -q.X, -q.Y, -q.Z);
        Assert.True(Off(new(2 * (double)product.X, 2 * (double)product.Y, 2 * (double)product.Z), ω) < within * Length(ω));
    }

    [Fact]
    public void The_inverse_of_a_tensor_undoes_it()
    {
        var s = new Sym3<Real>(0.0278, 0.0291, 0.0286, 1e-3, -2e-3, 1.5e-3);
        var v = new Vec3<Real>(0.3, -1.1, 0.7);
        Assert.True(Off(s.Inverse() * (s * v), v) < 1e-14);
        // By hand: [2 1 0; 1 2 0; 0 0 4] has the inverse [2 -1 0; -1 2 0; 0 0 3/4]/3.
        var inverse = new Sym3<Real>(2, 2, 4, 1, 0, 0).Inverse();
        Assert.Equal(2 / 3.0, inverse.Xx, 1e-15);
        Assert.Equal(-1 / 3.0, inverse.Xy, 1e-15);
        Assert.Equal(0.25, inverse.Zz, 1e-15);
    }

    [Fact]
    public void A_turned_tensor_is_the_tensor_of_the_turned_body()
    {
        var s = new Sym3<Real>(0.0278, 0.0291, 0.0286, 1e-3, -2e-3, 1.5e-3);
        var r = Turn(new(0.4, -1, 2)).Matrix();
        var v = new Vec3<Real>(0.3, -1.1, 0.7);
        Assert.True(Off(r.Turned(s) * v, r * (s * r.Back(v))) < 1e-16);
    }

    [Fact]
    public void A_mass_at_the_end_of_an_arm_adds_its_moment()
    {
        // p × (m v × ...): the moment of momentum of a point mass at p that turns with ω is m p × (ω × p).
        var (p, ω) = (new Vec3<Real>(0.2, -0.1, 0.4), new Vec3<Real>(3, 1, -2));
        var added = new Sym3<Real>(0, 0, 0, 0, 0, 0).AtArm(7, p) * ω;
        Assert.True(Off(added, 7.0 * p.Cross(ω.Cross(p))) < 1e-14);
    }
}
