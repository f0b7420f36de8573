using System.Numerics;

namespace BallSim.Sweeps;

/// <summary>
/// A random permutation of 0 ... n-1 of which any entry is found without the others: a Feistel network on the next power of four, its rounds drawn by seed, walked along its cycle until it falls
/// below n (Black and Rogaway, Ciphers with arbitrary finite domains, 2002).
/// </summary>
internal static class Permutation
{
    private const int Rounds = 7;

    public static int Of(int index, int count, int seed, int stream)
    {
        var half = Math.Max(1, (BitOperations.Log2((uint)Math.Max(1, count - 1)) + 2) / 2);
        var mask = (1u << half) - 1;
        var at = (uint)index;
        do
        {
            var (left, right) = (at >> half, at & mask);
            for (var round = 0; round < Rounds; round++)
            {
                (left, right) = (right, left ^ (CounterRandom.Bits(seed, right, stream, round) & mask));
            }
            at = (left << half) | right;
        }
        while (at >= (uint)count);
        return (int)at;
    }
}
