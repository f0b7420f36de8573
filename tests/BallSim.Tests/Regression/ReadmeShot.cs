using System.Text.RegularExpressions;
using BallSim.Shots;
using BallSim.Tests.Api;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;
using static BallSim.Units;

namespace BallSim.Tests.Regression;

/// <summary>The shot on the first page is a good one, by the program that stands there, and the output shown is the program's own.</summary>
public partial class ReadmeShot
{
    private static readonly Lazy<Task<Shot>> Thrown = new(Run);

    private static string Page => File.ReadAllText(Path.Combine(Source.Root, "README.md"));

    [Fact]
    public async Task It_hits_the_pocket()
    {
        // Pocket at board 17.5: USBC study. A board either way: the zone of more than 95 % strikes is 5.0 to 7.6 cm from the centre at 6 degrees, which is a board (Physics Today, Oct 2025).
        var entry = (await Thrown.Value).Entry;
        Assert.True(entry.TouchesHeadPin);
        Assert.InRange(entry.BoardAtPinLine, 16.5, 18.5);
        Assert.InRange(entry.Board, 16.5, 18.5);
    }

    [Fact]
    public async Task It_enters_at_the_angle_that_bowlers_aim_for() =>
        // USBC: 4 to 6 degrees.
        Assert.InRange((await Thrown.Value).Entry.Angle / Degree, 4, 6);

    [Fact]
    public async Task It_turns_where_such_shots_turn()
    {
        // Common practice, no source: on oil of about 40 ft the breakpoint of a hooking ball lies some feet past the oil, near board 8.
        var breakpoint = (await Thrown.Value).Breakpoint;
        Assert.False(breakpoint.IsEnd);
        Assert.InRange(breakpoint.Board, 6, 11);
        Assert.InRange(breakpoint.Distance / Foot, 38, 47);
    }

    [Fact]
    public async Task The_output_shown_is_its_own()
    {
        var shot = await Thrown.Value;
        var shown = Page.ReplaceLineEndings("\n");
        Assert.Contains(FormattableString.Invariant($"{shot.Entry.Angle / Degree:F2} deg at board {shot.Entry.Board:F1}\n"), shown);
        Assert.Contains(shot.ToString().ReplaceLineEndings("\n").TrimEnd(), shown);
    }

    private static async Task<Shot> Run()
    {
        var program = Program().Match(Page).Groups["code"].Value;
        Assert.InRange(program.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length, 5, 10);
        var options = ScriptOptions.Default
            .AddReferences(typeof(Shot).Assembly)
            .AddImports("System", "BallSim", "BallSim.Balls", "BallSim.Drilling", "BallSim.Friction", "BallSim.Lanes", "BallSim.Releases", "BallSim.Shots");
        var state = await CSharpScript.RunAsync(program, options);
        return (Shot)state.GetVariable("shot").Value;
    }

    [GeneratedRegex(@"^```csharp[^\n]*\n(?<code>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Program();
}
