using BallSim.Files;

namespace BallSim.Cli;

/// <summary>Writes a page, and says in a sentence why it cannot.</summary>
internal static class PageFile
{
    public static void Save(string path, Action<string> save)
    {
        try
        {
            save(path);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException or NotSupportedException or ArgumentException)
        {
            throw new BadFileException($"{path}: {(Directory.Exists(path) ? "is a folder; name a file to write" : $"cannot be written: {e.Message}")}");
        }
    }
}
