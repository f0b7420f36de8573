using BallSim.Spatial;
using MathNet.Numerics.LinearAlgebra;

namespace BallSim.Fitting;

/// <summary>
/// The inertia of a free ball from a gyroscope in it, up to a factor: Euler's equation I dω/dt = -ω × I ω knows the ratios of the moments and the principal axes, in the axes of the sensor, but not their size. Least squares on the record,
/// the equation integrated by the classical Runge-Kutta method on numbers with derivatives.
/// </summary>
/// <remarks>A ball that spins steadily about a principal axis tells nothing of the others: the standard errors say so. Neglected: every torque, such as that of the air and of the bench; take a stretch of record in which they are small.</remarks>
public sealed record GyroFit
{
    private const int TensorNumbers = 5;

    /// <summary>Least over greatest moment of inertia, a number in (0, 1], and its standard error.</summary>
    public required double LeastToGreatest { get; init; }

    /// <summary>Standard error of <see cref="LeastToGreatest"/>.</summary>
    public required double LeastToGreatestError { get; init; }

    /// <summary>Middle over greatest moment of inertia, a number in (0, 1].</summary>
    public required double MiddleToGreatest { get; init; }

    /// <summary>Standard error of <see cref="MiddleToGreatest"/>.</summary>
    public required double MiddleToGreatestError { get; init; }

    /// <summary>The tensor in the axes of the sensor, scaled so that its greatest moment is 1 kg m².</summary>
    public required InertiaTensor Shape { get; init; }

    /// <summary>Angular velocity at the first sample, rad/s, in the axes of the sensor.</summary>
    public required Vector3D Start { get; init; }

    /// <summary>Chi-square of the residuals in units of the stated noise, and its degrees of freedom.</summary>
    public required double ChiSquare { get; init; }

    /// <summary>Numbers measured less numbers fitted.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>Whether the search came to its end.</summary>
    public required bool IsConverged { get; init; }

    /// <summary>How it ended, in words.</summary>
    public required string Reason { get; init; }

    /// <summary>Fits a record.</summary>
    /// <param name="samples">Samples in order of time, at least four.</param>
    /// <param name="noise">Standard deviation of each component, rad/s, 1e-9 to 10.</param>
    /// <exception cref="ArgumentException">There are too few samples, or they are not in order.</exception>
    public static GyroFit Of(IReadOnlyList<GyroSample> samples, double noise)
    {
        ArgumentNullException.ThrowIfNull(samples);
        Check.Range(noise, 1e-9, 10, Quantity.SpinRate);
        Check.That(samples.Count >= 4, $"{samples.Count} samples are too few; four are the least", nameof(samples));
        for (var i = 0; i < samples.Count; i++)
        {
            Check.Finite(samples[i].AngularVelocity, $"samples[{i}]");
            Check.That(i == 0 || samples[i].Time > samples[i - 1].Time, $"samples[{i}] is not later than the sample before it", nameof(samples));
        }
        var ω = samples[0].AngularVelocity;
        double[] start = [.. Tensor(samples), ω.X, ω.Y, ω.Z];
        double[] low = [0.05, 0.05, -1, -1, -1, -500, -500, -500], high = [2.5, 2.5, 1, 1, 1, 500, 500, 500];
        var search = new ArrowLeastSquares(new Record(samples, noise), low, high, 1e-6, 1e-4, 200);
        var found = search.Minimise(start, RobustLoss.LeastSquares, CancellationToken.None);
        return Told(found, search.Information(found.Rows, (_, _) => 1), 3 * samples.Count - start.Length);
    }

    private static GyroFit Told(ArrowSolution found, Matrix<double> information, int freedom)
    {
        var v = found.Values;
        var tensor = new InertiaTensor(v[0], v[1], 3 - v[0] - v[1], v[2], v[3], v[4]);
        var axes = tensor.Principal;
        var scale = 1 / axes.GreatestMoment;
        // The moment of an axis u is uᵀ J u, and to first order the axis does not move it.
        static Vector<double> Slopes(Vector3D u) => Vector<double>.Build.Dense(
            [u.X * u.X - u.Z * u.Z, u.Y * u.Y - u.Z * u.Z, 2 * u.X * u.Y, 2 * u.X * u.Z, 2 * u.Y * u.Z, 0, 0, 0]);
        var unit = Vector<double>.Build.Dense(information.RowCount, i => 1 / Math.Sqrt(Math.Max(information[i, i], 1e-300)));
        var d = Matrix<double>.Build.DiagonalOfDiagonalVector(unit);
        var scaled = d * information * d + 1e-14 * Matrix<double>.Build.DenseIdentity(unit.Count);
        double Error(double moment, Vector3D axis)
        {
            var slope = scale * (Slopes(axis) - moment * scale * Slopes(axes.Greatest));
            return Math.Sqrt(slope * (d * scaled.LU().Solve(d * slope)));
        }
        return new()
        {
            LeastToGreatest = axes.LeastMoment * scale,
            LeastToGreatestError = Error(axes.LeastMoment, axes.Least),
            MiddleToGreatest = axes.MiddleMoment * scale,
            MiddleToGreatestError = Error(axes.MiddleMoment, axes.Middle),
            Shape = new(scale * tensor.Xx, scale * tensor.Yy, scale * tensor.Zz, scale * tensor.Xy, scale * tensor.Xz, scale * tensor.Yz),
            Start = new(v[5], v[6], v[7]),
            ChiSquare = 2 * found.Cost,
            DegreesOfFreedom = freedom,
            IsConverged = found.IsConverged,
            Reason = found.Reason,
        };
    }

    // A tensor to start from: between neighbours J Δω + Δt ω × J ω = 0, linear in J, of trace 3.
    private static double[] Tensor(IReadOnlyList<GyroSample> samples)
    {
        (double Xx, double Yy, double Zz, double Xy, double Xz, double Yz)[] basis = [(1, 0, -1, 0, 0, 0), (0, 1, -1, 0, 0, 0), (0, 0, 0, 1, 0, 0), (0, 0, 0, 0, 1, 0), (0, 0, 0, 0, 0, 1)];
        var a = Matrix<double>.Build.Dense(3 * (samples.Count - 1), TensorNumbers);
        var right = Vector<double>.Build.Dense(3 * (samples.Count - 1));
        for (var k = 1; k < samples.Count; k++)
        {
            var change = samples[k].AngularVelocity - samples[k - 1].AngularVelocity;
            var middle = 0.5 * (samples[k].AngularVelocity + samples[k - 1].AngularVelocity);
            var time = samples[k].Time - samples[k - 1].Time;
            for (var i = 0; i < TensorNumbers; i++)
            {
                var b = basis[i];
                var e = new InertiaTensor(b.Xx, b.Yy, b.Zz, b.Xy, b.Xz, b.Yz);
                var column = e.Apply(change) + time * middle.Cross(e.Apply(middle));
                (a[3 * k - 3, i], a[3 * k - 2, i], a[3 * k - 1, i]) = (column.X, column.Y, column.Z);
            }
            (right[3 * k - 3], right[3 * k - 2], right[3 * k - 1]) = (-change.X, -change.Y, -change.Z);
        }
        var normal = a.TransposeThisAndMultiply(a) + 1e-6 * Matrix<double>.Build.DenseIdentity(TensorNumbers);
        var j = normal.LU().Solve(a.TransposeThisAndMultiply(right));
        return [1 + Math.Clamp(j[0], -0.3, 0.3), 1 + Math.Clamp(j[1], -0.3, 0.3), Math.Clamp(j[2], -0.3, 0.3), Math.Clamp(j[3], -0.3, 0.3), Math.Clamp(j[4], -0.3, 0.3)];
    }

    private sealed class Record(IReadOnlyList<GyroSample> samples, double noise) : IResidualBlocks
    {
        // Turn of the ball in a step of the integration, rad; the spin in the ball changes some twenty times slower.
        private const double StepTurn = 0.25;

        public int SharedCount => TensorNumbers + 3;

        public int BlockCount => 1;

        public int LocalCount(int block) => 0;

        public int RowCount(int block) => 3 * samples.Count;

        public bool Evaluate(int block, ReadOnlySpan<double> shared, ReadOnlySpan<double> local, BlockRows into)
        {
            Dual V(ReadOnlySpan<double> s, int i) => Dual.Variable(s[i], i);
            Dual xx = V(shared, 0), yy = V(shared, 1), zz = 3.0 - xx - yy, xy = V(shared, 2), xz = V(shared, 3), yz = V(shared, 4);
            // The inverse by cofactors.
            Dual cxx = yy * zz - yz * yz, cxy = xz * yz - xy * zz, cxz = xy * yz - xz * yy;
            var determinant = xx * cxx + xy * cxy + xz * cxz;
            if (!((double)determinant > 1e-6) || !((double)cxx > 0) || !((double)xx > 0))
            {
                return false;
            }
            var J = new Sym3<Dual>(xx, yy, zz, xy, xz, yz);
            var per = 1.0 / determinant;
            var inverse = new Sym3<Dual>(per * cxx, per * (xx * zz - xz * xz), per * (xx * yy - xy * xy), per * cxy, per * cxz, per * (xy * xz - xx * yz));
            Vec3<Dual> Rate(Vec3<Dual> w) => inverse * (J * w).Cross(w);
            var ω = new Vec3<Dual>(V(shared, 5), V(shared, 6), V(shared, 7));
            var spin = Math.Sqrt((double)ω.Dot(ω));
            for (var k = 0; k < samples.Count; k++)
            {
                var span = k == 0 ? 0 : samples[k].Time - samples[k - 1].Time;
                var steps = (int)Math.Ceiling(span * (spin + 1) / StepTurn);
                Dual h = steps > 0 ? span / steps : 0;
                for (var i = 0; i < steps; i++)
                {
                    var k1 = Rate(ω);
                    var k2 = Rate(ω + 0.5 * h * k1);
                    var k3 = Rate(ω + 0.5 * h * k2);
                    var k4 = Rate(ω + h * k3);
                    ω += h * (1.0 / 6) * (k1 + 2.0 * k2 + 2.0 * k3 + k4);
                }
                var seen = samples[k].AngularVelocity;
                Put(into, 3 * k, ω.X, seen.X);
                Put(into, 3 * k + 1, ω.Y, seen.Y);
                Put(into, 3 * k + 2, ω.Z, seen.Z);
            }
            return true;
        }

        private void Put(BlockRows into, int row, Dual model, double seen)
        {
            into.Residuals[row] = ((double)model - seen) / noise;
            into.IsObservation[row] = true;
            for (var i = 0; i < SharedCount; i++)
            {
                into.Slopes[row, i] = model.Partial(i) / noise;
            }
        }
    }

    /// <summary>The ratios of the moments, and how well they agree with the record.</summary>
    public override string ToString() => FormattableString.Invariant($"least to greatest {LeastToGreatest:G5} ± {LeastToGreatestError:G2}, middle to greatest {MiddleToGreatest:G5} ± {MiddleToGreatestError:G2}; chi-square {ChiSquare:F1} of {DegreesOfFreedom}{(IsConverged ? "" : "; " + Reason)}");
}
