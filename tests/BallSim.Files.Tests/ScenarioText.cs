namespace BallSim.Files.Tests;

/// <summary>A small scenario that is right, for tests that change one thing in it, and a folder to put files in.</summary>
public sealed class ScenarioText : IDisposable
{
    public const string Whole = """
        {
          "title": "One of each",
          "bowler": { "name": "B", "hand": "right", "axis": { "over": "5 in", "up": "1/2 in" } },
          "balls": [{ "name": "First", "weight": "15 lb", "lowRg": "2.48 in", "differential": "0.05 in", "intermediateDifferential": "0.015 in" }],
          "layouts": [{ "name": "Strong", "pinToAxis": "4 in", "angleAtPin": "50 deg", "angleAtAxis": "40 deg" }],
          "finishes": [{ "name": "Sanded", "grit": 2000 }],
          "releases": [{ "name": "Usual", "board": 29, "launchAngle": "4 deg", "speed": "18.5 mph", "spinRate": "380 rpm", "axisRotation": "55 deg", "axisTilt": "13 deg" }],
          "lanes": [{ "name": "Fresh", "oil": { "shape": "crowned", "length": "40 ft", "volume": "25 mL" } }]
        }
        """;

    public string Folder { get; } = Directory.CreateTempSubdirectory("ballsim").FullName;

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    /// <summary>The path of a file with this content.</summary>
    public string File(string name, string content)
    {
        var path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        System.IO.File.WriteAllText(path, content);
        return path;
    }

    /// <summary>The scenario with one piece of text exchanged; the piece must be there.</summary>
    public string With(string old, string @new)
    {
        Assert.Contains(old, Whole);
        return File("s.json", Whole.Replace(old, @new));
    }

    /// <summary>The complaint about a file, the folder left out.</summary>
    public string Complaint(Action reading) => Assert.Throws<BadFileException>(reading).Message.Replace(Folder + Path.DirectorySeparatorChar, "");
}
