using System.Text.RegularExpressions;

namespace BallSim.Tests.Api;

/// <summary>What the source promises beside the code.</summary>
public partial class SourceTests
{
    private const int MostLines = 600;

    [Fact]
    public void No_source_file_is_longer_than_600_lines()
    {
        var files = new[] { "src", "tests" }.SelectMany(Source.Files).ToArray();
        Assert.True(files.Length > 100, $"only {files.Length} source files found under {Source.Root}");
        Assert.Empty(files.Where(f => f.Lines.Length > MostLines).Select(f => $"{f.Name}: {f.Lines.Length} lines"));
    }

    [Fact]
    public void Every_equation_cited_in_the_code_stands_in_the_sheet_of_equations()
    {
        var sheet = Tags(File.ReadAllText(Path.Combine(Source.Root, "src", "BallSim", "Motion", "README.md"))).ToHashSet();
        var cited = Source.Files("src").SelectMany(f => f.Lines.SelectMany(line => Tags(line).Select(tag => (Tag: tag, f.Name)))).Distinct().ToArray();
        Assert.Empty(cited.Where(c => !sheet.Contains(c.Tag)).Select(c => $"{c.Name} cites {c.Tag}"));
        // The friction law and the contact equations are cited at the least; without a citation the test would say nothing.
        Assert.Superset(new HashSet<string>(["(M6)", "(M7)", "(F1)"]), cited.Select(c => c.Tag).ToHashSet());
    }

    [Fact]
    public void The_sheet_of_equations_has_all_of_them() =>
        Assert.Superset(
            new HashSet<string>([.. Enumerable.Range(1, 8).Select(n => $"(M{n})"), .. Enumerable.Range(1, 7).Select(n => $"(F{n})")]),
            Tags(File.ReadAllText(Path.Combine(Source.Root, "src", "BallSim", "Motion", "README.md"))).ToHashSet());

    [GeneratedRegex(@"\([MF]\d+\)")]
    private static partial Regex Tag();

    private static IEnumerable<string> Tags(string text) => Tag().Matches(text).Select(m => m.Value);
}
