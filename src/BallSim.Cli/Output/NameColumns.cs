using BallSim.Files;
using BallSim.Shots;
using Spectre.Console;

namespace BallSim.Cli;

/// <summary>Which names tell the rows of a comparison apart, and the heading that states the others once.</summary>
internal sealed class NameColumns
{
    private static readonly (string Heading, Func<Candidate, string> Name)[] All =
    [
        ("Ball", c => c.BallName),
        ("Layout", c => c.LayoutName),
        ("Finish", c => c.FinishName),
        ("Release", c => c.ReleaseName),
        ("Lane", c => c.LaneName),
    ];

    // Eleven columns must fit in a hundred characters.
    private static readonly Padding Narrow = new(0, 0, 1, 0);

    private readonly (string Heading, Func<Candidate, string> Name)[] varying;
    private readonly string constant;

    public NameColumns(IReadOnlyList<ComparisonRow> rows)
    {
        varying = [.. All.Where(a => rows.Select(r => a.Name(r.Candidate)).Distinct().Skip(1).Any())];
        constant = string.Join(", ", All.Except(varying).Select(a => (a.Heading, Name: a.Name(rows[0].Candidate))).Where(a => a.Name.Length > 0)
            .Select(a => $"{a.Heading.ToLowerInvariant()} \"{a.Name}\""));
    }

    /// <summary>The title, and what all rows have in common.</summary>
    public void Heading(Screen screen, Scenario scenario)
    {
        if (scenario.Title.Length > 0)
        {
            screen.Say(scenario.Title);
        }
        var bowler = scenario.Bowler;
        var who = bowler.Name.Length > 0 ? $"{bowler.Name} ({(bowler.Axis.Hand == Hand.Right ? "right" : "left")} hand)" : bowler.Axis.ToString();
        screen.Say(constant.Length > 0 ? $"{who}; {constant}." : $"{who}.");
        screen.Output.WriteLine();
    }

    public void AddTo(Table table)
    {
        foreach (var (heading, _) in varying)
        {
            table.AddColumn(new TableColumn(new Text(heading)) { Padding = Narrow });
        }
    }

    public IEnumerable<string> Of(Candidate candidate) => varying.Select(v => v.Name(candidate));

    /// <summary>The table all comparisons share: a rule under the headings and nothing else.</summary>
    public static Table NewTable() => new Table { Border = TableBorder.Simple, ShowRowSeparators = false }.Collapse();

    /// <summary>A column of numbers: never broken, flush right.</summary>
    public static TableColumn Numbers(string heading) => new TableColumn(new Text(heading)) { NoWrap = true, Alignment = Justify.Right, Padding = Narrow };

    /// <summary>A row of plain texts; names are never read as markup.</summary>
    public static void AddRow(Table table, IEnumerable<string> cells) => table.AddRow(cells.Select(c => new Text(c)));
}
