namespace BallSim.Files.Text;

/// <summary>
/// Files that a scenario names: beside it or below, never elsewhere, so that a scenario from a stranger reads nothing it should not.
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
        return Path.Combine(Path.GetDirectoryName(owner) ?? "", relative);
    }
}
