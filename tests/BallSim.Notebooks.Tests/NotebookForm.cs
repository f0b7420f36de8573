using System.Text.Json;
using System.Text.RegularExpressions;

namespace BallSim.Notebooks.Tests;

/// <summary>How a notebook is kept: nothing in it that comes from one machine or one run.</summary>
public partial class NotebookForm
{
    public static TheoryData<string> All => Notebook.All;

    [Fact]
    public void There_are_notebooks() => Assert.NotEmpty(Notebook.All);

    [Theory, MemberData(nameof(All))]
    public void It_opens_with_the_standard_cell(string name) =>
        Assert.Equal(Notebook.FirstCell, Notebook.Source(Notebook.Named(name).CodeCells.First()));

    [Theory, MemberData(nameof(All))]
    public void It_says_first_what_one_will_learn(string name)
    {
        var first = Notebook.Named(name).Cells[0];
        Assert.Equal("markdown", first.GetProperty("cell_type").GetString());
        Assert.StartsWith("# ", Notebook.Source(first));
        Assert.Contains("After this notebook you can", Notebook.Source(first));
    }

    [Theory, MemberData(nameof(All))]
    public void Its_outputs_are_stripped(string name) => Assert.All(Notebook.Named(name).CodeCells, cell =>
    {
        Assert.Empty(cell.GetProperty("outputs").EnumerateArray());
        Assert.Equal(JsonValueKind.Null, cell.GetProperty("execution_count").ValueKind);
    });

    [Theory, MemberData(nameof(All))]
    public void It_names_no_absolute_path(string name) => Assert.All(Notebook.Named(name).Cells, cell => Assert.DoesNotMatch(AbsolutePath(), Notebook.Source(cell)));

    [Theory]
    [InlineData("\"/home/me/x.csv\"", true)]
    [InlineData("@\"C:\\data\"", true)]
    [InlineData("\\\\server\\share", true)]
    [InlineData("a ~/x", true)]
    [InlineData("shot.Entry.Angle / Degree + b /c", false)]
    [InlineData("\"../data/x.csv\" and https://example.org/a/b", false)]
    public void The_rule_about_paths_tells_them_apart(string text, bool isAbsolute) => Assert.Equal(isAbsolute, AbsolutePath().IsMatch(text));

    [GeneratedRegex(@"(^|[""'\s(=`])(/\w[\w.-]*/|~/|[A-Za-z]:[\\/](?!/)|\\\\\w)")]
    private static partial Regex AbsolutePath();
}
