using Spectre.Console;

namespace BallSim.Cli;

/// <summary>A sheet: what on the left, its value on the right, no headings.</summary>
internal static class Sheet
{
    public static Table New()
    {
        var table = NameColumns.NewTable();
        table.HideHeaders();
        return table.AddColumn(new TableColumn("") { NoWrap = true }).AddColumn(new(""));
    }
}
