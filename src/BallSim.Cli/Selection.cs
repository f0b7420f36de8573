using System.CommandLine;
using BallSim.Files;

namespace BallSim.Cli;

/// <summary>The options that pick one item of a list by its name.</summary>
internal sealed class Selection
{
    private readonly Option<string?> ball = Named("--ball", "ball");
    private readonly Option<string?> layout = Named("--layout", "layout");
    private readonly Option<string?> finish = Named("--finish", "finish");
    private readonly Option<string?> release = Named("--release", "release");
    private readonly Option<string?> lane = Named("--lane", "lane");

    public void AddTo(Command command)
    {
        foreach (var option in new[] { ball, layout, finish, release, lane })
        {
            command.Add(option);
        }
    }

    /// <summary>True if anything was picked.</summary>
    public bool IsGiven(ParseResult parsed) => new[] { ball, layout, finish, release, lane }.Any(option => parsed.GetValue(option) is not null);

    /// <summary>The scenario with the lists cut down to what was picked.</summary>
    public Scenario Of(Scenario scenario, ParseResult parsed) => scenario with
    {
        Balls = Picked(scenario.Balls, b => b.Name, parsed.GetValue(ball), "ball"),
        Layouts = Picked(scenario.Layouts, l => l.Name, parsed.GetValue(layout), "layout"),
        Finishes = Picked(scenario.Finishes, f => f.Name, parsed.GetValue(finish), "finish"),
        Releases = Picked(scenario.Releases, r => r.Name, parsed.GetValue(release), "release"),
        Lanes = Picked(scenario.Lanes, l => l.Name, parsed.GetValue(lane), "lane"),
    };

    private static Option<string?> Named(string option, string what) => new(option) { Description = $"The {what} of this name alone", HelpName = "NAME" };

    private static IReadOnlyList<T> Picked<T>(IReadOnlyList<T> items, Func<T, string> nameOf, string? name, string what)
    {
        if (name is null)
        {
            return items;
        }
        var found = items.Where(i => string.Equals(nameOf(i), name, StringComparison.OrdinalIgnoreCase)).ToArray();
        return found.Length > 0 ? found : throw new WrongCommandLineException(items.Count == 0
            ? $"--{what} {name}: the scenario names no such list"
            : $"--{what} {name}: there is no {what} of this name; the scenario has {string.Join(", ", items.Select(i => $"\"{nameOf(i)}\""))}");
    }
}
