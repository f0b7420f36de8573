using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;

namespace BallSim.Notebooks.Tests;

/// <summary>
/// The code in the guides and on the packages' own pages runs as it stands there, each page as one conversation, with the usings that the package brings and those that every project has. Found by listing.
/// </summary>
public partial class GuideRuns
{
    private static readonly string Root = RootAbove(AppContext.BaseDirectory);

    private static IEnumerable<string> Pages =>
        Directory.EnumerateFiles(Path.Combine(Root, "src", "Docs"), "*.md", SearchOption.AllDirectories)
            .Concat(Directory.EnumerateFiles(Path.Combine(Root, "src"), "README.package.md", SearchOption.AllDirectories))
            .Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/'))
            .Where(f => !f.Split('/').Any(part => part is "obj" or "bin"))
            .Where(f => Block().IsMatch(File.ReadAllText(Path.Combine(Root, f))))
            .Order();

    public static TheoryData<string> All => [.. Pages];

    [Fact]
    public void The_guides_and_the_packages_show_code() =>
        Assert.Superset(new HashSet<string> { "src/BallSim/README.package.md", "src/Docs/index.md", "src/Docs/guides/embedding.md" }, Pages.ToHashSet());

    [Theory, MemberData(nameof(All))]
    public async Task It_runs(string page)
    {
        var platform = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator);
        var options = ScriptOptions.Default.WithReferences(platform).WithLanguageVersion(LanguageVersion.Latest)
            .AddImports("System", "System.Collections.Generic", "System.IO", "System.Linq", "System.Threading", "System.Threading.Tasks")
            .AddImports(XDocument.Load(Path.Combine(Root, "src", "BallSim", "buildTransitive", "BallSim.props")).Descendants("Using").Select(u => u.Attribute("Include")!.Value));
        ScriptState<object>? state = null;
        foreach (var code in Block().Matches(File.ReadAllText(Path.Combine(Root, page))).Select(m => m.Groups["code"].Value))
        {
            try
            {
                // A conversation knows no using declarations: what is thrown away at the end of a program lives on here.
                var said = code.Replace("using var ", "var ");
                state = state is null ? await CSharpScript.RunAsync(said, options) : await state.ContinueWithAsync(said, options);
            }
            catch (Exception e)
            {
                Assert.Fail($"{page}: {e.Message}\n{code}");
            }
        }
    }

    /// <summary>Tests named on the page of sources exist, and what is solved outside the project is named there.</summary>
    [Fact]
    public void The_page_of_sources_names_every_reference()
    {
        var page = File.ReadAllText(Path.Combine(Root, "src", "Docs", "guides", "validation.md"));
        var tests = Path.Combine(Root, "tests", "BallSim.Tests");
        var there = Directory.EnumerateFiles(tests, "*.cs", SearchOption.AllDirectories).Select(f => Path.GetFileNameWithoutExtension(f)).ToHashSet();
        var named = FirstColumn().Matches(page).SelectMany(row => Name().Matches(row.Value)).Select(m => m.Groups["name"].Value).ToHashSet();
        Assert.Empty(named.Except(there));
        var references = from file in Directory.EnumerateFiles(Path.Combine(tests, "References"), "*.cs")
                         where TestMark().IsMatch(File.ReadAllText(file))
                         select Path.GetFileNameWithoutExtension(file);
        Assert.Empty(references.Except(named));

        var sources = File.ReadAllText(Path.Combine(Root, "tests", "data", "SOURCES.md"));
        Assert.All(Directory.EnumerateFiles(Path.Combine(Root, "tests", "data")).Select(f => Path.GetFileName(f)).Where(f => f != "SOURCES.md"), f => Assert.Contains($"| {f} |", sources));
    }

    private static string RootAbove(string folder)
    {
        var at = new DirectoryInfo(folder);
        while (!File.Exists(Path.Combine(at.FullName, "BallSim.sln")))
        {
            at = at.Parent ?? throw new DirectoryNotFoundException($"no folder with BallSim.sln above {folder}");
        }
        return at.FullName;
    }

    [GeneratedRegex(@"^```csharp[^\n]*\n(?<code>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();

    [GeneratedRegex(@"^\| `[^|]*\|", RegexOptions.Multiline)]
    private static partial Regex FirstColumn();

    [GeneratedRegex(@"`(?<name>\w+)`")]
    private static partial Regex Name();

    [GeneratedRegex(@"\[(Fact|Theory|Property)\b")]
    private static partial Regex TestMark();
}
