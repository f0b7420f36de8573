namespace BallSim.Files.Text;

/// <summary>How a complaint about a file is worded: the file, the place in it, what is wrong.</summary>
internal static class BadFile
{
    /// <summary>"FILE: PLACE: SENTENCE"; the place is left out where it is the whole file.</summary>
    public static BadFileException At(string file, string place, string sentence) =>
        new(Printable(place.Length == 0 ? $"{file}: {sentence}" : $"{file}: {place}: {sentence}"));

    // A complaint quotes the file, and a file from a stranger shall not steer the terminal that shows it.
    private static string Printable(string text) => text.AsSpan().ContainsAnyInRange('\0', '\x1F') || text.AsSpan().ContainsAnyInRange('\x7F', '\x9F')
        ? string.Create(text.Length, text, static (span, from) =>
        {
            for (var i = 0; i < span.Length; i++)
            {
                span[i] = char.IsControl(from[i]) ? '·' : from[i];
            }
        })
        : text;
}
