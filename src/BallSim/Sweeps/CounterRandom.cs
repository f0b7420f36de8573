namespace BallSim.Sweeps;

/// <summary>
/// Random numbers that are a function of where they are asked for: seed, row, stream and draw. No state, so that a row is the same in whatever order, chunk, shard or thread it is computed.
/// </summary>
/// <remarks>Philox 4x32 with ten rounds (Salmon, Moraes, Dror, Shaw: Parallel random numbers: as easy as 1, 2, 3. SC 2011); its constants from memory, checked against its published known answers.</remarks>
internal static class CounterRandom
{
    private const uint Multiplier0 = 0xD2511F53, Multiplier1 = 0xCD9E8D57, Weyl0 = 0x9E3779B9, Weyl1 = 0xBB67AE85;
    private const int Rounds = 10;

    public static (uint A, uint B, uint C, uint D) Block((uint A, uint B, uint C, uint D) counter, (uint A, uint B) key)
    {
        var (a, b, c, d) = counter;
        var (k, l) = key;
        for (var round = 0; round < Rounds; round++)
        {
            var p = (ulong)Multiplier0 * a;
            var q = (ulong)Multiplier1 * c;
            (a, b, c, d) = ((uint)(q >> 32) ^ b ^ k, (uint)q, (uint)(p >> 32) ^ d ^ l, (uint)p);
            k += Weyl0;
            l += Weyl1;
        }
        return (a, b, c, d);
    }

    /// <summary>A number in (0, 1), neither end included.</summary>
    public static double Uniform(int seed, long row, int stream, int draw = 0)
    {
        var (a, b, _, _) = Block(((uint)row, (uint)(row >> 32), (uint)stream, (uint)draw), ((uint)seed, 0));
        return ((((ulong)a << 21) ^ (b >> 11)) + 0.5) * (1.0 / (1L << 53));
    }

    /// <summary>A whole number in [0, below).</summary>
    public static int Below(int below, int seed, long row, int stream, int draw = 0) => (int)(Uniform(seed, row, stream, draw) * below);

    /// <summary>Thirty-two bits.</summary>
    public static uint Bits(int seed, long row, int stream, int draw = 0) => Block(((uint)row, (uint)(row >> 32), (uint)stream, (uint)draw), ((uint)seed, 1)).A;
}
