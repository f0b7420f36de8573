namespace BallSim.Files.Text;

/// <summary>How a complaint about a file is worded: the file, the place in it, what is wrong.</summary>
internal static class BadFile
{
    /// <summary>"FILE: PLACE: SENTENCE"; the place is left out where it is the whole file.</summary>
    public static BadFileException At(string file, string place, string sentence) =>
        new(place.Length == 0 ? $"{file}: {sentence}" : $"{file}: {place}: {sentence}");
}
