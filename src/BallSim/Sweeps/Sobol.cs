namespace BallSim.Sweeps;

/// <summary>
/// Sobol's low-discrepancy sequence in up to twenty dimensions, and Owen's nested scrambling of it by a seed.
/// </summary>
/// <remarks>
/// With a primitive polynomial of degree s and inner coefficients a, and m₁ ... mₛ given, direction numbers vₖ = mₖ 2^(32-k) follow from
/// <code>
/// mₖ = 2 a₁ mₖ₋₁ ⊕ 4 a₂ mₖ₋₂ ⊕ ... ⊕ 2^s mₖ₋ₛ ⊕ mₖ₋ₛ
/// </code>
/// and the point of index i is the exclusive or of the vₖ of the bits set in i. Polynomials and initial numbers: Joe and Kuo, Constructing Sobol sequences with better two-dimensional projections,
/// SIAM J. Sci. Comput. 30 (2008) 2635, the first lines of their table, from memory. The test checks that every dimension is primitive and stratified, and compares with an outside implementation.
/// Scrambling: Owen, Randomly permuted (t,m,s)-nets and (t,s)-sequences, 1995: every bit is flipped or not by what the bits above it are, which keeps the stratification and makes every point uniform.
/// </remarks>
internal static class Sobol
{
    public const int Bits = 32;

    private static readonly (int Degree, int Inner, int[] Initial)[] Table =
    [
        (1, 0, [1]), (2, 1, [1, 3]), (3, 1, [1, 3, 1]), (3, 2, [1, 1, 1]), (4, 1, [1, 1, 3, 3]), (4, 4, [1, 3, 5, 13]), (5, 2, [1, 1, 5, 5, 17]), (5, 4, [1, 1, 5, 5, 5]), (5, 7, [1, 1, 7, 11, 19]),
        (5, 11, [1, 1, 5, 1, 1]), (5, 13, [1, 1, 1, 3, 11]), (5, 14, [1, 3, 5, 5, 31]), (6, 1, [1, 3, 3, 9, 7, 49]), (6, 13, [1, 1, 1, 15, 21, 21]), (6, 16, [1, 3, 1, 13, 27, 49]), (6, 19, [1, 1, 1, 15, 7, 5]),
        (6, 22, [1, 3, 1, 15, 13, 25]), (6, 25, [1, 1, 5, 5, 19, 61]), (7, 1, [1, 3, 7, 11, 23, 15, 103]),
    ];

    private static readonly uint[][] Directions = [VanDerCorput(), .. Table.Select(t => Numbers(t.Degree, t.Inner, t.Initial))];

    /// <summary>The first dimension needs no polynomial.</summary>
    public static int Dimensions => Table.Length + 1;

    /// <summary>The thirty-two binary digits of one coordinate.</summary>
    public static uint Digits(uint index, int dimension)
    {
        var numbers = Directions[dimension];
        uint digits = 0;
        for (var k = 0; index != 0; k++, index >>= 1)
        {
            digits ^= (index & 1) != 0 ? numbers[k] : 0;
        }
        return digits;
    }

    /// <summary>A scrambled coordinate in (0, 1), in the middle of its last cell.</summary>
    public static double Scrambled(uint index, int dimension, int seed) => (Scramble(Digits(index, dimension), dimension, seed) + 0.5) / (1L << Bits);

    private static uint Scramble(uint digits, int dimension, int seed)
    {
        var start = Mixed(((ulong)(uint)seed << 32) | (uint)dimension);
        uint result = 0;
        for (var bit = Bits - 1; bit >= 0; bit--)
        {
            // The node of the tree: how deep, and which bits lead there; above the first bit there are none.
            var above = bit == Bits - 1 ? 0 : digits >> (bit + 1);
            var flip = (uint)(Mixed(start ^ (((ulong)(uint)bit << 32) | above)) >> 63);
            result |= (((digits >> bit) & 1) ^ flip) << bit;
        }
        return result;
    }

    // The finaliser of SplitMix64 (Steele, Lea, Flood: Fast splittable pseudorandom number generators. OOPSLA 2014).
    private static ulong Mixed(ulong z)
    {
        z += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    private static uint[] VanDerCorput() => [.. Enumerable.Range(0, Bits).Select(k => 1u << (Bits - 1 - k))];

    private static uint[] Numbers(int degree, int inner, int[] initial)
    {
        var m = new ulong[Bits];
        for (var k = 0; k < Bits; k++)
        {
            if (k < degree)
            {
                m[k] = (ulong)initial[k];
                continue;
            }
            m[k] = m[k - degree] ^ (m[k - degree] << degree);
            for (var j = 1; j < degree; j++)
            {
                m[k] ^= ((inner >> (degree - 1 - j)) & 1) != 0 ? m[k - j] << j : 0;
            }
        }
        return [.. m.Select((n, k) => (uint)(n << (Bits - 1 - k)))];
    }
}
