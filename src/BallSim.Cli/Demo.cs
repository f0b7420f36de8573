using BallSim.Files;

namespace BallSim.Cli;

/// <summary>The built-in demo: an invented bowling centre, ball and bowler, kept as the files that <c>ballsim init</c> writes.</summary>
internal static class Demo
{
    /// <summary>The names of the files, the scenario first.</summary>
    public static IReadOnlyList<string> Files { get; } = ["scenario.json", "ball.json", "oil.csv", "build.json", "bench.json", "sweep.json"];

    /// <summary>The text of one of them.</summary>
    public static byte[] Content(string file)
    {
        using var stream = typeof(Demo).Assembly.GetManifestResourceStream($"Demo/{file}")
            ?? throw new InvalidOperationException($"the demo's file {file} is missing from the assembly");
        var content = new byte[stream.Length];
        stream.ReadExactly(content);
        return content;
    }

    /// <summary>The demo as a scenario, read by the way every scenario is read.</summary>
    public static Scenario Scenario()
    {
        var folder = Directory.CreateTempSubdirectory("ballsim-");
        try
        {
            foreach (var file in Files)
            {
                File.WriteAllBytes(Path.Combine(folder.FullName, file), Content(file));
            }
            return BallSim.Files.Scenario.Read(Path.Combine(folder.FullName, Files[0]));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
