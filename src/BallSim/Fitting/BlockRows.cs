namespace BallSim.Fitting;

/// <summary>Residuals of one block, in units of their standard deviations, and their derivatives by the shared parameters and the block's own, row by row.</summary>
internal sealed class BlockRows(int rows, int shared, int local)
{
    public int Count => rows;

    public int Local => local;

    public double[] Residuals { get; } = new double[rows];

    /// <summary>[row, parameter], the shared ones first.</summary>
    public double[,] Slopes { get; } = new double[rows, shared + local];

    /// <summary>Observations; priors, which are not, are never robust.</summary>
    public bool[] IsObservation { get; } = new bool[rows];
}
