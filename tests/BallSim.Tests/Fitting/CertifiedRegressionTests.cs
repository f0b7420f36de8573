using BallSim.Fitting;
using BallSim.Spatial;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace BallSim.Tests.Fitting;

/// <summary>
/// The search against certified data: NIST Statistical Reference Datasets, nonlinear regression (https://www.itl.nist.gov/div898/strd/nls), data and certified values as stored copies of them have it: Misra1a (lower difficulty), Thurber and MGH09
/// (higher). Both starting points of each.
/// </summary>
public class CertifiedRegressionTests
{
    private sealed record Problem(string Name, double[] X, double[] Y, double[][] Starts, double[] Certified, double[] Errors, double SumOfSquares, Func<double, Dual[], Dual> Model);

    private static readonly Problem[] Problems =
    [
        new("Misra1a",
            [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0],
            [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78],
            [[500, 1e-4], [250, 5e-4]], [2.3894212918E+02, 5.5015643181E-04], [2.7070075241E+00, 7.2668688436E-06], 1.2455138894E-01,
            (x, b) => b[0] * (1.0 - (-(b[1] * x)).Chain(Math.Exp(-(double)b[1] * x), Math.Exp(-(double)b[1] * x)))),
        new("Thurber",
            [-3.067, -2.981, -2.921, -2.912, -2.840, -2.797, -2.702, -2.699, -2.633, -2.481, -2.363, -2.322, -1.501, -1.460, -1.274, -1.212, -1.100, -1.046, -0.915, -0.714, -0.566, -0.545, -0.400, -0.309, -0.109, -0.103, 0.010,
                0.119, 0.377, 0.790, 0.963, 1.006, 1.115, 1.572, 1.841, 2.047, 2.200],
            [80.574, 84.248, 87.264, 87.195, 89.076, 89.608, 89.868, 90.101, 92.405, 95.854, 100.696, 101.060, 401.672, 390.724, 567.534, 635.316, 733.054, 759.087, 894.206, 990.785, 1090.109, 1080.914, 1122.643, 1178.351,
                1260.531, 1273.514, 1288.339, 1327.543, 1353.863, 1414.509, 1425.208, 1421.384, 1442.962, 1464.350, 1468.705, 1447.894, 1457.628],
            [[1000, 1000, 400, 40, 0.7, 0.3, 0.03], [1300, 1500, 500, 75, 1, 0.4, 0.05]],
            [1.2881396800E+03, 1.4910792535E+03, 5.8323836877E+02, 7.5416644291E+01, 9.6629502864E-01, 3.9797285797E-01, 4.9727297349E-02],
            [4.6647963344E+00, 3.9571156086E+01, 2.8698696102E+01, 5.5675370270E+00, 3.1333340687E-02, 1.4984928198E-02, 6.5842344623E-03], 5.6427082397E+03,
            (x, b) => (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1.0 + x * (b[4] + x * (b[5] + x * b[6])))),
        new("MGH09",
            [4, 2, 1, 0.5, 0.25, 0.167, 0.125, 0.1, 0.0833, 0.0714, 0.0625],
            [0.1957, 0.1947, 0.1735, 0.16, 0.0844, 0.0627, 0.0456, 0.0342, 0.0323, 0.0235, 0.0246],
            [[25, 39, 41.5, 39], [0.25, 0.39, 0.415, 0.39]], [1.9280693458E-01, 1.9128232873E-01, 1.2305650693E-01, 1.3606233068E-01],
            [1.1435312227E-02, 1.9633220911E-01, 8.0842031232E-02, 9.0025542308E-02], 3.0750560385E-04,
            (x, b) => b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3])),
    ];

    public static TheoryData<string, int> Cases
    {
        get
        {
            var cases = new TheoryData<string, int>();
            foreach (var p in Problems)
            {
                cases.Add(p.Name, 0);
                cases.Add(p.Name, 1);
            }
            return cases;
        }
    }

    private sealed class Blocks(Problem p) : IResidualBlocks
    {
        public int SharedCount => p.Certified.Length;

        public int BlockCount => 1;

        public int LocalCount(int block) => 0;

        public int RowCount(int block) => p.X.Length;

        public bool Evaluate(int block, ReadOnlySpan<double> shared, ReadOnlySpan<double> local, BlockRows into)
        {
            var b = new Dual[shared.Length];
            for (var i = 0; i < b.Length; i++)
            {
                b[i] = Dual.Variable(shared[i], i);
            }
            for (var k = 0; k < p.X.Length; k++)
            {
                var y = p.Model(p.X[k], b);
                into.Residuals[k] = (double)y - p.Y[k];
                into.IsObservation[k] = true;
                for (var i = 0; i < b.Length; i++)
                {
                    into.Slopes[k, i] = y.Partial(i);
                }
            }
            return into.Residuals.All(double.IsFinite);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Certified_values_are_met(string name, int start)
    {
        var p = Problems.Single(p => p.Name == name);
        var n = p.Certified.Length;
        var search = new ArrowLeastSquares(new Blocks(p), [.. Enumerable.Repeat(-1e9, n)], [.. Enumerable.Repeat(1e9, n)], 1e-9, 0, 2000);
        var found = search.Minimise(p.Starts[start], RobustLoss.LeastSquares, CancellationToken.None);
        Assert.True(found.IsConverged, found.Reason);
        var variance = 2 * found.Cost / (p.X.Length - n);
        var covariance = search.Information(found.Rows, (_, _) => 1).Inverse() * variance;
        // Eleven digits are certified.
        Digits(p.SumOfSquares, 2 * found.Cost, 9.5, "sum of squares");
        for (var i = 0; i < n; i++)
        {
            Digits(p.Certified[i], found.Values[i], 8, $"b{i + 1}");
            Digits(p.Errors[i], Math.Sqrt(covariance[i, i]), 7, $"error of b{i + 1}");
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_package_s_own_minimiser_ends_at_the_same_place(string name, int start)
    {
        var p = Problems.Single(p => p.Name == name);
        var x = Vector<double>.Build.Dense(p.X.Length, i => i);
        Dual[] Numbers(Vector<double> at) => [.. at.Select((v, i) => Dual.Variable(v, i))];
        var objective = ObjectiveFunction.NonlinearModel(
            (at, index) => Vector<double>.Build.Dense(index.Count, k => (double)p.Model(p.X[k], Numbers(at))),
            (at, index) => Matrix<double>.Build.Dense(index.Count, at.Count, (k, i) => p.Model(p.X[k], Numbers(at)).Partial(i)), x, Vector<double>.Build.Dense(p.Y));
        var found = new LevenbergMarquardtMinimizer(maximumIterations: 5000).FindMinimum(objective, Vector<double>.Build.Dense(p.Starts[start]));
        for (var i = 0; i < p.Certified.Length; i++)
        {
            Digits(p.Certified[i], found.MinimizingPoint[i], 4, $"b{i + 1}");
        }
    }

    private static void Digits(double certified, double value, double least, string what)
    {
        var digits = -Math.Log10(Math.Abs(value - certified) / Math.Abs(certified) + 1e-16);
        Assert.True(digits >= least, $"{what}: {value:G12} for {certified:G12}, {digits:F1} digits");
    }
}
