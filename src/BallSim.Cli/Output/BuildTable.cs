using BallSim.Files;
using Spectre.Console;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Cli;

/// <summary>The sheet of a built ball, and the line of weights that share its core.</summary>
internal static class BuildTable
{
    public static void Show(Screen screen, PouredBall poured)
    {
        screen.Say($"{poured.Drawing.Name}, undrilled");
        screen.Output.WriteLine();
        var table = Sheet.New();
        foreach (var (name, value) in Lines(poured))
        {
            NameColumns.AddRow(table, [name, value]);
        }
        screen.Show(table);
    }

    public static void Show(Screen screen, BallDrawing drawing, IReadOnlyList<PouredRow> rows)
    {
        screen.Say($"{drawing.Name}: the line from 6 to 16 lb with one core and cover");
        screen.Output.WriteLine();
        var table = NameColumns.NewTable();
        foreach (var heading in (string[])["Weight\n(lb)", "Low RG\n(in)", "High RG\n(in)", "Diff.\n(in)", "Interm.\n(in)", "Top\n(oz)", "Pin to CG\n(in)", "Filler\n(g/mL)", "Bubbles\n(% vol.)", "Core moved\n(in, z)"])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        foreach (var row in rows.Where(r => r.Poured is not null))
        {
            NameColumns.AddRow(table, Numbers(row, row.Poured!));
        }
        screen.Show(table);
        if (rows.Where(r => r.Poured is null).ToArray() is [var first, ..] refused)
        {
            screen.Output.WriteLine();
            screen.Say($"No such ball at {string.Join(", ", refused.Select(r => Invariant($"{r.Weight / Pound:F0}")))} lb: {first.Refusal}.");
        }
    }

    private static IEnumerable<string> Numbers(PouredRow row, PouredBall p)
    {
        var ball = p.Sheet.Ball;
        return
        [
            Invariant($"{row.Weight / Pound:F0}"), Trade.Rg(ball.LowRg), Trade.Rg(ball.HighRg), Trade.Rg(ball.Differential), Trade.Rg(ball.IntermediateDifferential),
            Trade.Ounces(p.TopWeight), Trade.Arc(p.Sheet.PinToCg), Invariant($"{p.Sheet.Build.FillerDensity / GramPerMillilitre:F3}"),
            p.Blend is { } b ? Invariant($"{100 * b.LightShare:F1}") : Trade.None, p.Shift is { } s ? Invariant($"{s.Shift / Inch:+0.000;-0.000;0.000}") : Trade.None,
        ];
    }

    private static IEnumerable<(string Name, string Value)> Lines(PouredBall p)
    {
        var (sheet, ball) = (p.Sheet, p.Sheet.Ball);
        yield return ("Weight, diameter", Invariant($"{ball.Mass / Pound:F2} lb, {2 * ball.Radius / Inch:F3} in"));
        yield return ("RG", $"low {Trade.Rg(ball.LowRg)}, intermediate {Trade.Rg(ball.IntermediateRg)}, high {Trade.Rg(ball.HighRg)} in");
        yield return ("Differential", $"total {Trade.Rg(ball.Differential)}, intermediate {Trade.Rg(ball.IntermediateDifferential)} in ({(sheet.IsAsymmetric ? "asymmetric" : "symmetric")})");
        yield return ("Pin", Trade.Direction(sheet.Pin));
        yield return ("Mass-bias mark", sheet.IsAsymmetric ? Trade.Direction(sheet.HighAxis) : "none: the ball is symmetric");
        yield return ("Pin to CG", sheet.PinToCg is { } arc ? Invariant($"{arc / Inch:F2} in; centre of mass {ball.CentreOfMass.Length / Millimetre:F2} mm off the centre") : "undefined: balanced");
        yield return ("Top weight", Invariant($"{p.TopWeight / Ounce:F2} oz (lever of the scale {p.Drawing.BalanceLever / Inch:F2} in{(p.Drawing.BalanceLever == 3.36 * Inch ? ", assumed" : "")})"));
        yield return ("Filler", Invariant($"{sheet.Build.FillerDensity / GramPerMillilitre:F3} g/mL") + Blend(p));
        if (p.Blend is { } blend)
        {
            yield return ("Weights possible", Invariant($"{blend.LeastWeight / Pound:F2} to {blend.GreatestWeight / Pound:F2} lb with this core and cover"));
        }
        if (p.Shift is { } shift)
        {
            yield return ("Core moved", Invariant($"{shift.Shift / Inch:+0.000;-0.000;0.000} in along z for the top weight; possible {shift.LeastTopWeight / Ounce:F2} to {shift.GreatestTopWeight / Ounce:F2} oz"));
        }
        yield return ("Cover", Invariant($"{sheet.Build.CoverThickness / Inch:0.###} in of {sheet.Build.CoverDensity / GramPerMillilitre:F3} g/mL, {ball.Cover.Name}"));
        foreach (var (core, number) in p.Sheet.Build.Core.Select((c, i) => (c, i + 1)))
        {
            yield return ($"Core piece {number}", Invariant($"{core.Solid.Name} of {core.Density / GramPerMillilitre:F3} g/mL, {core.Solid.Volume * core.Density / Ounce:F1} oz"));
        }
    }

    private static string Blend(PouredBall p) => p is { Blend: { } b, Drawing: { LightFiller: { } light, DenseFiller: { } dense } }
        ? Invariant($": {100 * b.LightShare:F1} % by volume of {light / GramPerMillilitre:0.###}, {100 * (1 - b.LightShare):F1} % of {dense / GramPerMillilitre:0.###} g/mL")
        : "";
}
