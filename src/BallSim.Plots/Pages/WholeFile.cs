namespace BallSim.Plots.Pages;

/// <summary>Files replaced as a whole: written beside the target and renamed, so that whoever reads meanwhile, and whatever fails, there is a whole file.</summary>
internal static class WholeFile
{
    public static void Replace(string path, string text)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        var temporary = $"{path}.{Environment.ProcessId}.tmp";
        try
        {
            File.WriteAllText(temporary, text);
            File.Move(temporary, path, overwrite: true);
        }
        finally
        {
            File.Delete(temporary);
        }
    }
}
