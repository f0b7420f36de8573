using MathNet.Numerics.LinearAlgebra;

namespace BallSim.Fitting;

/// <summary>The arrow of <see cref="ArrowLeastSquares"/>: gradient and Gauss-Newton matrix at one point, block by block.</summary>
internal sealed class NormalEquations(IResidualBlocks problem, int shared)
{
    private readonly int[] local = [.. Enumerable.Range(0, problem.BlockCount).Select(problem.LocalCount)];

    // A matrix has one row at least; where there is no parameter it is not looked at.
    private readonly Matrix<double> a = Empty(shared, shared);
    private readonly Matrix<double>[] b = [.. Enumerable.Range(0, problem.BlockCount).Select(k => Empty(shared, problem.LocalCount(k)))];
    private readonly Matrix<double>[] c = [.. Enumerable.Range(0, problem.BlockCount).Select(k => Empty(problem.LocalCount(k), problem.LocalCount(k)))];
    private readonly double[] gradient = new double[shared + Enumerable.Range(0, problem.BlockCount).Sum(problem.LocalCount)];

    // Where each block's parameters begin.
    private readonly int[] from = [.. Enumerable.Range(0, problem.BlockCount).Select(k => shared + Enumerable.Range(0, k).Sum(problem.LocalCount))];

    public void Fill(BlockRows[] rows, RobustLoss loss)
    {
        a.Clear();
        Array.Clear(gradient);
        for (var k = 0; k < rows.Length; k++)
        {
            b[k].Clear();
            c[k].Clear();
            var r = rows[k];
            for (var row = 0; row < r.Count; row++)
            {
                var w = Loss.Weight(r.IsObservation[row] ? loss : RobustLoss.LeastSquares, r.Residuals[row]);
                for (var i = 0; i < shared + r.Local; i++)
                {
                    var wi = w * r.Slopes[row, i];
                    if (wi == 0)
                    {
                        continue;
                    }
                    gradient[i < shared ? i : from[k] + i - shared] += wi * r.Residuals[row];
                    for (var j = i; j < shared + r.Local; j++)
                    {
                        Add(k, i, j, wi * r.Slopes[row, j]);
                    }
                }
            }
        }
        Mirror(a);
        Array.ForEach(c, Mirror);
    }

    /// <summary>Parameters that stand at a bound and are pushed against it.</summary>
    public bool[] Held(double[] at, double[] low, double[] high) =>
        [.. at.Select((v, i) => low[i] == high[i] || (v <= low[i] && gradient[i] > 0) || (v >= high[i] && gradient[i] < 0))];

    /// <summary>How much a step lowers the quadratic model of the cost.</summary>
    public double Promise(double[] step)
    {
        double linear = 0, square = 0;
        for (var i = 0; i < step.Length; i++)
        {
            linear += gradient[i] * step[i];
        }
        var s = Vector<double>.Build.Dense(shared > 0 ? step[..shared] : new double[1]);
        square += s * (a * s);
        for (var k = 0; k < c.Length; k++)
        {
            if (local[k] > 0)
            {
                var l = Vector<double>.Build.Dense(step[from[k]..(from[k] + local[k])]);
                square += 2 * (s * (b[k] * l)) + l * (c[k] * l);
            }
        }
        return -linear - 0.5 * square;
    }

    /// <summary>The damped step; parameters that are held do not move.</summary>
    public double[] Solve(double damping, bool[] held)
    {
        var schur = Damped(a, damping, held, 0, shared);
        var right = Vector<double>.Build.Dense(schur.RowCount, i => i >= shared || held[i] ? 0 : -gradient[i]);
        var solved = new Matrix<double>[c.Length];
        for (var k = 0; k < c.Length; k++)
        {
            if (local[k] == 0)
            {
                continue;
            }
            var kept = Kept(b[k], held, from[k]);
            var g = Vector<double>.Build.Dense(local[k], i => held[from[k] + i] ? 0 : gradient[from[k] + i]).ToColumnMatrix();
            // C⁻¹ [Bᵀ g] in one go.
            solved[k] = Positive(Damped(c[k], damping, held, from[k], local[k])).Solve(kept.Transpose().Append(g));
            schur -= kept * solved[k].SubMatrix(0, local[k], 0, schur.RowCount);
            right += kept * solved[k].Column(schur.RowCount);
        }
        var step = new double[gradient.Length];
        var δ = Positive(schur).Solve(right);
        for (var i = 0; i < shared; i++)
        {
            step[i] = δ[i];
        }
        for (var k = 0; k < c.Length; k++)
        {
            for (var i = 0; i < local[k]; i++)
            {
                var moved = solved[k][i, schur.RowCount];
                for (var j = 0; j < shared; j++)
                {
                    moved += solved[k][i, j] * δ[j];
                }
                step[from[k] + i] = -moved;
            }
        }
        return step;
    }

    private static Matrix<double> Empty(int rows, int columns) => Matrix<double>.Build.Dense(Math.Max(1, rows), Math.Max(1, columns));

    // Rounding may leave a matrix that is singular in exact arithmetic a hair below zero: a hair is added.
    private static MathNet.Numerics.LinearAlgebra.Factorization.ISolver<double> Positive(Matrix<double> m)
    {
        for (var hair = 1e-15; ; hair *= 10)
        {
            try
            {
                return m.Cholesky();
            }
            catch (ArgumentException) when (hair < 1)
            {
                m = m.Clone();
                for (var i = 0; i < m.RowCount; i++)
                {
                    m[i, i] += hair * Math.Max(Math.Abs(m[i, i]), m.Diagonal().AbsoluteMaximum() * 1e-6 + 1e-300);
                }
            }
        }
    }

    private static Matrix<double> Damped(Matrix<double> m, double damping, bool[] held, int first, int count)
    {
        var d = m.Clone();
        for (var i = 0; i < d.RowCount; i++)
        {
            if (i >= count || held[first + i])
            {
                d.ClearRow(i);
                d.ClearColumn(i);
                d[i, i] = 1;
            }
            else
            {
                // A parameter that moves nothing stays where it is.
                d[i, i] = d[i, i] > 0 ? d[i, i] * (1 + damping) * (1 + 1e-15) : 1;
            }
        }
        return d;
    }

    private Matrix<double> Kept(Matrix<double> m, bool[] held, int first)
    {
        var kept = m.Clone();
        for (var i = 0; i < shared; i++)
        {
            if (held[i])
            {
                kept.ClearRow(i);
            }
        }
        for (var j = 0; j < kept.ColumnCount; j++)
        {
            if (held[first + j])
            {
                kept.ClearColumn(j);
            }
        }
        return kept;
    }

    private void Add(int k, int i, int j, double value)
    {
        if (j < shared)
        {
            a[i, j] += value;
        }
        else if (i < shared)
        {
            b[k][i, j - shared] += value;
        }
        else
        {
            c[k][i - shared, j - shared] += value;
        }
    }

    private static void Mirror(Matrix<double> m)
    {
        for (var i = 0; i < m.RowCount; i++)
        {
            for (var j = 0; j < i; j++)
            {
                m[i, j] = m[j, i];
            }
        }
    }
}
