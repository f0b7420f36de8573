namespace BallSim.Fitting;

/// <summary>Where <see cref="ArrowLeastSquares"/> ended.</summary>
internal sealed record ArrowSolution(double[] Values, BlockRows[] Rows, double Cost, int Iterations, int Evaluations, bool IsConverged, string Reason);
