namespace BallSim.Files.Text;

/// <summary>The likeliest word meant by one that is not known.</summary>
internal static class Nearest
{
    /// <summary>
    /// The candidate fewest edits away from <paramref name="word"/>, or null when none is near: more than a third of the letters wrong, and
    /// at least one allowed.
    /// </summary>
    public static string? To(string word, IEnumerable<string> candidates)
    {
        string? best = null;
        int least = int.MaxValue;
        foreach (var candidate in candidates)
        {
            int edits = Edits(word.ToLowerInvariant(), candidate.ToLowerInvariant());
            if (edits < least)
            {
                (best, least) = (candidate, edits);
            }
        }
        return best is not null && least <= Math.Max(1, Math.Max(word.Length, best.Length) / 3) ? best : null;
    }

    /// <summary>"; did you mean X?", or nothing.</summary>
    public static string Question(string word, IEnumerable<string> candidates) => To(word, candidates) is { } near ? $"; did you mean \"{near}\"?" : "";

    // Letters inserted, left out, exchanged, or two neighbours swapped; words longer than any name here are not worth the table.
    private static int Edits(string a, string b)
    {
        if (a.Length > 64 || b.Length > 64)
        {
            return int.MaxValue;
        }
        var d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    d[i, j] = i + j;
                    continue;
                }
                int same = a[i - 1] == b[j - 1] ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j], d[i, j - 1]) + 1, d[i - 1, j - 1] + same);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }
        return d[a.Length, b.Length];
    }
}
