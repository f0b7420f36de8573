namespace BallSim.Files.Text;

/// <summary>
/// Files that a scenario names: beside it or below, never elsewhere, never by way of a symbolic link, and never a device or a pipe, so that a scenario from a stranger reads nothing it should not and waits for nobody.
/// </summary>
internal static class Companion
{
    /// <summary>
    /// The full path of a file named relative to the folder of <paramref name="owner"/>, or null and the sentence that says why it is
    /// refused.
    /// </summary>
    public static string? Of(string owner, string relative, out string sentence)
    {
        sentence = "";
        if (Path.IsPathRooted(relative) || (relative.Length > 1 && relative[1] == ':') || relative.Contains('\\'))
        {
            sentence = "must be a path relative to this file, written with /";
            return null;
        }
        if (relative.Split('/').Any(part => part is ".." or "." or ""))
        {
            sentence = "must stay in the folder of this file: no \"..\" and no empty part";
            return null;
        }
        var path = Path.GetDirectoryName(owner) ?? "";
        foreach (var part in relative.Split('/'))
        {
            path = Path.Combine(path, part);
            if (new FileInfo(path).LinkTarget is not null)
            {
                sentence = "is or lies behind a symbolic link, and links are not followed; put the file itself beside this one";
                return null;
            }
        }
        // Pipes and devices have no length; to open one might wait for ever.
        if (new FileInfo(path) is { Exists: true, Length: 0 })
        {
            sentence = "is empty, or no ordinary file";
            return null;
        }
        return path;
    }
}
