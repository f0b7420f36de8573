using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Tests.Integration;

/// <summary>
/// The coefficients of the method, read out of the code that runs, against the order conditions of J. C. Butcher (Numerical Methods for
/// Ordinary Differential Equations, ch. 3; E. Hairer,
/// S. P. Nørsett and G. Wanner, Solving Ordinary Differential Equations I, table II.2.1): a Runge-Kutta method is of order p if and only
/// if Σ bᵢ Φᵢ(t) = 1/γ(t) for every rooted tree t of up
/// to p nodes. The conditions are built here from the trees themselves.
/// </summary>
public class TableauTests
{
    // The printed coefficients have 16 digits and sizes up to 13; sums of products of up to four of them.
    private const double Rounding = 2e-13;

    /// <summary>Rates that do not look at the state but name the call: the k-th slope is the k-th unit vector, so the states asked for are
    /// the rows of the tableau.</summary>
    private struct Probe : IOde<Row>
    {
        private int call;

        public List<double[]> Asked { get; init; }

        public void Rates(in Row y, out Row rates)
        {
            Asked.Add(y.ToArray());
            rates = Row.Unit(call++);
        }
    }

    /// <summary>A state of seven numbers.</summary>
    private struct Row : ILinear<Row, Real>
    {
        private double a, b, c, d, e, f, g;

        public static Row Unit(int i) => new() { a = i == 0 ? 1 : 0, b = i == 1 ? 1 : 0, c = i == 2 ? 1 : 0, d = i == 3 ? 1 : 0, e = i == 4 ? 1 : 0, f = i == 5 ? 1 : 0, g = i == 6 ? 1 : 0 };

        public readonly double[] ToArray() => [a, b, c, d, e, f, g];

        public void Add(Real s, in Row k)
        {
            a += s * k.a;
            b += s * k.b;
            c += s * k.c;
            d += s * k.d;
            e += s * k.e;
            f += s * k.f;
            g += s * k.g;
        }

        public void Add(Real s1, in Row k1, Real s2, in Row k2)
        {
            Add(s1, k1);
            Add(s2, k2);
        }

        public void Add(Real s1, in Row k1, Real s2, in Row k2, Real s3, in Row k3)
        {
            Add(s1, k1, s2, k2);
            Add(s3, k3);
        }
    }

    private static readonly Step<Row> Taken;
    private static readonly double[][] A;
    private static readonly double[] B;
    private static readonly double[] ErrorWeights;

    static TableauTests()
    {
        var probe = new Probe { Asked = [] };
        Step<Row> step = default;
        probe.Rates(step.Start, out step.K1);
        RungeKutta5<Probe, Row, Real>.Take(ref probe, ref step, 1.0, out var error);
        (Taken, A, B, ErrorWeights) = (step, [.. probe.Asked], step.End.ToArray(), error.ToArray());
    }

    /// <summary>A rooted tree: a root and the trees that hang on it.</summary>
    private sealed record Tree(params Tree[] Children)
    {
        public int Order => 1 + Children.Sum(c => c.Order);

        /// <summary>γ: the product of the orders of all subtrees.</summary>
        public double Density => Order * Children.Aggregate(1.0, (p, c) => p * c.Density);

        /// <summary>Φᵢ: the product over the children of Σⱼ aᵢⱼ Φⱼ.</summary>
        public double[] Weights => [.. A.Select(row => Children.Aggregate(1.0, (p, c) => p * row.Zip(c.Weights, (a, φ) => a * φ).Sum()))];

        public override string ToString() => $"[{string.Concat(Children.Select(c => c.ToString()))}]";
    }

    // All rooted trees up to an order, each once: a new leaf may hang on every node of every smaller tree; children in a fixed order make
    // equal trees look equal.
    private static IEnumerable<Tree> Trees(int order)
    {
        Dictionary<string, Tree> level = new() { ["[]"] = new() };
        for (var n = 1; ; n++)
        {
            foreach (var tree in level.Values)
            {
                yield return tree;
            }
            if (n == order)
            {
                yield break;
            }
            level = level.Values.SelectMany(WithOneMore).DistinctBy(t => t.ToString()).ToDictionary(t => t.ToString());
        }
    }

    private static IEnumerable<Tree> WithOneMore(Tree tree)
    {
        yield return Sorted([.. tree.Children, new Tree()]);
        for (var i = 0; i < tree.Children.Length; i++)
        {
            foreach (var grown in WithOneMore(tree.Children[i]))
            {
                Tree[] children = [.. tree.Children];
                children[i] = grown;
                yield return Sorted(children);
            }
        }
    }

    private static Tree Sorted(Tree[] children) => new([.. children.OrderBy(c => c.ToString(), StringComparer.Ordinal)]);

    private static double Sum(double[] b, Tree tree) => b.Zip(tree.Weights, (w, φ) => w * φ).Sum();

    [Fact]
    public void There_are_as_many_trees_as_there_must_be() =>
        Assert.Equal([1, 1, 2, 4, 9, 20], Trees(6).GroupBy(t => t.Order).Select(g => g.Count()));

    [Fact]
    public void The_method_meets_all_seventeen_conditions_of_order_five() =>
        Assert.All(Trees(5), t => Assert.Equal(1 / t.Density, Sum(B, t), Rounding));

    [Fact]
    public void And_not_those_of_order_six() =>
        Assert.Contains(Trees(6), t => t.Order == 6 && Math.Abs(Sum(B, t) - 1 / t.Density) > 1e-5);

    [Fact]
    public void The_embedded_method_is_of_order_four_and_not_five()
    {
        double[] embedded = [.. B.Zip(ErrorWeights, (b, e) => b - e)];
        Assert.All(Trees(4), t => Assert.Equal(1 / t.Density, Sum(embedded, t), Rounding));
        Assert.Contains(Trees(5), t => t.Order == 5 && Math.Abs(Sum(embedded, t) - 1 / t.Density) > 1e-5);
    }

    [Fact]
    public void Places_and_weights_are_told_as_they_are()
    {
        double[] places = [RungeKutta5.Place3, RungeKutta5.Place4, RungeKutta5.Place5, RungeKutta5.Place6];
        Assert.Equal(places, A[2..6].Select(row => row.Sum()), (a, b) => Math.Abs(a - b) < 1e-14);
        Assert.Equal([RungeKutta5.Weight1, 0, RungeKutta5.Weight3, RungeKutta5.Weight4, RungeKutta5.Weight5, RungeKutta5.Weight6, 0], B);
    }

    [Fact]
    public void The_last_stage_stands_at_the_end_of_the_step() => Assert.Equal(B, A[6]);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.37)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    [InlineData(1)]
    public void The_interpolant_is_of_order_four_everywhere(double θ)
    {
        // Hairer, Nørsett and Wanner, theorem II.6.1: Σ bᵢ(θ) Φᵢ(t) = θ^order/γ.
        var b = Dense<Row, Real>.Between(Taken, 1.0, θ).ToArray();
        Assert.All(Trees(4), t => Assert.Equal(Math.Pow(θ, t.Order) / t.Density, Sum(b, t), Rounding));
    }

    [Fact]
    public void The_interpolant_joins_the_steps_with_a_continuous_slope()
    {
        static double[] At(double θ) => Dense<Row, Real>.Between(Taken, 1.0, θ).ToArray();
        // Five-point one-sided differences are exact for a polynomial of degree four.
        static double[] Slope(double at, double h) =>
            [.. Enumerable.Range(0, 7).Select(i => (-25 * At(at)[i] + 48 * At(at + h)[i] - 36 * At(at + 2 * h)[i] + 16 * At(at + 3 * h)[i] - 3 * At(at + 4 * h)[i]) / (12 * h))];
        for (var i = 0; i < 7; i++)
        {
            Assert.Equal(0, At(0)[i]);
            Assert.Equal(B[i], At(1)[i], 1e-13);
            Assert.Equal(i == 0 ? 1 : 0, Slope(0, 0.25)[i], 1e-12);
            Assert.Equal(i == 6 ? 1 : 0, Slope(1, -0.25)[i], 1e-12);
        }
    }

    [Fact]
    public void The_polynomial_that_is_kept_is_the_interpolant()
    {
        Dense<Row, Real>.Polynomial(Taken, 0.7, out var p1, out var p2, out var p3, out var p4);
        foreach (var θ in new[] { 0.2, 0.6, 1 })
        {
            var b = Dense<Row, Real>.Between(Taken, 0.7, θ).ToArray();
            for (var i = 0; i < 7; i++)
            {
                Assert.Equal(b[i], θ * (p1.ToArray()[i] + θ * (p2.ToArray()[i] + θ * (p3.ToArray()[i] + θ * p4.ToArray()[i]))), 1e-13);
            }
        }
    }
}
