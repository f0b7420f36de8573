using System.Globalization;
using MathNet.Numerics.LinearAlgebra;

namespace BallSim.Balls;

/// <summary>
/// The inertia tensor of a made body, ball or bare core, from the periods of a torsion pendulum about six or more axes: least squares, with
/// uncertainties.
/// </summary>
/// <remarks>
/// A pendulum of stiffness κ with a cradle of moment I₀ swings a body in T = 2π √((I + I₀)/κ). The moment about a unit axis n is linear
/// in the six entries, I(n) = Σ nᵢ nⱼ Iᵢⱼ; a relative standard error of the periods s_T makes one of 2 s_T (I + I₀) in each moment, and
/// the readings are weighted with it. The axes go through the centre of the ball, Bo; where the centre of mass is off by d its share m
/// (|d|² 1 - d dᵀ) is taken off (Steiner). Neglected: damping, the wire's own inertia, errors of κ and I₀, which scale or shift all
/// moments alike.
/// </remarks>
public sealed record MeasuredInertia
{
    // Axes whose rows are nearer to dependence than this magnify the errors of the periods more than fifty times. Assumed; six well
    // spread axes have 2 to 4.
    private const double WorstCondition = 50;

    private readonly double[,] covariance;

    private MeasuredInertia(double[,] covariance) => this.covariance = covariance;

    /// <summary>The tensor about the centre of mass, in the ball frame, kg m².</summary>
    public required InertiaTensor Inertia { get; init; }

    /// <summary>Standard error of each entry of the tensor, kg m².</summary>
    public required InertiaTensor StandardErrors { get; init; }

    /// <summary>Ratio of the greatest to the least singular value of the equations: how much the choice of axes magnifies
    /// errors.</summary>
    public required double Condition { get; init; }

    /// <summary>Readings over the six that are needed.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>
    /// Weighted sum of squares of what the readings leave: about <see cref="DegreesOfFreedom"/> if the stated error of the periods is
    /// true, much more if it is not.
    /// </summary>
    public required double ChiSquare { get; init; }

    /// <summary>
    /// The tensor that fits the readings.
    /// </summary>
    /// <param name="readings">Six readings or more, about axes that are not nearly dependent.</param>
    /// <param name="stiffness">Stiffness of the wire, N m per rad; 1e-4 to 1e4.</param>
    /// <param name="periodError">Relative standard error of a period, a pure number; 1e-6 to 0.1. A thousandth is usual care
    /// (assumed).</param>
    /// <param name="cradle">Moment of inertia of the cradle about the wire, kg m²; 0 to 1.</param>
    /// <param name="mass">Mass of the body, kg; 0 to 100. Needed only with a centre of mass.</param>
    /// <param name="centreOfMass">From the centre of the ball, through which the axes go, to the centre of mass, m; none: taken as
    /// there.</param>
    /// <exception cref="ArgumentException">Fewer than six readings, or axes that cannot tell six entries apart.</exception>
    public static MeasuredInertia FromPeriods(IReadOnlyList<PendulumReading> readings, double stiffness, double periodError, double cradle = 0,
        double mass = 0, Vector3D centreOfMass = default)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Check.That(readings.Count >= 6, $"a tensor has six entries; {readings.Count} readings cannot tell them", nameof(readings));
        Check.Range(stiffness, 1e-4, 1e4, Quantity.Of("N m/rad"));
        Check.Range(periodError, 1e-6, 0.1, Quantity.Number);
        Check.Range(cradle, 0, 1, Quantity.Inertia);
        Check.Range(mass, 0, 100, Quantity.Mass);
        Check.Finite(centreOfMass);
        Check.That(mass > 0 || centreOfMass == default, "centreOfMass counts with a mass only; give mass too", nameof(mass));

        double Whole(PendulumReading r) => stiffness * r.Period * r.Period / (4 * Math.PI * Math.PI);
        var errors = readings.Select(r => 2 * periodError * Whole(r)).ToArray();
        var design = Matrix<double>.Build.DenseOfRowArrays(readings.Select(r => Row(r.Axis)));
        var weighted = Matrix<double>.Build.Dense(readings.Count, 6, (i, j) => design[i, j] / errors[i]);
        var values = Vector<double>.Build.DenseOfEnumerable(readings.Select((r, i) => (Whole(r) - cradle) / errors[i]));
        var svd = design.Svd();
        // Nothing left in some direction comes out as zero of either sign.
        var condition = svd.S[0] / Math.Abs(svd.S[5]);
        Check.That(condition < WorstCondition,
            $"the axes cannot tell the six entries apart: they magnify errors {(condition > 1e8 ? "without bound" : Check.Text(condition) + " times")}, " +
            $"{Check.Text(WorstCondition)} is the most that is taken; add axes between the ones given, for example along (1, 1, 0), (1, 0, 1) and (0, 1, 1)", nameof(readings));
        var qr = weighted.QR();
        var x = qr.Solve(values);
        var inverse = qr.R.SubMatrix(0, 6, 0, 6).Inverse();
        var covariance = inverse * inverse.Transpose();
        InertiaTensor Tensor(Func<int, double> of) => new(of(0), of(1), of(2), of(3), of(4), of(5));
        return new(covariance.ToArray())
        {
            Inertia = Tensor(i => x[i]) - InertiaTensor.OfPoint(mass, centreOfMass),
            StandardErrors = Tensor(i => Math.Sqrt(covariance[i, i])),
            Condition = condition,
            DegreesOfFreedom = readings.Count - 6,
            ChiSquare = Math.Pow((weighted * x - values).L2Norm(), 2),
        };
    }

    /// <summary>
    /// Half the width of the 95 % interval of the moment about an axis, kg m²: 1.96 standard errors, the error of the periods being known.
    /// </summary>
    /// <param name="axis">A direction in the ball frame, any length but zero.</param>
    public double Uncertainty(Vector3D axis)
    {
        var row = Row(Check.Direction(axis, nameof(axis)));
        var sum = 0.0;
        for (var i = 0; i < 6; i++)
        {
            for (var j = 0; j < 6; j++)
            {
                sum += row[i] * covariance[i, j] * row[j];
            }
        }
        return 1.96 * Math.Sqrt(sum);
    }

    /// <summary>The principal moments with their uncertainties, and the condition of the axes.</summary>
    public override string ToString()
    {
        var p = Inertia.Principal;
        string Line(double moment, Vector3D axis) => string.Create(CultureInfo.InvariantCulture, $"{moment:G6} ± {Uncertainty(axis):G2} kg m² about {axis}");
        return $"{Line(p.LeastMoment, p.Least)}; {Line(p.MiddleMoment, p.Middle)}; {Line(p.GreatestMoment, p.Greatest)}; condition {Check.Text(Condition)}";
    }

    private static double[] Row(Vector3D n) => [n.X * n.X, n.Y * n.Y, n.Z * n.Z, 2 * n.X * n.Y, 2 * n.X * n.Z, 2 * n.Y * n.Z];
}
