namespace BallSim.Fitting;

/// <summary>
/// A least-squares problem in blocks: parameters that all blocks share, and parameters of each block alone. A vector of parameters holds the shared ones, then those of each block in turn.
/// </summary>
internal interface IResidualBlocks
{
    int SharedCount { get; }

    int BlockCount { get; }

    int LocalCount(int block);

    int RowCount(int block);

    /// <summary>Fills in residuals and slopes; false where the model has no answer, which is no error: a step that leads there is not taken.</summary>
    bool Evaluate(int block, ReadOnlySpan<double> shared, ReadOnlySpan<double> local, BlockRows into);
}
