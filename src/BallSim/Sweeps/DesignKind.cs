namespace BallSim.Sweeps;

/// <summary>How the rows of a sweep are spread over its factors.</summary>
public enum DesignKind
{
    /// <summary>Every combination of the factors' levels; the last factor changes fastest.</summary>
    Factorial,

    /// <summary>Each factor cut into as many equal strips as there are rows, every strip used once, the strips of different factors paired at random.</summary>
    LatinHypercube,

    /// <summary>Sobol's low-discrepancy sequence, scrambled; best with a power of two of rows.</summary>
    LowDiscrepancy,

    /// <summary>Independent random points.</summary>
    Random,
}
