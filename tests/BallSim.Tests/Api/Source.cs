namespace BallSim.Tests.Api;

/// <summary>The repository that these tests were built from.</summary>
internal static class Source
{
    /// <summary>The folder with BallSim.sln, above the test's binaries.</summary>
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    /// <summary>Every C# file under a folder of the repository that is written by hand, by its path from the root.</summary>
    public static IEnumerable<(string Name, string[] Lines)> Files(string folder) =>
        from path in Directory.EnumerateFiles(Path.Combine(Root, folder), "*.cs", SearchOption.AllDirectories)
        let name = Path.GetRelativePath(Root, path)
        where !name.Split(Path.DirectorySeparatorChar).Any(part => part is "obj" or "bin")
        orderby name
        select (name, File.ReadAllLines(path));

    private static string Find(string folder)
    {
        for (var at = new DirectoryInfo(folder); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "BallSim.sln")))
            {
                return at.FullName;
            }
        }
        throw new DirectoryNotFoundException($"no folder with BallSim.sln above {folder}");
    }
}
