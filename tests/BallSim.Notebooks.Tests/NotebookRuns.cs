using BallSim.Plots;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;
using Plotly.NET;

namespace BallSim.Notebooks.Tests;

/// <summary>Every notebook runs from top to bottom, cell by cell, without Jupyter and its kernel.</summary>
public class NotebookRuns
{
    public static TheoryData<string> All => Notebook.All;

    [Theory, MemberData(nameof(All))]
    public async Task It_runs(string name)
    {
        var platform = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator);
        var options = ScriptOptions.Default.WithReferences(platform).WithLanguageVersion(LanguageVersion.Latest);
        var state = await CSharpScript.RunAsync(Notebook.SetupUsings, options);
        foreach (var cell in Notebook.Named(name).CodeCells.Skip(1))
        {
            var source = Notebook.Source(cell);
            try
            {
                state = await state.ContinueWithAsync(source);
            }
            catch (Exception e)
            {
                Assert.Fail($"{name}: {e.Message}\nin the cell\n{source}");
            }
            if (state.ReturnValue is GenericChart chart)
            {
                Assert.Contains("\"data\"", GenericChart.toFigureJson(chart));
                Assert.Contains("<body", chart.ToHtml());
            }
        }
    }
}
