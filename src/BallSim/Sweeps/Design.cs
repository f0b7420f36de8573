namespace BallSim.Sweeps;

/// <summary>
/// Which rows a sweep has: for every row and factor a number in (0, 1), or the level of a factorial. A row is a function of the design and its own number alone.
/// </summary>
public sealed record Design
{
    /// <summary>Most rows of a design, 1e9.</summary>
    public const int MostRows = 1_000_000_000;

    private readonly int rows;

    private Design(DesignKind kind, int rows, int seed) => (Kind, this.rows, Seed) = (kind, rows, seed);

    /// <summary>The kind.</summary>
    public DesignKind Kind { get; }

    /// <summary>What the random part follows from; 0 for a factorial, which has none.</summary>
    public int Seed { get; }

    /// <summary>Most factors a low-discrepancy design takes, 20.</summary>
    public static int MostLowDiscrepancyFactors => Sobol.Dimensions;

    /// <summary>Every combination of the factors' levels.</summary>
    public static Design Factorial { get; } = new(DesignKind.Factorial, 0, 0);

    /// <summary>A Latin hypercube.</summary>
    /// <param name="rows">How many rows, 1 to 1e9.</param>
    /// <param name="seed">What it follows from, any whole number.</param>
    public static Design LatinHypercube(int rows, int seed) => new(DesignKind.LatinHypercube, Checked(rows), seed);

    /// <summary>Scrambled points of Sobol's sequence, for up to 20 factors.</summary>
    /// <param name="rows">How many rows, 1 to 1e9; powers of two spread best.</param>
    /// <param name="seed">What the scrambling follows from, any whole number.</param>
    public static Design LowDiscrepancy(int rows, int seed) => new(DesignKind.LowDiscrepancy, Checked(rows), seed);

    /// <summary>Independent random points.</summary>
    /// <param name="rows">How many rows, 1 to 1e9.</param>
    /// <param name="seed">What they follow from, any whole number.</param>
    public static Design Random(int rows, int seed) => new(DesignKind.Random, Checked(rows), seed);

    /// <summary>How many rows there are for these factors.</summary>
    /// <exception cref="ArgumentException">There is no factor, there are too many for the design, or a factor has no levels for a factorial.</exception>
    public int Rows(IReadOnlyList<Factor> factors)
    {
        ArgumentNullException.ThrowIfNull(factors);
        Check.That(factors.Count > 0, "a design needs a factor; give at least one", nameof(factors));
        Check.That(Kind != DesignKind.LowDiscrepancy || factors.Count <= MostLowDiscrepancyFactors,
            $"{factors.Count} factors; a low-discrepancy design takes {MostLowDiscrepancyFactors} at most, a Latin hypercube any number", nameof(factors));
        if (Kind != DesignKind.Factorial)
        {
            return rows;
        }
        long all = 1;
        foreach (var factor in factors)
        {
            all *= factor.Levels;
            Check.That(all <= MostRows, $"the factorial has more than {MostRows} rows at {factor.Name}: give fewer steps, or take a sampled design", nameof(factors));
        }
        return (int)all;
    }

    /// <summary>The factors' values in a row, SI.</summary>
    /// <param name="factors">The factors.</param>
    /// <param name="row">The row, from 0.</param>
    /// <exception cref="ArgumentException">As <see cref="Rows"/>, or there is no such row.</exception>
    public double[] Values(IReadOnlyList<Factor> factors, int row)
    {
        var count = Rows(factors);
        Check.Range(row, 0, count - 1, Quantity.Number);
        var values = new double[factors.Count];
        if (Kind == DesignKind.Factorial)
        {
            var left = row;
            for (var f = factors.Count - 1; f >= 0; f--)
            {
                values[f] = factors[f].Level(left % factors[f].Levels);
                left /= factors[f].Levels;
            }
            return values;
        }
        for (var f = 0; f < values.Length; f++)
        {
            values[f] = factors[f].At(Coordinate(row, f));
        }
        return values;
    }

    /// <summary>The coordinate of a sampled row in (0, 1).</summary>
    internal double Coordinate(int row, int dimension) => Kind switch
    {
        DesignKind.LowDiscrepancy => Sobol.Scrambled((uint)row, dimension, Seed),
        DesignKind.LatinHypercube => (Permutation.Of(row, rows, Seed, dimension) + CounterRandom.Uniform(Seed, row, dimension)) / rows,
        _ => CounterRandom.Uniform(Seed, row, dimension),
    };

    private static int Checked(int rows) => (int)Check.Range(rows, 1, MostRows, Quantity.Number);

    /// <summary>The kind, the rows and the seed.</summary>
    public override string ToString() => Kind == DesignKind.Factorial ? "every combination" : FormattableString.Invariant($"{Kind} of {rows} rows, seed {Seed}");
}
