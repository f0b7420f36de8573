namespace BallSim.Files;

/// <summary>One machine's part of a sweep.</summary>
public readonly record struct Shard
{
    /// <summary>Part <paramref name="number"/> of <paramref name="of"/>.</summary>
    /// <param name="number">Which part, from 1.</param>
    /// <param name="of">How many parts there are, 1 to 100 000; more than there are blocks of rows leaves some without work.</param>
    /// <exception cref="ArgumentException">There is no such part.</exception>
    public Shard(int number, int of)
    {
        if (of is < 1 or > 100_000)
        {
            throw new ArgumentOutOfRangeException(nameof(of), of, $"{of} parts; there can be 1 to 100000");
        }
        if (number < 1 || number > of)
        {
            throw new ArgumentOutOfRangeException(nameof(number), number, $"part {number} of {of}; parts are counted from 1 to {of}");
        }
        (Number, Of) = (number, of);
    }

    /// <summary>Which part, from 1.</summary>
    public int Number { get; }

    /// <summary>How many parts there are.</summary>
    public int Of { get; }

    /// <summary>The blocks of this part out of all: neighbours, and every block is in just one part.</summary>
    internal (int From, int To) Blocks(int blocks) => ((int)((long)blocks * (Number - 1) / Of), (int)((long)blocks * Number / Of));
}
