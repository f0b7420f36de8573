using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;

namespace BallSim.Tests.Api;

/// <summary>
/// What the first page shows is run as it stands there, block after block as one conversation, with the usings that the package brings and
/// those that every project has.
/// </summary>
public partial class ReadmeTests
{
    private static string Page => File.ReadAllText(Path.Combine(Source.Root, "README.md"));

    private static IEnumerable<Assembly> Libraries =>
        Directory.EnumerateFiles(AppContext.BaseDirectory, "BallSim*.dll").Where(f => !f.EndsWith(".Tests.dll", StringComparison.Ordinal)).Select(Assembly.LoadFrom);

    [Fact]
    public async Task Every_csharp_block_of_the_first_page_runs()
    {
        var blocks = Block().Matches(Page).Select(m => m.Groups["code"].Value).ToArray();
        Assert.NotEmpty(blocks);
        var options = ScriptOptions.Default
            .AddReferences(Libraries)
            .AddImports("System", "System.Collections.Generic", "System.IO", "System.Linq", "System.Threading", "System.Threading.Tasks")
            .AddImports(XDocument.Load(Path.Combine(Source.Root, "src", "BallSim", "buildTransitive", "BallSim.props")).Descendants("Using").Select(u => u.Attribute("Include")!.Value));
        ScriptState<object>? state = null;
        foreach (var (block, number) in blocks.Select((b, i) => (b, i + 1)))
        {
            try
            {
                state = state is null ? await CSharpScript.RunAsync(block, options) : await state.ContinueWithAsync(block, options);
            }
            catch (Exception e) when (e is CompilationErrorException or ArgumentException or InvalidOperationException)
            {
                Assert.Fail($"block {number} of README.md: {e.Message}\n{block}");
            }
        }
    }

    [GeneratedRegex(@"^```csharp[^\n]*\n(?<code>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();
}
