using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace BallSim.Releases;

/// <summary>
/// How the numbers of one bowler's releases go together from throw to throw: a matrix of correlations in the order speed, launch angle, board, spin rate, axis rotation, axis tilt. Measured ones are
/// best; with none, <see cref="Scatter"/> takes the numbers as independent (assumed).
/// </summary>
public sealed record ScatterCorrelations
{
    /// <summary>How many numbers of a release are scattered.</summary>
    public const int Count = 6;

    // Rounding may push an eigenvalue of a valid matrix (two numbers that go together exactly) a little below zero.
    private const double Slack = 1e-9;

    private readonly ImmutableArray<double> matrix;

    /// <summary>A matrix of correlations.</summary>
    /// <param name="matrix">Six by six, each number in [-1, 1], symmetric, ones on the diagonal, no eigenvalue below zero.</param>
    /// <exception cref="ArgumentException">It is no such matrix; the message says why.</exception>
    public ScatterCorrelations(double[,] matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        Check.That(matrix.GetLength(0) == Count && matrix.GetLength(1) == Count, $"the matrix is {matrix.GetLength(0)} by {matrix.GetLength(1)}; six numbers of a release are scattered, so it is 6 by 6",
            nameof(matrix));
        for (var i = 0; i < Count; i++)
        {
            for (var j = 0; j < Count; j++)
            {
                Check.Range(matrix[i, j], -1, 1, Quantity.Number, nameof(matrix));
                Check.That(i != j || matrix[i, j] == 1, $"the diagonal holds {Check.Text(matrix[i, i])}; every number goes with itself by 1", nameof(matrix));
                Check.That(matrix[i, j] == matrix[j, i], $"row {i + 1}, column {j + 1} is {Check.Text(matrix[i, j])} and its mirror image {Check.Text(matrix[j, i])}; the two must be equal", nameof(matrix));
            }
        }
        var evd = Matrix<double>.Build.DenseOfArray(matrix).Evd(Symmetricity.Symmetric);
        var least = evd.EigenValues.Min(e => e.Real);
        Check.That(least >= -Slack, $"the matrix has the eigenvalue {Check.Text(least)}; no six numbers can go together so: an eigenvalue below zero would be a negative variance", nameof(matrix));
        // The symmetric root rather than Cholesky's: it exists for a singular matrix too.
        var root = evd.EigenVectors * Matrix<double>.Build.DiagonalOfDiagonalVector(evd.EigenValues.Map(e => Math.Sqrt(Math.Max(0, e.Real)))) * evd.EigenVectors.Transpose();
        this.matrix = [.. Enumerable.Range(0, Count * Count).Select(k => matrix[k / Count, k % Count])];
        Root = [.. Enumerable.Range(0, Count * Count).Select(k => root[k / Count, k % Count])];
    }

    /// <summary>The correlation of two numbers, each from 0 in the order of the type's description.</summary>
    public double this[int i, int j] => matrix[Count * i + j];

    /// <summary>The symmetric root of the matrix, by rows.</summary>
    internal ImmutableArray<double> Root { get; }

    /// <summary>Equal where all numbers are.</summary>
    public bool Equals(ScatterCorrelations? other) => other is not null && matrix.AsSpan().SequenceEqual(other.matrix.AsSpan());

    /// <summary>Of all numbers.</summary>
    public override int GetHashCode() => matrix.Aggregate(0, HashCode.Combine);
}
