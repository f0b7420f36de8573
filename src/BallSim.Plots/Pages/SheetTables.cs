using System.Text;
using BallSim.Balls;
using BallSim.Drilling;
using static System.FormattableString;
using static BallSim.Plots.Pages.Document;
using static BallSim.Units;

namespace BallSim.Plots.Pages;

/// <summary>The drilled balls of a page, each with its picture and its numbers.</summary>
internal static class SheetTables
{
    public static string Of(IReadOnlyList<NamedSheet> sheets)
    {
        var text = new StringBuilder("<p class=\"note\">Drilling and sanding are work for trained hands: eyes, lungs and ears protected, the ball held fast, the machine's own rules and the local ones obeyed. "
            + "Check every measure on the ball before the drill touches it; a hole cannot be taken back.</p>\n<div class=\"sheets\">\n");
        for (var i = 0; i < sheets.Count; i++)
        {
            var (name, sheet) = (sheets[i].Name, sheets[i].Sheet);
            text.Append(Invariant($"<section class=\"sheet\"><h3>{Encoded(name)}</h3>\n")).Append(Drawing.Of(sheet.LayoutView($"Layout of {name}"), Invariant($"sheet-{i + 1}")).Html(caption: false));
            text.Append(Numbers(sheets[i])).Append(Holes(sheet, name)).Append("</section>\n");
        }
        return text.Append("</div>\n").ToString();
    }

    private static string Numbers(NamedSheet named)
    {
        var (sheet, lever) = (named.Sheet, named.BalanceLever);
        var text = new StringBuilder($"""<div class="box" tabindex="0" role="region" aria-label="Numbers of {Encoded(named.Name)}"><table><caption>Before and after the drill</caption><thead><tr><th scope="col">Quantity</th><th scope="col" class="number">before</th><th scope="col" class="number">after</th></tr></thead><tbody>""");
        void Row(string what, string before, string after) => text.Append($"<tr><th scope=\"row\">{what}</th><td class=\"number\">{before}</td><td class=\"number\">{after}</td></tr>\n");
        void Both(string what, Func<Ball, double> of, double unit, string digits)
        {
            string Text(Ball ball) => (of(ball) / unit).ToString(digits, System.Globalization.CultureInfo.InvariantCulture);
            Row(what, Text(sheet.Before), Text(sheet.Ball));
        }
        Both("weight, lb", b => b.Mass, Pound, "F2");
        Both("low RG, in", b => b.LowRg, Inch, "F3");
        Both("high RG, in", b => b.HighRg, Inch, "F3");
        Both("differential, in", b => b.Differential, Inch, "F4");
        Both("intermediate differential, in", b => b.IntermediateDifferential, Inch, "F4");
        if (sheet.Before.Marks.PositiveAxis is { } axis)
        {
            Both("RG about the bowler's axis, in", b => b.RgAbout(axis), Inch, "F3");
        }
        Both("centre of mass off the centre, mm", b => b.CentreOfMass.Length, Millimetre, "F2");
        var (was, now) = (StaticBalance.Of(sheet.Before, lever), StaticBalance.Of(sheet.Ball, lever));
        Row("top weight, oz", Signed(was.Top), Signed(now.Top));
        Row("side weight, oz (plus: towards the axis point)", Signed(was.Side), Signed(now.Side));
        Row("finger weight, oz (minus: thumb)", Signed(was.Finger), Signed(now.Finger));
        return text.Append(Invariant($"</tbody></table></div>\n<p>{sheet.Removed.Mass / Ounce:F1} oz removed, drilled out of: {Encoded(sheet.DrilledOutOf)}.{(sheet.PreferredAxisShift is { } moved ? Invariant($" The axis of highest RG moved {moved / Degree:F1}°.") : "")}</p>\n")).ToString();
    }

    private static string Holes(DrillSheet sheet, string name)
    {
        var text = new StringBuilder($"""<div class="box" tabindex="0" role="region" aria-label="Holes of {Encoded(name)}"><table><caption>Holes, in</caption><thead><tr><th scope="col">Hole</th><th scope="col" class="number">width</th><th scope="col" class="number">depth</th><th scope="col" class="number">axis beside the centre</th></tr></thead><tbody>""");
        foreach (var hole in sheet.Holes)
        {
            text.Append(Invariant($"<tr><th scope=\"row\">{Encoded(hole.Name)}</th><td class=\"number\">{hole.Diameter / Inch:0.###}</td><td class=\"number\">{hole.Depth / Inch:0.###}</td><td class=\"number\">{hole.PitchOn(sheet.Ball.Radius) / Inch:0.###}</td></tr>\n"));
        }
        return text.Append("</tbody></table></div>\n").ToString();
    }

    private static string Signed(double mass) => Invariant($"{mass / Ounce:+0.00;−0.00;0.00}");
}
