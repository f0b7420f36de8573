using System.Text.Json;

namespace BallSim.Notebooks.Tests;

/// <summary>A notebook as its file has it.</summary>
internal sealed class Notebook
{
    /// <summary>The one line of every notebook's first code cell.</summary>
    public const string FirstCell = "#!import setup.csx";

    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "notebooks");

    private Notebook(string name, JsonElement root)
    {
        Name = name;
        Cells = [.. root.GetProperty("cells").EnumerateArray()];
    }

    public string Name { get; }

    public JsonElement[] Cells { get; }

    public IEnumerable<JsonElement> CodeCells => Cells.Where(c => c.GetProperty("cell_type").GetString() == "code");

    /// <summary>All notebooks there are: a new one is tested without being named anywhere.</summary>
    public static TheoryData<string> All => [.. Directory.GetFiles(Folder, "*.ipynb").Select(f => Path.GetFileName(f)!).Order()];

    public static Notebook Named(string name) => new(name, JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, name))).RootElement);

    /// <summary>The using lines of the setup file.</summary>
    public static string SetupUsings => string.Join('\n', File.ReadAllLines(Path.Combine(Folder, "setup.csx")).Where(line => line.StartsWith("using ", StringComparison.Ordinal)));

    public static string Source(JsonElement cell) => string.Concat(cell.GetProperty("source").EnumerateArray().Select(line => line.GetString()));
}
